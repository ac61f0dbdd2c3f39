import type { Cell } from '../table';
import { sureNumber } from '../sure-number';
import { unescapeText } from './escaped-text';
import type { FormatKind } from './number-formats';
import { damaged } from './refusals';
import { AFTER_LAST_SERIAL, dateOfSerial, plainDate, timeOfSerial } from './serial-dates';

/** What cells are read by: the workbook's texts, the kinds of its number formats, and its date system. */
export interface CellContext {
  strings: readonly string[];
  formats: readonly FormatKind[];
  from1904: boolean;
}

/** A cell as it stands in the file (ECMA-376 Part 1, 18.3.1.4 c): its `v`, null where it has none, or the text of `is`. */
export interface RawCell {
  type: string;
  style: number;
  value: string | null;
  inline: string | null;
}

/** The decimal form of xsd:double: XML Schema Part 2, 3.2.5. */
const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

/** 0.05 as `5%`, with every digit: as a maker sees it, for 0.05 alone would be taken for a twentieth of a per cent. */
const percentText = (share: number) => `${Number((share * 100).toPrecision(15))}%`;

/** A number as its format means it; `odd` where it is to be a date, but is none. */
function formatted(number: number, kind: FormatKind, from1904: boolean): Cell | 'odd' {
  if (kind === 'plain') return number;
  if (kind === 'percent') return percentText(number);
  // 12.5 alone would be taken for the maker's own currency.
  if (kind.startsWith('money ')) return `${sureNumber(number)} ${kind.slice('money '.length)}`;
  if (number < 0 || number >= AFTER_LAST_SERIAL) return 'odd';
  if (kind === 'elapsed' || (number < 1 && (kind === 'time' || kind === 'date or time')))
    return timeOfSerial(number);
  const date = dateOfSerial(number, from1904, kind === 'moment' || kind === 'time');
  return date === null ? 'odd' : { date };
}

/** The value of a cell; null for an empty one. `tellOdd` is called where a number is to be a date, but is none. */
export function cellValue(raw: RawCell, context: CellContext, tellOdd: () => void): Cell {
  const text = raw.value ?? '';
  // A text of its own is one, also where the program that wrote it forgot to say so.
  if (raw.type === 'inlineStr' || (text === '' && raw.inline !== null)) return raw.inline || null;
  if (text === '') return null;
  switch (raw.type) {
    // 18.18.11 ST_CellType
    case 's':
      return sharedText(text, context.strings) || null;
    case 'str':
      return unescapeText(text);
    case 'b':
      return text.trim() === '1' || text.trim() === 'true';
    case 'e':
      return { error: unescapeText(text) };
    case 'd':
      return isoDate(text.trim());
    case 'n':
      return numberCell(text.trim(), context.formats[raw.style] ?? 'plain', context.from1904, tellOdd);
    default:
      throw damaged(`a cell is of an unknown kind (${raw.type})`);
  }
}

function sharedText(place: string, strings: readonly string[]): string {
  const text = /^\s*\d+\s*$/.test(place) ? strings[Number(place)] : undefined;
  if (text === undefined)
    throw damaged(`a cell means a shared text that is not there (${place.slice(0, 20)})`);
  return text;
}

function isoDate(text: string): Cell {
  const date = plainDate(text);
  return date === null ? text : { date };
}

function numberCell(text: string, kind: FormatKind, from1904: boolean, tellOdd: () => void): Cell {
  const number = NUMBER.test(text) ? Number(text) : NaN;
  // Some programs write what is no number into a number's place: it is kept as it stands.
  if (!Number.isFinite(number)) return text;
  const cell = formatted(number, kind, from1904);
  if (cell !== 'odd') return cell;
  tellOdd();
  return number;
}
