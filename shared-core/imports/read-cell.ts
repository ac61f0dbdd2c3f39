import { amountOf } from '../formulas/pasting/pasted-table';
import { MG_PER_KG } from '../quantities/mass';
import { lostShare, ppmFromPercent } from '../quantities/share';
import { cellText, isDate, isError, type Cell } from '../tables/table';
import { currencyOf, dateOf, moneyOf, type DayOrder } from './money-and-dates';
import { lostEnds, readNames, shareEnds } from './names';
import { plain, saysNothing } from './plain';
import { quantityOf, type DecimalMark, type Quantity } from './quantity';
import { unitOf, type Target } from './target';
import { inUnit } from './units';
import { listIn, wordFor, wordsIn, yesOrNoOf, type WordMap } from './words-of';

/** How the cells of a table are read: what its numbers and dates look like, and what its words mean. */
export interface ReadingWays {
  mark: DecimalMark | null;
  order: DayOrder | null;
  words: WordMap;
}

/** What a cell says of its target, as it is kept; `undefined` for a cell that says nothing. */
export type CellReading =
  | { ok: true; value: unknown }
  /** `words`: those that no word of ours is known for. */
  | { ok: false; message: string; words?: string[] };

const NOTHING: CellReading = { ok: true, value: undefined };
const refused = (message: string): CellReading => ({ ok: false, message });

/** A number cell, or the quantity that a text says, in the target's unit. */
function quantityIn(cell: Cell, target: Target, headed: string, { mark }: ReadingWays): Quantity | string {
  const reading =
    typeof cell === 'number'
      ? { ok: true as const, low: null, value: cell, high: null, unit: '' }
      : quantityOf(cellText(cell), mark);
  if (!reading.ok) return reading.message;
  const unit = unitOf(target);
  const turned = inUnit(reading, unit, headed);
  if (turned) return turned;
  const wanted = unit === '' ? 'It has no unit.' : `It is kept in ${unit}.`;
  return `“${cellText(cell)}”: ${reading.unit || headed} is no unit of ${target.label}. ${wanted}`;
}

function oneValue(cell: Cell, target: Target, headed: string, ways: ReadingWays): number | string {
  const quantity = quantityIn(cell, target, headed, ways);
  if (typeof quantity === 'string') return quantity;
  return quantity.value ?? `“${cellText(cell)}”: ${target.label} takes one number, no range or bound.`;
}

function wordsOf(target: Target, written: readonly string[], { words }: ReadingWays): CellReading {
  const found = written.map((one) => [one, wordFor(target, one, words)] as const);
  const unknown = found.flatMap(([one, word]) => (word === null ? [one] : []));
  if (unknown.length > 0)
    return {
      ok: false,
      message: `${unknown.map((one) => `“${one}”`).join(', ')}: no word of ${target.label} is known for it. Say which is meant.`,
      words: unknown,
    };
  // Told to be left out.
  return { ok: true, value: [...new Set(found.flatMap(([, word]) => (word ? [word] : [])))] };
}

function numbered(cell: Cell, target: Target, headed: string, ways: ReadingWays): CellReading {
  const { reading } = target;
  const value = oneValue(cell, target, headed, ways);
  if (typeof value === 'string') return refused(value);
  if (reading.kind === 'share') {
    const lost = lostShare(value, cellText(cell));
    return lost === null ? { ok: true, value: ppmFromPercent(value) } : refused(lost);
  }
  return { ok: true, value: reading.kind === 'mass' ? Math.round(value * MG_PER_KG) : value };
}

function dated(cell: Cell, { order }: ReadingWays): CellReading {
  const date = isDate(cell) ? dateOf(cell.date, order) : dateOf(cellText(cell), order);
  return date.ok ? { ok: true, value: date.date } : refused(date.message);
}

function moneyIn(cell: Cell, { mark }: ReadingWays): CellReading {
  if (typeof cell === 'number') return { ok: true, value: { amount: cell, currency: null } };
  const money = moneyOf(cellText(cell), mark);
  return money.ok
    ? { ok: true, value: { amount: money.amount, currency: money.currency } }
    : refused(money.message);
}

