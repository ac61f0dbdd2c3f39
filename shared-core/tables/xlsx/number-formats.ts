import { CURRENCIES } from '../../quantities/money';

/** What a number format makes of a number: a day, a day with its time, a time of day, hours past 24, per cent, money. */
export type FormatKind =
  'plain' | 'date' | 'moment' | 'time' | 'elapsed' | 'date or time' | 'percent' | `money ${string}`;

const ids = (kind: FormatKind, ...numbers: number[]) => numbers.map((id): [number, FormatKind] => [id, kind]);
const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, at) => from + at);

/**
 * Formats that a file means by number alone: ECMA-376 Part 1, 18.8.30 numFmt, all languages, then Chinese, Japanese
 * and Korean (27 to 36, 50 to 58; some are a day in one language and a time in another) and Thai (67 to 81).
 */
const BUILT_IN = new Map<number, FormatKind>([
  ...ids('percent', 9, 10, 67, 68),
  ...ids('date', 14, 15, 16, 17, 27, 28, 29, 30, 31, 36, 50, 51, 54, 57, 58, 71, 72, 73, 74, 81),
  ...ids('time', 18, 19, 20, 21, 45, 47, 75, 76, 78, 80),
  ...ids('moment', 22, 77),
  ...ids('date or time', ...range(32, 35), 52, 53, 55, 56),
  ...ids('elapsed', 46, 79),
]);

/** Quoted and escaped letters, padding, fill, elapsed times, colours, conditions and languages; else one character. */
const PIECE = /"[^"]*"?|\\[^]|_[^]|\*[^]|\[(?:h+|m+|s+)\]|\[[^\]]*\]?|[^]/gi;

/** The first section of a format code (that of positive numbers) without what it only prints. */
function bareSection(code: string): string {
  let bare = '';
  for (const [piece] of code.matchAll(PIECE)) {
    if (piece === ';') break;
    if (/^\[(?:h+|m+|s+)\]$/i.test(piece) || (piece.length === 1 && piece !== '['))
      bare += piece.toLowerCase();
  }
  return bare.replace(/general|am\/pm|a\/p|e[+-]/g, '');
}

/** Signs that several currencies share, with the language that says whose (MS-LCID): `[$$-409]` is the dollar of the United States. */
const WHOSE: Readonly<Record<string, string>> = {
  '$ 409': 'US$',
  '$ 1009': 'CA$',
  '$ c0c': 'CA$',
  '$ c09': 'A$',
  '$ 1409': 'NZ$',
  'kr 41d': 'SEK',
  'kr 414': 'NOK',
  'kr 814': 'NOK',
  'kr 406': 'DKK',
  '¥ 411': 'JPY',
};
/** A language or currency in brackets, a colour or condition, quoted words, a sign by itself. */
const SIGNED = /\[\$([^\]-]*)(?:-([0-9a-f]+))?\]|\[[^\]]*\]|"\s*([^"]*?)\s*"|([€£₹₺])/gi;
/** A longer code than any program writes says no currency: it is not read to its end. */
const LONGEST_READ = 255;
/** Signs that stand for several currencies: where the language does not say whose, the number stays one. */
const SHARED = new Set(['', '$', '¥', 'kr', 'kr.']);

/** The sign of the currency that a format code shows beside a number (18.8.31, `[$€-407]`); empty where none is sure. */
function currencyOf(code: string): string {
  for (const [, bracketed, language, quoted, bare] of code.slice(0, LONGEST_READ).matchAll(SIGNED)) {
    const sign = (bracketed ?? quoted ?? bare ?? '').trim();
    const known = /^[€£₹₺]$/.test(sign) || CURRENCIES.some((one) => one === sign);
    const whose = WHOSE[`${sign} ${(language ?? '').toLowerCase().replace(/^0+/, '')}`];
    if (whose !== undefined) return whose;
    if (known || (bracketed !== undefined && !SHARED.has(sign))) return sign;
  }
  return '';
}

/** What a format code makes of a number (ECMA-376 Part 1, 18.8.31 numFmts: the letters d, m, y, h, s and %). */
export function kindOfCode(code: string): FormatKind {
  const bare = bareSection(code);
  const clock = /[hs]/.test(bare);
  // An m beside hours or seconds means minutes; three or more always mean the month.
  if (/[yd]|mmm/.test(bare) || (bare.includes('m') && !clock && !bare.includes('['))) {
    return clock ? 'moment' : 'date';
  }
  if (bare.includes('[')) return 'elapsed';
  if (clock) return 'time';
  if (bare.includes('%')) return 'percent';
  const sign = currencyOf(code);
  return sign === '' ? 'plain' : `money ${sign}`;
}

/** What a number format makes of a number, by its id and the codes that the workbook gives of its own. */
export function kindOfFormat(id: number, codes: ReadonlyMap<number, string>): FormatKind {
  const code = codes.get(id);
  return code === undefined ? (BUILT_IN.get(id) ?? 'plain') : kindOfCode(code);
}
