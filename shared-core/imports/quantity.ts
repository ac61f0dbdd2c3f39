import { readPowerOfTen } from '../quantities/power-of-ten';
import { readNumber, type NumberReading } from '../quantities/read-number';

/** What stands before the decimals in a table: it is one and the same throughout. */
export type DecimalMark = ',' | '.';

const SURE: Record<DecimalMark, RegExp> = {
  ',': /(^|[^\d.,])(\d{1,3}(\.\d{3})+,\d+|\d+,(\d{1,2}|\d{4,})|0,\d{3})(?![\d.,])/,
  '.': /(^|[^\d.,])(\d{1,3}(,\d{3})+\.\d+|\d+\.(\d{1,2}|\d{4,})|0\.\d{3})(?![\d.,])/,
};

/** The decimal mark that a table's numbers show; null where none does, or both do. */
export function decimalMarkOf(texts: Iterable<string>): DecimalMark | null {
  const seen = { ',': false, '.': false };
  for (const text of texts) {
    for (const mark of [',', '.'] as const)
      if (!seen[mark] && text.includes(mark) && SURE[mark].test(text)) seen[mark] = true;
    if (seen[','] && seen['.']) return null;
  }
  if (seen[','] === seen['.']) return null;
  return seen[','] ? ',' : '.';
}

/** Three digits after one mark: thousands, or three decimals. */
const EITHER = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/;

/** A number as it stands in a table whose decimal mark is known, or not. */
function numberIn(text: string, mark: DecimalMark | null): NumberReading {
  const powered = readPowerOfTen(text, (digits) =>
    numberIn(digits, mark ?? (digits.includes(',') ? ',' : '.')),
  );
  if (powered) return powered;
  const doubtful = EITHER.exec(text);
  if (!doubtful) return readNumber(text);
  if (mark === null) {
    const [whole, rest] = text.split(doubtful[1]!);
    return {
      ok: false,
      message: `“${text}” may be ${whole}${rest} or ${whole}.${rest}: say which mark comes before decimals.`,
    };
  }
  return readNumber(mark === doubtful[1] ? text : text.replace(doubtful[1]!, ''));
}

/** A quantity as written: one number, a range, or a bound, with its unit in small letters without spaces. */
export interface Quantity {
  low: number | null;
  value: number | null;
  high: number | null;
  unit: string;
}

export type QuantityReading = ({ ok: true } & Quantity) | { ok: false; message: string };

const ABOUT = /^(ca\.?|approx\.?|about|env\.?|circa|etwa|ungef(ä|ae)hr|aprox\.?|~|≈)\s*/i;
const AT_MOST =
  /^(<=?|≤|m[aá]x(imum|imal)?\.?|up to|bis( zu)?|unter|h(ö|oe)chstens|below|jusqu.?(à|a)|hasta|fino a)\s*/i;
const AT_LEAST =
  /^(>=?|≥|m[ií]n(imum|imal)?\.?|from|ab|(ü|ue)ber|mindestens|above|at least|d(è|e)s|desde|da)\s*/i;
const NUMBER = "[+-]?\\d(?:[\\d.,'’\\u00a0\\u202f ]*\\d)?(?:e[+-]?\\d{1,2}(?!\\d))?";
const BETWEEN = '(?:–|—|-|−|\\.\\.\\.?|…|÷|\\bbis\\b|\\bto\\b|à|\\ba\\b)';
const WHOLE = new RegExp(
  `^(${NUMBER})\\s*(?:([^\\d\\s]*?)\\s*${BETWEEN}\\s*(${NUMBER}))?\\s*([^\\d]*[23³²]?)$`,
  'i',
);

/** Iodine taken up by 100 g: the one unit of the trade that holds a number of its own. */
const IODINE_UNIT = /c?g\s*(?:iodine|iod|jod|iode|yodo|[ij][2₂]?)?\s*\/\s*100\s*g/i;

/** @param mark the table's decimal mark, null where its numbers do not show it */
export function quantityOf(written: string, mark: DecimalMark | null): QuantityReading {
  const said = written.trim().replace(/−/g, '-').replace(IODINE_UNIT, 'gi/hg').replace(ABOUT, '');
  const atMost = AT_MOST.test(said);
  const atLeast = !atMost && AT_LEAST.test(said);
  const bare = said.replace(atMost ? AT_MOST : atLeast ? AT_LEAST : /^$/, '').replace(ABOUT, '');
  const parts = WHOLE.exec(bare);
  const refused = { ok: false, message: `“${written.trim()}” is not a number, range or bound.` } as const;
  if (!parts?.[1] || ((atMost || atLeast) && parts[3] !== undefined)) return refused;
  const first = numberIn(parts[1].trim(), mark);
  if (!first.ok) return first;
  const [inner, unit] = [parts[2] ?? '', parts[4] ?? ''].map((one) => one.replace(/\s+/g, '').toLowerCase());
  if (inner !== '' && inner !== unit) return refused;
  const with_ = (ends: Omit<Quantity, 'unit'>): QuantityReading => ({ ok: true, ...ends, unit: unit ?? '' });
  if (parts[3] === undefined) {
    if (atMost) return with_({ low: null, value: null, high: first.value });
    if (atLeast) return with_({ low: first.value, value: null, high: null });
    return with_({ low: null, value: first.value, high: null });
  }
  const second = numberIn(parts[3].trim(), mark);
  if (!second.ok) return second;
  if (second.value < first.value)
    return {
      ok: false,
      message: `“${written.trim()}”: the range runs downwards. Write its lower end first.`,
    };
  return with_({ low: first.value, value: null, high: second.value });
}
