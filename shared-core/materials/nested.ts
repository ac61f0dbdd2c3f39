import { fold } from '../quantities/fold';
import { largestRemainder } from '../quantities/largest-remainder';
import { WHOLE_PPM } from '../quantities/share';
import { badInput } from '../working/inputs';
import type { InciPart } from './composition';
import type { Material } from './material';

/** What must be known of a material to look into it. */
export type Composed = Pick<Material, 'tradeName' | 'composition'>;
/** The material that a part of a composition names by its trade name; undefined where it is the name of a substance. */
export type FindByTradeName = (name: string) => Composed | undefined;

/** As names are told apart. */
export const tradeNameKey = (name: string): string => fold(name).trim();
/** As deep as blends within blends go. */
const DEEPEST = 12;

interface Walk {
  find: FindByTradeName;
  /** Trade names on the way down, as they are told apart. */
  within: readonly string[];
  /** What to do where a material holds itself. */
  circular: (path: readonly string[]) => void;
}

/** A material that holds a substance of its own trade name is that substance, and no blend to look into. */
export function isItsOwnSubstance({ tradeName, composition }: Composed): boolean {
  const own = tradeNameKey(tradeName);
  return composition.some(({ inci }) => tradeNameKey(inci) === own);
}

function partsOf({ tradeName, composition }: Composed, walk: Walk): InciPart[] {
  const within = [...walk.within, tradeNameKey(tradeName)];
  return composition.flatMap((part): InciPart[] => {
    const key = tradeNameKey(part.inci);
    if (key === within.at(-1)) return [part];
    if (within.includes(key) || within.length > DEEPEST) {
      walk.circular([...within, key]);
      return [part];
    }
    const held = walk.find(part.inci);
    if (!held || isItsOwnSubstance(held)) return [part];
    return partsOf(held, { ...walk, within }).map(({ inci, lowPpm, highPpm }) => ({
      inci,
      lowPpm: (part.lowPpm * lowPpm) / WHOLE_PPM,
      highPpm: (part.highPpm * highPpm) / WHOLE_PPM,
    }));
  });
}

/** Parts of one name together, in the order in which they first stand; whole ppm. */
function summed(parts: readonly InciPart[]): InciPart[] {
  const found = new Map<string, InciPart>();
  for (const part of parts) {
    const key = part.inci.toLowerCase();
    const known = found.get(key);
    found.set(
      key,
      known ? { ...known, lowPpm: known.lowPpm + part.lowPpm, highPpm: known.highPpm + part.highPpm } : part,
    );
  }
  const all = [...found.values()];
  // Exact shares stay exact, and add up to what they did.
  if (all.every(({ lowPpm, highPpm }) => highPpm - lowPpm < 1e-6)) {
    const sum = all.reduce((total, { lowPpm }) => total + lowPpm, 0);
    const whole = largestRemainder(
      all.map(({ lowPpm }) => lowPpm),
      Math.round(sum),
      1,
    );
    return all.map(({ inci }, at) => ({ inci, lowPpm: whole[at] ?? 0, highPpm: whole[at] ?? 0 }));
  }
  // Lower ends are rounded down and upper ones up: the range stays true, and never comes to more than the whole.
  return all.map(({ inci, lowPpm, highPpm }) => ({
    inci,
    lowPpm: Math.floor(lowPpm + 1e-6),
    highPpm: Math.min(WHOLE_PPM, Math.ceil(highPpm - 1e-6)),
  }));
}

/** Whether a composition names a material within it. */
export function holdsMaterials({ tradeName, composition }: Composed, find: FindByTradeName): boolean {
  const own = tradeNameKey(tradeName);
  return composition.some(({ inci }) => {
    if (tradeNameKey(inci) === own) return false;
    const held = find(inci);
    return held !== undefined && !isItsOwnSubstance(held);
  });
}

/**
 * A material's composition with every material within it replaced by its own, shares multiplied: what is sold as a blend
 * of blends holds the substances of all of them. A material that comes to hold itself is left as it is written.
 *
 * @returns the composition itself where it names no material
 */
export function wholeComposition(one: Composed, find: FindByTradeName): InciPart[] {
  if (!holdsMaterials(one, find)) return one.composition;
  return summed(partsOf(one, { find, within: [], circular: () => undefined }));
}

/** As many names as a composition may hold. */
const MOST_PARTS = 60;

/**
 * Refuses a composition that leads back to its own material, or that holds too many substances.
 *
 * @throws Problem `invalid-input`
 */
export function refuseCircular(one: Composed, find: FindByTradeName): void {
  partsOf(one, {
    find,
    within: [],
    circular: (path) => {
      throw badInput(
        `The composition leads back to itself: ${path.map((name) => `“${name}”`).join(' holds ')}.`,
        'Name the substances instead of the material in one of them.',
        'composition',
      );
    },
  });
  if (wholeComposition(one, find).length > MOST_PARTS)
    throw badInput(
      `With the materials within it this one holds more than ${MOST_PARTS} substances.`,
      'Name fewer, or put small ones together.',
      'composition',
    );
}
