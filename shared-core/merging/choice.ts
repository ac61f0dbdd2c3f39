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

export const SIDES = ['ours', 'theirs'] as const;
/** Which side a field keeps that both changed, by the field's key. */
export type FieldSides = Readonly<Record<string, (typeof SIDES)[number]>>;

/** What a maker decided: by rule, of single records by their keys, and of single fields of these. */
export const decisions = z.object({
  rules: z.partialRecord(z.enum(RELATIONS), z.enum(CHOICES)),
  records: z.record(z.string().max(120), z.enum(CHOICES)),
  fields: z.record(z.string().max(120), z.record(z.string().max(60), z.enum(SIDES))).default({}),
});
export type Decisions = z.infer<typeof decisions>;

/** The side that a record keeps where both changed a field and nothing is said of that field; null where it is not put together. */
export function preferredSide(choice: Choice): (typeof SIDES)[number] | null {
  if (choice === 'both, ours first') return 'ours';
  return choice === 'both, theirs first' ? 'theirs' : null;
}

/** A record across libraries. */
export const recordKey = (kind: string, id: string): string => `${kind} ${id}`;

/** The choice that holds for a record. What cannot be done with it counts as not said. */
export function choiceOf(
  relation: Relation,
  key: string,
  { rules, records }: Pick<Decisions, 'rules' | 'records'>,
): Choice {
  const possible = choicesFor(relation);
  const said = [records[key], rules[relation], USUAL_CHOICES[relation]];
  return said.find((choice) => choice !== undefined && possible.includes(choice)) ?? 'leave';
}
