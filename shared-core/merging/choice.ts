import { z } from 'zod';
import { RELATIONS, type Relation } from './ancestry';

/** What becomes of a record: ours stays, theirs is taken, or both are put together, ours or theirs where they clash. */
export const CHOICES = ['leave', 'theirs', 'both, ours first', 'both, theirs first'] as const;
export type Choice = (typeof CHOICES)[number];

/** What is done where nothing is said of a record. */
export const USUAL_CHOICES: Readonly<Record<Relation, Choice>> = {
  new: 'theirs',
  'deleted here': 'leave',
  'theirs newer': 'theirs',
  'both changed': 'both, ours first',
  'ours newer': 'leave',
  same: 'leave',
  'only here': 'leave',
};

/** The choices that make sense of a record. */
export function choicesFor(relation: Relation): readonly Choice[] {
  if (relation === 'same' || relation === 'only here') return ['leave'];
  return relation === 'both changed' ? CHOICES : ['leave', 'theirs'];
}

/** What a maker decided: by rule, and of single records by their keys. */
export const decisions = z.object({
  rules: z.partialRecord(z.enum(RELATIONS), z.enum(CHOICES)),
  records: z.record(z.string().max(120), z.enum(CHOICES)),
});
export type Decisions = z.infer<typeof decisions>;

/** A record across libraries. */
export const recordKey = (kind: string, id: string): string => `${kind} ${id}`;

/** The choice that holds for a record. What cannot be done with it counts as not said. */
export function choiceOf(relation: Relation, key: string, { rules, records }: Decisions): Choice {
  const possible = choicesFor(relation);
  const said = [records[key], rules[relation], USUAL_CHOICES[relation]];
  return said.find((choice) => choice !== undefined && possible.includes(choice)) ?? 'leave';
}
