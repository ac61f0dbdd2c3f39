import type { Region } from '../locale/numbers';
import { MATERIAL_FIELDS } from '../materials/fields';
import { materialContent, type Material, type MaterialContent } from '../materials/material';
import { fieldDifferences, type FieldDifference } from '../record/differences';
import type { Fields } from '../record/field';
import { contentOf, type TakingIn } from './content-of';
import { lackShares } from './names';
import { keyOf, type KeyTarget } from './read-rows';
import type { Fault, TableRow } from './row';

export const OUTCOMES = ['new', 'changed', 'same', 'refused'] as const;
export type OutcomeKind = (typeof OUTCOMES)[number];

/** What becomes of a row. */
export interface Outcome {
  line: number;
  kind: OutcomeKind;
  /** What the material is called, or what the row is known by. */
  name: string;
  faults: Fault[];
  /** What is to be told though it stops nothing, in sentences. */
  notes: string[];
  /** What becomes different, in words. */
  differences: FieldDifference[];
}

/** What a row makes of the library: the outcome, and the content to be written where there is one. */
export interface Planned<R, C> {
  outcome: Outcome;
  /** The record that it changes; null for a new one. */
  before: R | null;
  content: C | null;
}
export type PlannedRow = Planned<Material, MaterialContent>;

export interface PlanParts {
  key: KeyTarget;
  /** The materials of the library that bear a key, folded as `plain` does. */
  known(key: string): readonly Material[];
  taking: TakingIn;
  region: Region;
}

/** A content as it is kept, or the rule of which field it breaks, in the words of its form. */
function checked(content: MaterialContent): { kept: MaterialContent | null; faults: Fault[] } {
  const read = materialContent.safeParse(content);
  if (read.success) return { kept: read.data, faults: [] };
  const faults = read.error.issues.map(({ path, message }) => ({
    heading: (MATERIAL_FIELDS as Fields)[String(path[0])]?.label ?? '',
    message,
  }));
  return { kept: null, faults };
}

function foundBy(row: TableRow, { key, known }: PlanParts): Material | Fault | null {
  const name = keyOf(row, key);
  const what = key === 'code' ? 'code' : 'trade name';
  if (name === '') return { heading: '', message: `The row has no ${what} to be known by.` };
  const [first, ...others] = known(name);
  if (others.length > 0)
    return {
      heading: '',
      message: `${others.length + 1} materials of the library have this ${what}. Give them codes of their own, or choose another column to know them by.`,
    };
  return first ?? null;
}

const isFault = (found: Material | Fault | null): found is Fault => found !== null && 'message' in found;

/** Plans what a row becomes: a new material, a changed one, one that is so already, or a refusal that says why. */
export function planRow(row: TableRow, parts: PlanParts): PlannedRow {
  const found = foundBy(row, parts);
  const before = isFault(found) ? null : found;
  const content = contentOf(before, row.values, parts.taking);
  const name = content.tradeName || before?.tradeName || String(row.values[parts.key] ?? '');
  // A cell that cannot be read is told once, not again by the rule that misses it.
  const faults = isFault(found) ? [...row.faults, found] : row.faults;
  const read = faults.length > 0 ? { kept: null, faults } : checked(content);
  const all = read.faults;
  const notes = lackShares(content.composition)
    ? ['Not every INCI name came with its share: those without may be anything that the others leave.']
    : [];
  const refused = all.length > 0;
  const differences =
    refused || before === null ? [] : fieldDifferences(MATERIAL_FIELDS, before, content, parts.region);
  const kind: OutcomeKind = refused
    ? 'refused'
    : before === null
      ? 'new'
      : differences.length > 0
        ? 'changed'
        : 'same';
  return {
    outcome: { line: row.line, kind, name, faults: all, notes, differences },
    before,
    content: kind === 'new' || kind === 'changed' ? read.kept : null,
  };
}
