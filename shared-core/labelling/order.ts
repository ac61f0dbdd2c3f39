import { nameKey } from '../substances/names';
import type { LabelForm } from './substance-names';

/** Where a name stands: an active of a drug first, by weight, after those in any order, or colorants last. */
export const INGREDIENT_GROUPS = ['active', 'by weight', 'any order', 'colorant'] as const;
export type IngredientGroup = (typeof INGREDIENT_GROUPS)[number];

/** What an ingredient's place on a label hangs on; amounts in ppm of the product. */
export interface Placed {
  name: string;
  ppm: number;
  /** Coloured by it, and not the hair of a hair dye. */
  colorant: boolean;
  activeDrug?: boolean;
}

/** One per cent. The EU lets those below it follow in any order, the US those not above it. */
export const ONE_PERCENT_PPM = 10_000;

/** Whether an amount is among those that may stand in any order. */
export function isSmall(ppm: number, form: LabelForm): boolean {
  return form === 'EU' ? ppm < ONE_PERCENT_PPM : ppm <= ONE_PERCENT_PPM;
}

export function groupOf(
  { ppm, colorant, activeDrug }: Omit<Placed, 'name'>,
  form: LabelForm,
): IngredientGroup {
  if (form === 'US' && activeDrug) return 'active';
  if (colorant) return 'colorant';
  return isSmall(ppm, form) ? 'any order' : 'by weight';
}

/**
 * The order of a label: by weight, those under 1 % (EU) or of 1 % and less (US) after them, colorants last; within
 * each by weight, then by name, which every text allows.
 *
 * Source: Regulation (EC) No 1223/2009, Article 19(1)(g); 21 CFR 701.3(a), (d), (f) (both from memory).
 */
export function inLabelOrder<P extends Placed>(placed: readonly P[], form: LabelForm): P[] {
  const rank = (one: P): number => INGREDIENT_GROUPS.indexOf(groupOf(one, form));
  return [...placed].sort((a, b) => rank(a) - rank(b) || b.ppm - a.ppm || a.name.localeCompare(b.name, 'en'));
}

/** Sums lines of one name, however it is spelled; a name stands among the colorants only where all of it colours. */
export function summedByName<P extends Placed>(lines: readonly P[]): P[] {
  const sums = new Map<string, P>();
  for (const line of lines) {
    const key = nameKey(line.name);
    const known = sums.get(key);
    sums.set(
      key,
      known
        ? {
            ...known,
            ppm: known.ppm + line.ppm,
            colorant: known.colorant && line.colorant,
            activeDrug: known.activeDrug === true || line.activeDrug === true,
          }
        : line,
    );
  }
  return [...sums.values()];
}
