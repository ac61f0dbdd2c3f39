import type { InciPart } from '../materials/composition';
import { ppmFromPercent, WHOLE_PPM } from '../quantities/share';
import { saysNothing } from './plain';
import { quantityOf, type DecimalMark, type Quantity } from './quantity';
import { inUnit } from './units';

/** The share behind a name: in brackets, or after it with a per cent sign. */
const IN_BRACKETS = /^(.*\S)\s*[([]\s*([^()[\]]*\d[^()[\]]*)[)\]]$/;
const AFTER = /^(.*?\S)[\s:–-]+((?:[<>≤≥~]=?|ca\.?)?\s*\d[\d.,]*\s*%?(?:\s*[-–]\s*\d[\d.,]*)?\s*%)$/i;

/** The names of a cell: parted by semicolons, line breaks, “(and)”, “+”, “&” or by commas that a space follows. */
function piecesOf(text: string): string[] {
  return text
    .split(/;|\n|\s*\((?:and|und|et|y|e)\)\s*|\s+[+&]\s+|,\s+(?![^(]*\))/i)
    .map((piece) => piece.replace(/\s+/g, ' ').trim())
    .filter((piece) => piece !== '');
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

interface Named {
  inci: string;
  share: readonly [number, number] | null;
}

/** A number without its sign is a share only in brackets of its own; “PEG-40” and “(C12-15)” are names. */
function namedOf(piece: string, mark: DecimalMark | null): Named {
  const found = IN_BRACKETS.exec(piece) ?? AFTER.exec(piece);
  if (!found?.[1] || !found[2]) return { inci: piece, share: null };
  const quantity = quantityOf(found[2], mark);
  const isShare = quantity.ok && (quantity.unit === '%' || /^[\d\s.,–-]+$/.test(found[2]));
  const share = isShare ? shareEnds(quantity) : null;
  return share ? { inci: found[1].replace(/[\s:,]+$/, ''), share } : { inci: piece, share: null };
}

/**
 * The INCI names of a cell with their shares in ppm. One name alone is the whole of the material; of several, those
 * without a share may be anything that the others leave. What says only that a name is not known is none, and leaves
 * the others without a claim to be the whole.
 */
export function namesOf(text: string, mark: DecimalMark | null): InciPart[] {
  const pieces = piecesOf(text);
  const named = pieces.filter((piece) => !saysNothing(piece)).map((piece) => namedOf(piece, mark));
  const told = named.reduce((sum, { share }) => sum + (share?.[0] ?? 0), 0);
  const alone = pieces.length === 1;
  const rest = alone ? WHOLE_PPM : Math.max(0, WHOLE_PPM - told);
  return named.map(({ inci, share }) => ({
    inci,
    lowPpm: share?.[0] ?? (alone ? WHOLE_PPM : 0),
    highPpm: share?.[1] ?? rest,
  }));
}

/** Whether some of several names came without a share. */
export function lackShares(parts: readonly InciPart[]): boolean {
  return parts.length > 1 && parts.some(({ lowPpm, highPpm }) => lowPpm === 0 && highPpm > 0);
}
