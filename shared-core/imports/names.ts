import type { InciPart } from '../materials/composition';
import { lostShare, ppmFromPercent, WHOLE_PPM } from '../quantities/share';
import { saysNothing } from './plain';
import { quantityOf, type DecimalMark, type Quantity } from './quantity';
import { inUnit } from './units';

/** The share behind a name: in brackets, or after it with a per cent sign. */
const IN_BRACKETS = /^(.*\S)\s*[([]\s*([^()[\]]*\d[^()[\]]*)[)\]]$/;
const SIGN = String.raw`(?:%|‰|ppm\b|m?g\/kg\b)`;
/** With a power of ten or without: 0.5, 1E-05. */
const NUMBER = String.raw`\d[\d.,]*(?:e[+−-]?\d{1,2})?`;
const SHARE = String.raw`(?:[<>≤≥~]=?|ca\.?)?\s*${NUMBER}\s*%?(?:\s*[-–]\s*${NUMBER})?\s*${SIGN}`;
const AFTER = new RegExp(String.raw`^(.*?\S)[\s:–-]+(${SHARE})$`, 'i');
/** A share before its name: “99 % Glycerin”. */
const BEFORE = new RegExp(String.raw`^(${SHARE})\s+(?=\p{L})(.+)$`, 'iu');
/** A number that no name ends in, without its sign: behind a colon, or with decimals. */
const POWER = String.raw`\d+(?:[.,]\d+)?e[+−-]\d{1,2}`;
const BARE = new RegExp(
  String.raw`^(.*\p{L}.*?)(?:\s*[:=]\s*(${POWER}|\d[\d.,]*)|\s+(${POWER}|\d+[.,]\d+))$`,
  'iu',
);
/** A share that stands alone: it is that of the name before it. */
const ALONE = new RegExp(`^${SHARE}$`, 'i');

/** The names of a cell: parted by semicolons, line breaks, “(and)”, “+”, “&” or by commas that a space follows. */
function piecesOf(text: string): string[] {
  const pieces: string[] = [];
  const found = text
    .split(/;|\n|\s*\((?:and|und|et|y|e)\)\s*|\s+[+&]\s+|,\s+(?![^(]*\))/i)
    .map((piece) => piece.replace(/\s+/g, ' ').trim())
    .filter((piece) => piece !== '');
  for (const piece of found)
    if (ALONE.test(piece) && pieces.length > 0) pieces[pieces.length - 1] += ` ${piece}`;
    else pieces.push(piece);
  return pieces;
}

const ends = ({ low, value, high }: Quantity): readonly [number, number] => [
  low ?? value ?? 0,
  high ?? value ?? 100,
];

/** A share in per cent as its lowest and highest ppm; null for what is none. */
export function shareEnds(quantity: Quantity, headed = ''): readonly [number, number] | null {
  const percent = inUnit(quantity, '%', headed);
  if (!percent) return null;
  const [low, high] = ends(percent);
  return low < 0 || high > 100 ? null : [ppmFromPercent(low), ppmFromPercent(high)];
}

/** Why a share cannot be kept: one of its ends, in per cent, would become 0. Null where none would. */
export function lostEnds({ low, value, high }: Quantity, written: string): string | null {
  for (const end of [low, value, high]) {
    const lost = end === null ? null : lostShare(end, written);
    if (lost !== null) return lost;
  }
  return null;
}

interface Named {
  inci: string;
  share: readonly [number, number] | null;
  /** Why its share cannot be kept; null where it can. */
  lost: string | null;
}

/** The name and the share that a piece writes, in whichever order. */
function parted(piece: string): readonly [name: string, share: string] | null {
  const behind = IN_BRACKETS.exec(piece) ?? AFTER.exec(piece);
  if (behind?.[1] && behind[2]) return [behind[1], behind[2]];
  const before = BEFORE.exec(piece);
  if (before?.[1] && before[2]) return [before[2], before[1]];
  const bare = BARE.exec(piece);
  const number = bare?.[2] ?? bare?.[3];
  return bare?.[1] && number ? [bare[1], number] : null;
}

const BARE_SHARE = new RegExp(String.raw`^(?:${NUMBER}|[\s–-])+$`, 'i');

/** A number without its sign is a share in brackets of its own, behind a colon, or with decimals: “PEG-40” is a name. */
function namedOf(piece: string, mark: DecimalMark | null): Named {
  const found = parted(piece);
  if (!found) return { inci: piece, share: null, lost: null };
  const [name, written] = found;
  const quantity = quantityOf(written, mark);
  const isShare = quantity.ok && (quantity.unit !== '' || BARE_SHARE.test(written));
  const percent = isShare ? inUnit(quantity, '%', '') : null;
  const share = isShare ? shareEnds(quantity) : null;
  if (!share || !percent) return { inci: piece, share: null, lost: null };
  return { inci: name.replace(/[\s:,]+$/, ''), share, lost: lostEnds(percent, written) };
}

/**
 * The INCI names of a cell with their shares in ppm. One name alone is the whole of the material; of several, those
 * without a share may be anything that the others leave. What says only that a name is not known is none, and leaves
 * the others without a claim to be the whole.
 */
export const namesOf = (text: string, mark: DecimalMark | null): InciPart[] => readNames(text, mark).parts;

/** As {@link namesOf}, with why a share among them cannot be kept; null where all can. */
export function readNames(
  text: string,
  mark: DecimalMark | null,
): { parts: InciPart[]; lost: string | null } {
  const pieces = piecesOf(text);
  const named = pieces.filter((piece) => !saysNothing(piece)).map((piece) => namedOf(piece, mark));
  const told = named.reduce((sum, { share }) => sum + (share?.[0] ?? 0), 0);
  const alone = pieces.length === 1;
  const rest = alone ? WHOLE_PPM : Math.max(0, WHOLE_PPM - told);
  const parts = named.map(({ inci, share }) => ({
    inci,
    lowPpm: share?.[0] ?? (alone ? WHOLE_PPM : 0),
    highPpm: share?.[1] ?? rest,
  }));
  const lost = named.find((one) => one.lost !== null);
  return { parts, lost: lost ? `${lost.inci}: ${lost.lost}` : null };
}

/** Whether some of several names came without a share. */
export function lackShares(parts: readonly InciPart[]): boolean {
  return parts.length > 1 && parts.some(({ lowPpm, highPpm }) => lowPpm === 0 && highPpm > 0);
}
