import type { FormulaRow, FormulaStatus } from '@core/formulas/list';
import { listQuery, LONGEST_TEXT, type QuickPage } from '@core/lists/query';
import { fetchPage } from '../lists/list-search';
import { FORMULAS_VIEW } from './list-view';

/** As many as a list under a box shows. */
const MOST = 12;

/** The formulas that typed words find, by name; those worked on last where nothing is typed. */
export function findFormulas(
  text: string,
  status: readonly FormulaStatus[],
  signal?: AbortSignal,
): Promise<QuickPage<FormulaRow>> {
  const order =
    text.trim() === '' ? { sortBy: 'updatedAt', descending: true } : { sortBy: 'name', descending: false };
  const query = listQuery(FORMULAS_VIEW.description, {
    ...order,
    text: text.slice(0, LONGEST_TEXT),
    chosen: { status },
    limit: MOST,
  });
  return fetchPage(FORMULAS_VIEW, query, signal);
}

/** What a formula is called where one is chosen. */
export function formulaTitle({ code, name }: Pick<FormulaRow, 'code' | 'name'>): string {
  return `${code} ${name}`.trim();
}
