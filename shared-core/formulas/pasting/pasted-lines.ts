import { largestRemainder } from '../../quantities/largest-remainder';
import { isFiner, lostShare, ppmFromPercent, WHOLE_PPM } from '../../quantities/share';
import { columnsOf, type ColumnKind } from './pasted-columns';
import { amountOf, pastedTable } from './pasted-table';
import { isTotal } from './total-row';

/** As many lines as are read of one pasted text. */
export const MOST_PASTED = 200;

/** A line of a pasted table, read. */
export interface PastedLine {
  /** What it may be known by, the surest first: its code, its name, its INCI name. Never empty. */
  names: string[];
  /** What a new material would be called. */
  tradeName: string;
  inci: string;
  /** As it stands there, in per cent or in parts of the whole; null where nothing is said. */
  amount: number | null;
  /** What stands in the place of the amount. */
  written: string;
  /** Whether the table itself says that this is per cent: by a sign behind it, or over its column. */
  saidPercent: boolean;
  toHundred: boolean;
  note: string;
  /** The letter of the phase that the table gives it; null where it gives none. */
  phase: string | null;
}

/** How the amounts are meant: per cent of the formula, or parts (masses, fractions) of what they come to together. */
export type AmountMeaning = 'per cent' | 'parts';

const PHASE_HEAD = /^phase\s+([a-z])\b/i;
const letterOf = (cell: string): string | null =>
  /([a-z])\d?$/i.exec(cell.trim())?.[1]?.toUpperCase() ?? null;

function readRow(cells: readonly string[], kinds: readonly ColumnKind[]): Omit<PastedLine, 'phase'> | null {
  const cell = (kind: ColumnKind): string => cells[kinds.indexOf(kind)]?.replace(/\s+/g, ' ').trim() ?? '';
  const names = [cell('code'), cell('name'), cell('inci')].filter((name) => name !== '');
  const tradeName = cell('name') || cell('inci') || cell('code');
  if (tradeName === '' || isTotal(tradeName)) return null;
  const amount = amountOf(cell('amount'));
  return {
    names,
    tradeName,
    inci: cell('inci') || cell('name'),
    amount: amount?.kind === 'number' ? amount.value : null,
    written: cell('amount'),
    saidPercent: amount?.kind === 'number' && amount.percent,
    toHundred: amount?.kind === 'to 100',
    note: cell('note').slice(0, 300),
  };
}

/**
 * By which marks a column of amounts shows its decimals: “52,5” beside “1.200” makes of that twelve hundred. What stands
 * before a power of ten is never grouped.
 */
const DECIMALS = { ',': /\d,(?:\d{1,2}|\d{4,})(?!\d)/, '.': /\d\.(?:\d{1,2}|\d{4,})(?!\d)/ } as const;
const THOUSANDS = { ',': /(\d)\.(?=\d{3}(?!\d|e))/gi, '.': /(\d),(?=\d{3}(?!\d|e))/gi } as const;

function withoutThousands(cells: readonly string[]): string[] {
  const shown = ([',', '.'] as const).filter((mark) => cells.some((cell) => DECIMALS[mark].test(cell)));
  const [mark, ...others] = shown;
  if (!mark || others.length > 0) return [...cells];
  return cells.map((cell) => cell.replace(THOUSANDS[mark], '$1'));
}

/** The lines of a text as it is pasted from a spreadsheet; totals and headings are passed over. */
export function pastedLines(text: string): PastedLine[] {
  const { rows, kinds, headedPercent } = columnsOf(pastedTable(text));
  const lines: PastedLine[] = [];
  let headed: string | null = null;
  const amountAt = kinds.indexOf('amount');
  const amounts = withoutThousands(rows.map((cells) => cells[amountAt] ?? ''));
  for (const [row, found] of rows.entries()) {
    const cells = found.map((cell, at) => (at === amountAt ? (amounts[row] ?? '') : cell));
    const head = PHASE_HEAD.exec(cells.find((cell) => cell !== '') ?? '');
    const line = readRow(cells, kinds);
    if (head?.[1] && (line?.amount ?? null) === null) {
      headed = head[1].toUpperCase();
      continue;
    }
    if (!line) continue;
    const at = kinds.indexOf('phase');
    const phase = (at >= 0 ? letterOf(cells[at] ?? '') : null) ?? headed;
    lines.push({ ...line, saidPercent: line.saidPercent || headedPercent, phase });
    if (lines.length === MOST_PASTED) break;
  }
  return lines;
}

/**
 * What the amounts probably mean: per cent where the table says so, as two preservatives of 0.9 % and 0.1 % do; else
 * parts where they come to 1, or to more than 100 by more than a slip.
 */
export function likelyMeaning(lines: readonly PastedLine[]): AmountMeaning {
  if (lines.some((line) => line.saidPercent)) return 'per cent';
  const sum = lines.reduce((total, { amount }) => total + (amount ?? 0), 0);
  const toHundred = lines.some((line) => line.toHundred);
  return !toHundred && (Math.abs(sum - 1) < 0.01 || sum > 105) ? 'parts' : 'per cent';
}

/** A line's share, and what is wrong with it; null where nothing is. */
export interface PastedShare {
  ppm: number;
  fault: string | null;
}

/** Why a line comes in with 0 %; null where it is not given, or its amount is a number. */
const noShare = (what: string, { written }: PastedLine): PastedShare => ({
  ppm: 0,
  fault: `${written === '' ? `No ${what} is given` : `“${written}” is not a number`}: it comes in with 0 %.`,
});

const vanished = (written: string): string =>
  `“${written}” is less than 0.0001 %, the least that is kept: it comes in with 0 %.`;

function percentShare(line: PastedLine): PastedShare {
  const { amount, toHundred, written } = line;
  if (toHundred) return { ppm: 0, fault: null };
  if (amount === null) return noShare('share', line);
  if (amount < 0 || amount > 100)
    return { ppm: 0, fault: 'This is not a share of 0 to 100 %: it comes in with 0 %.' };
  if (lostShare(amount, written) !== null) return { ppm: 0, fault: vanished(written) };
  return {
    ppm: ppmFromPercent(amount),
    fault: isFiner(amount) ? 'Rounded to the four decimals that are kept.' : null,
  };
}

/** The shares of pasted lines in ppm of the formula, in their order. Parts come to exactly 100 % together. */
export function pastedShares(lines: readonly PastedLine[], meaning: AmountMeaning): PastedShare[] {
  if (meaning === 'per cent') return lines.map(percentShare);
  const amounts = lines.map(({ amount, toHundred }) => (toHundred ? 0 : Math.max(0, amount ?? 0)));
  return largestRemainder(amounts, WHOLE_PPM, 1).map((ppm, at) => {
    const line = lines[at]!;
    if (line.toHundred) return { ppm: 0, fault: null };
    if (line.amount === null) return noShare('amount', line);
    if (line.amount < 0) return { ppm, fault: 'Less than nothing: it comes in with 0 %.' };
    return { ppm, fault: line.amount > 0 && ppm === 0 ? vanished(line.written) : null };
  });
}