function amountIn(cell: Cell, target: Target, headed: string, ways: ReadingWays): CellReading {
  if (typeof cell === 'string' && amountOf(cell)?.kind === 'to 100')
    return { ok: true, value: { percent: null, toHundred: true } };
  const percent = oneValue(cell, target, headed, ways);
  if (typeof percent === 'string') return refused(percent);
  if (percent < 0 || percent > 100) return refused(`“${cellText(cell)}” is not a share of 0 to 100 %.`);
  const lost = lostShare(percent, cellText(cell));
  return lost === null ? { ok: true, value: { percent, toHundred: false } } : refused(lost);
}

function namesIn(text: string, target: Target, mark: DecimalMark | null): CellReading {
  const { parts, lost } = readNames(text, mark);
  if (lost !== null) return refused(lost);
  if (target.key !== 'allergens') return { ok: true, value: parts };
  // The most that a range allows: an allergen is told from the amount that may be there.
  return { ok: true, value: parts.map(({ inci, highPpm }) => ({ inci, ppm: highPpm })) };
}

/** The words of a cell: those of limits hold commas and “and” themselves, so that what is one of them stays whole. */
function piecesOf(text: string, target: Target, { words }: ReadingWays): string[] {
  if (!target.key.startsWith('limit.')) return wordsIn(text);
  return listIn(text).flatMap((one) =>
    wordFor(target, one, words) === null ? one.split(/,\s*/).filter((part) => part !== '') : [one],
  );
}

function ofText(text: string, cell: Cell, target: Target, ways: ReadingWays): CellReading {
  const { reading } = target;
  switch (reading.kind) {
    case 'word': {
      if (reading.empty !== null && plain(reading.empty) === plain(text)) return { ok: true, value: null };
      const found = wordsOf(target, [text], ways);
      return found.ok ? { ok: true, value: (found.value as string[])[0] } : found;
    }
    case 'words':
      return wordsOf(target, piecesOf(text, target, ways), ways);
    case 'flag':
    case 'known': {
      const said = yesOrNoOf(text);
      return said === null ? refused(`“${text}” is neither yes nor no.`) : { ok: true, value: said };
    }
    case 'names':
      return namesIn(text, target, ways.mark);
    case 'currency': {
      const currency = currencyOf(text);
      return currency === null
        ? refused(`“${text}” is not a currency known here. Write its three letters, such as EUR.`)
        : { ok: true, value: currency };
    }
    case 'date':
      return dated(cell, ways);
    case 'line':
      return { ok: true, value: text.replace(/\s+/g, ' ') };
    default:
      return { ok: true, value: text };
  }
}

/**
 * What a cell says of a target.
 * @param headed the unit that its column's heading names; empty where it names none
 */
export function readCell(cell: Cell, target: Target, headed: string, ways: ReadingWays): CellReading {
  if (cell === null) return NOTHING;
  const { reading } = target;
  if (isError(cell)) return refused(`The spreadsheet shows ${cell.error} here. Correct it there.`);
  const text = cellText(cell).trim();
  const isWords = reading.kind === 'flag' || reading.kind === 'known';
  if (!isWords && saysNothing(text)) return NOTHING;
  if (isDate(cell) && reading.kind !== 'date')
    return refused(
      `This is a date (${text}): the spreadsheet may have turned a number into it. Correct it there.`,
    );
  switch (reading.kind) {
    case 'number':
    case 'whole':
    case 'share':
    case 'mass':
      return numbered(cell, target, headed, ways);
    case 'money':
      return moneyIn(cell, ways);
    case 'amount':
      return amountIn(cell, target, headed, ways);
    case 'figure': {
      const quantity = quantityIn(cell, target, headed, ways);
      if (typeof quantity === 'string') return refused(quantity);
      const { low, value, high } = quantity;
      if (target.key === 'storage.range' && value !== null)
        return refused(`“${text}”: write between which temperatures it is kept, such as 5–25 or < 25.`);
      const lost = target.key === 'usage.range' ? lostEnds(quantity, text) : null;
      return lost === null ? { ok: true, value: { low, value, high } } : refused(lost);
    }
    case 'part share': {
      const quantity = quantityIn(cell, target, headed, ways);
      if (typeof quantity === 'string') return refused(quantity);
      const lost = lostEnds(quantity, text);
      if (lost !== null) return refused(lost);
      const share = shareEnds({ ...quantity, unit: '%' });
      return share ? { ok: true, value: share } : refused(`“${text}” is not a share of 0 to 100 %.`);
    }
    default:
      return ofText(text, cell, target, ways);
  }
}
