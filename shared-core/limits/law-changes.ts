import type { Region } from '../locale/numbers';
import { fieldDifferences, type FieldDifference } from '../record/differences';
import type { Fields } from '../record/field';
import { SUBSTANCE_FIELDS } from '../substances/fields';
import { substanceIndex } from '../substances/substance-index';
import type { Contents } from './contents';
import { LIMIT_FIELDS } from './fields';
import { subjectsOf } from './judge';
import type { Law } from './law';
import type { Limit } from './limit';

/** One limit or substance that is not what it was. */
export interface LawChange {
  kind: 'limit' | 'substance';
  id: string;
  /** What it is about, or called. */
  name: string;
  happened: 'entered' | 'removed' | 'changed';
  /** What of it differs, field by field, where it was changed. */
  fields: FieldDifference[];
}

/** What says how far a record was looked at, not what it asks. */
const ASIDE: ReadonlySet<string> = new Set(['checked', 'asOf', 'notes']);

interface Told<One> {
  kind: LawChange['kind'];
  fields: Fields;
  nameOf(one: One): string;
  concerns(one: One, law: Law): boolean;
}

/** The records of one kind that differ between two laws, and concern what is asked about. */
function changesOf<One extends { id: string }>(
  { then, now }: Laws,
  of: (law: Law) => readonly One[],
  { kind, fields, nameOf, concerns }: Told<One>,
  region: Region,
): LawChange[] {
  const [before, after] = [then, now].map((law) => new Map(of(law).map((one) => [one.id, one])));
  const ids = new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])]);
  return [...ids].flatMap((id): LawChange[] => {
    const [was, is] = [before?.get(id), after?.get(id)];
    const one = is ?? was;
    if (was === is || !one) return [];
    if (!((was && concerns(was, then)) || (is && concerns(is, now)))) return [];
    const told = { kind, id, name: nameOf(one) };
    if (!was) return [{ ...told, happened: 'entered', fields: [] }];
    if (!is) return [{ ...told, happened: 'removed', fields: [] }];
    const differ = fieldDifferences(fields, was, is, region).filter(({ key }) => !ASIDE.has(key));
    return differ.length > 0 ? [{ ...told, happened: 'changed', fields: differ }] : [];
  });
}

/** The law of two moments. */
export interface Laws {
  then: Law;
  now: Law;
}

/**
 * The limits on what a formula holds, and its substances, that are not what they were.
 * @param contents what it holds, by the law of each moment
 */
export function lawChanges(laws: Laws, contents: readonly Contents[], region: Region): LawChange[] {
  const held = new Set(contents.flatMap(({ present }) => [...present.keys()]));
  const limits: Told<Limit> = {
    kind: 'limit',
    fields: LIMIT_FIELDS,
    nameOf: ({ subject }) => subject,
    concerns: (limit, law) =>
      (subjectsOf(limit, substanceIndex(law.substances)) ?? []).some(({ id }) => held.has(id)),
  };
  const substances: Told<Law['substances'][number]> = {
    kind: 'substance',
    fields: SUBSTANCE_FIELDS,
    nameOf: ({ name }) => name,
    concerns: ({ id }) => held.has(id),
  };
  return [
    ...changesOf(laws, (law) => law.limits, limits, region),
    ...changesOf(laws, (law) => law.substances, substances, region),
  ];
}
