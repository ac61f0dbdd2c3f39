import type { LibraryDocument } from '@core/exchange/document';
import type { FormulaContent } from '@core/formulas/formula';
import { recordKey } from '@core/merging/choice';
import type { Reader } from '../database';
import { comesWith, type Planned } from './plan';

/** Of a formula, the numbers that its new versions get here, by those that they have there. */
export type VersionNumbers = ReadonlyMap<number, number>;

/** Numbers for the versions to be taken: their own, or the next free one where a version here bears it. */
export function versionNumbers(
  db: Reader,
  theirs: LibraryDocument,
  plan: ReadonlyMap<string, Planned>,
): Map<string, Map<number, number>> {
  const known = new Set<string>();
  const used = new Map<string, Set<number>>();
  for (const { id, formula, number } of db.all<{ id: string; formula: string; number: number }>(
    'SELECT id, formula_id AS formula, number FROM formula_version',
  )) {
    known.add(id);
    used.set(formula, (used.get(formula) ?? new Set()).add(number));
  }
  const numbers = new Map<string, Map<number, number>>();
  for (const { id, formulaId, number } of theirs.versions) {
    const planned = plan.get(recordKey('formula', formulaId));
    if (known.has(id) || !planned || !comesWith(planned)) continue;
    const taken = used.get(formulaId) ?? new Set();
    const own = taken.has(number) ? Math.max(...taken) + 1 : number;
    used.set(formulaId, taken.add(own));
    numbers.set(formulaId, (numbers.get(formulaId) ?? new Map()).set(number, own));
  }
  return numbers;
}

/** Reports that came with a formula speak of its versions by the numbers that these have here. */
export function withReportNumbers(
  content: object,
  before: object | null,
  numbers: VersionNumbers | undefined,
): object {
  const { reports } = content as FormulaContent;
  const own = new Set(((before as FormulaContent | null)?.reports ?? []).map(({ id }) => id));
  const moved = reports.some(
    ({ id, versionNumber: n }) => !own.has(id) && n !== null && (numbers?.get(n) ?? n) !== n,
  );
  if (!moved) return content;
  return {
    ...content,
    reports: reports.map((report) => {
      const { id, versionNumber: n } = report;
      return own.has(id) || n === null ? report : { ...report, versionNumber: numbers?.get(n) ?? n };
    }),
  };
}
