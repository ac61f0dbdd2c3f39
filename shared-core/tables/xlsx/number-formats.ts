/** What a number format makes of a number: a day, a day with its time, a time of day, hours past 24, per cent. */
export type FormatKind = 'plain' | 'date' | 'moment' | 'time' | 'elapsed' | 'date or time' | 'percent';

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
  return bare.includes('%') ? 'percent' : 'plain';
}

/** What a number format makes of a number, by its id and the codes that the workbook gives of its own. */
export function kindOfFormat(id: number, codes: ReadonlyMap<number, string>): FormatKind {
  const code = codes.get(id);
  return code === undefined ? (BUILT_IN.get(id) ?? 'plain') : kindOfCode(code);
}
