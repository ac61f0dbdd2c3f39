import { pastedTable } from '../../formulas/pasting/pasted-table';
import { lostEnds, readNames, shareEnds } from '../../imports/names';
import { decimalMarkOf, quantityOf, type DecimalMark } from '../../imports/quantity';
import { inUnit } from '../../imports/units';
import { ppmFromPercent, WHOLE_PPM } from '../../quantities/share';
import type { InciPart } from '../composition';

/** What a pasted block says of a composition, or why it cannot be taken. */
export type PastedComposition = { ok: true; parts: InciPart[] } | { ok: false; message: string };

/** Whether a text is a block of a spreadsheet, not a word for one field. */
export const isBlock = (text: string): boolean => /\t|\n.*\S/.test(text.trim());

const CAS = /^\d{2,7}-\d{2}-\d$/;
const BESIDE_NUMBER = /ppm|max|min|\b(ca|circa|approx|about|etwa|rund|env|aprox)\b/gi;
const hasLetters = (cell: string): boolean => /\p{L}{2}/u.test(cell.replace(BESIDE_NUMBER, ''));
const hasNumber = (cell: string): boolean => /\d/.test(cell) && !hasLetters(cell) && !CAS.test(cell);
const TOTAL = /^(total|sum|summe|somme|suma)\b/i;
/** What a row says that heads the others, in the languages of tables. */
const HEAD =
  /inci|\bcas\b|%|\b(names?|ingredients?|components?|substances?|composition|shares?|content|per ?cent|name|bestandteile?|inhaltsstoffe?|zusammensetzung|anteil|gehalt|nom|ingrédients?|teneur|nombre|ingredientes?|composición|contenido)\b/i;

type Share = readonly [number, number];

function shareOf(cells: readonly string[], mark: DecimalMark | null, ofOne: boolean): Share | string {
  const ends = cells.map((cell): Share | string => {
    const quantity = quantityOf(cell, mark);
    if (!quantity.ok) return quantity.message;
    const scaled = (one: number | null): number | null => (one === null || !ofOne ? one : one * 100);
    const { low, value, high, unit } = quantity;
    const percent = inUnit({ low: scaled(low), value: scaled(value), high: scaled(high), unit }, '%', '');
    const share = percent && shareEnds(percent);
    if (!share) return `“${cell}” is not a share of 0 to 100 %.`;
    return lostEnds(percent, cell) ?? share;
  });
  const fault = ends.find((one) => typeof one === 'string');
  if (fault !== undefined) return fault as string;
  const [first, last] = [ends[0] as Share, ends[ends.length - 1] as Share];
  return first[0] <= last[1] ? [first[0], last[1]] : `“${cells.join(' – ')}”: the range runs downwards.`;
}

/** Shares written as parts of one: they come to 1, and none bears its sign. */
function areOfOne(rows: readonly string[][], mark: DecimalMark | null): boolean {
  const all = rows.flat();
  const sum = all.reduce((total, cell) => {
    const quantity = quantityOf(cell, mark);
    return total + (quantity.ok ? (quantity.value ?? NaN) : NaN);
  }, 0);
  return Math.abs(sum - 1) < 0.01 && !all.some((cell) => /%|ppm/i.test(cell));
}

interface NamedRow {
  name: string;
  shares: string[];
}

/** A table without the column that numbers its rows: 1 is no share of the first, nor 2 of the second. */
function withoutRowNumbers(table: readonly string[][]): readonly string[][] {
  const numbers = table.map(([first = '']) => /^(\d{1,3})[.)]?$/.exec(first.trim())?.[1]);
  const numbered = numbers.filter((one) => one !== undefined);
  const runs = numbered.length > 1 && numbered.every((one, at) => Number(one) === at + 1);
  const named = table
    .filter((_, at) => numbers[at] !== undefined)
    .every((cells) => cells.slice(1).some(hasLetters));
  return runs && named ? table.map(([, ...cells]) => cells) : table;
}

/** The rows that name something, without totals and without what heads the first that has a share. */
function namedRows(table: readonly string[][]): NamedRow[] {
  const rows = table.map((cells) => ({
    cells,
    name: (cells.find(hasLetters) ?? '').replace(/\s+/g, ' '),
    shares: cells.filter(hasNumber),
  }));
  const first = rows.findIndex(({ shares }) => shares.length > 0);
  return rows.filter(
    ({ name, cells }, at) =>
      name !== '' && !TOTAL.test(name) && !(at < first && cells.some((cell) => HEAD.test(cell))),
  );
}

/**
 * The INCI names of a block pasted from a spreadsheet: a name a row, with its share, or its lowest and highest, beside it.
 * One without a share may be all that the others leave. Heads and totals are passed over, and so are CAS numbers.
 */
export function pastedComposition(text: string): PastedComposition {
  const named = namedRows(withoutRowNumbers(pastedTable(text)));
  const counted = named.filter(({ shares }) => shares.length > 0);
  const mark = decimalMarkOf(counted.flatMap(({ shares }) => shares));
  if (counted.length === 0) {
    const names = named.map(({ name }) => name).join('; ');
    const { parts, lost } = readNames(names, mark);
    if (lost !== null) return { ok: false, message: lost };
    return parts.length > 0
      ? { ok: true, parts }
      : { ok: false, message: 'What was pasted holds no INCI name.' };
  }
  const ofOne = areOfOne(
    counted.map(({ shares }) => shares),
    mark,
  );
  const read: { name: string; share: Share | null }[] = [];
  for (const { name, shares } of named) {
    if (shares.length > 2)
      return {
        ok: false,
        message: `“${name}” has more than two numbers: paste the names with their shares alone.`,
      };
    const share = shares.length === 0 ? null : shareOf(shares, mark, ofOne);
    if (typeof share === 'string') return { ok: false, message: `“${name}”: ${share}` };
    read.push({ name, share });
  }
  const low = read.reduce((sum, { share }) => sum + (share?.[0] ?? 0), 0);
  if (low > WHOLE_PPM + ppmFromPercent(0.1))
    return { ok: false, message: 'The shares that were pasted come to more than 100 %.' };
  const rest: Share = [0, Math.max(0, WHOLE_PPM - low)];
  const parts = read.map(({ name, share }): InciPart => {
    const [lowPpm, highPpm] = share ?? rest;
    return { inci: name, lowPpm, highPpm };
  });
  return { ok: true, parts };
}

/** A composition with what was pasted: a whole one takes the place of what stood there, a part is added to it. */
export function withPastedParts(before: readonly InciPart[], pasted: readonly InciPart[]): InciPart[] {
  const high = pasted.reduce((sum, { highPpm }) => sum + highPpm, 0);
  if (high >= WHOLE_PPM * 0.95) return [...pasted];
  const again = new Set(pasted.map(({ inci }) => inci.toLowerCase()));
  return [...before.filter(({ inci }) => !again.has(inci.toLowerCase())), ...pasted];
}
