import { WHOLE_PPM } from '../quantities/share';
import type { Material } from '../materials/material';
import { endsOf, plainName } from '../substances/names';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';
import { waterActivity } from './water-activity';

export const ROSS: Source = {
  text: 'Norrish equation with the constants of Int. J. Dermatol. 2010, 981072, and Chirife J. and co-workers; together by Ross K.D., Estimation of water activity in intermediate moisture foods, Food Technol. 29(3), 26-34 (1975)',
  basis: 'memory',
};

/** A solute that lowers the activity of water: molar mass, g/mol, particles per molecule, and Norrish’s constant; 0 is Raoult’s law. */
interface Solute {
  molarMass: number;
  particles: number;
  k: number;
}

/** By folded INCI name. */
const SOLUTES: Readonly<Record<string, Solute>> = {
  glycerin: { molarMass: 92.09, particles: 1, k: 1.16 },
  erythritol: { molarMass: 122.12, particles: 1, k: 1.34 },
  xylitol: { molarMass: 152.15, particles: 1, k: 1.66 },
  mannitol: { molarMass: 182.17, particles: 1, k: 0.906 },
  sorbitol: { molarMass: 182.17, particles: 1, k: 1.65 },
  glucose: { molarMass: 180.16, particles: 1, k: 2.25 },
  fructose: { molarMass: 180.16, particles: 1, k: 2.25 },
  sucrose: { molarMass: 342.3, particles: 1, k: 6.47 },
  'propylene glycol': { molarMass: 76.09, particles: 1, k: 1 },
  propanediol: { molarMass: 76.09, particles: 1, k: 0 },
  'butylene glycol': { molarMass: 90.12, particles: 1, k: 0 },
  'sodium chloride': { molarMass: 58.44, particles: 2, k: 0 },
  urea: { molarMass: 60.06, particles: 1, k: 0 },
};

/** Which microbes stop growing below a water activity. */
export const GROWTH_LIMITS: readonly (readonly [below: number, stops: string])[] = [
  [0.6, 'nothing grows any more'],
  [0.7, 'only a few moulds and yeasts of dry places still grow'],
  [0.8, 'most moulds have stopped as well'],
  [0.88, 'most yeasts have stopped, moulds still grow'],
  [0.91, 'most bacteria have stopped, yeasts and moulds still grow'],
  [
    0.95,
    'Pseudomonas and most Gram-negative bacteria have stopped, staphylococci, yeasts and moulds still grow',
  ],
];
export const GROWTH_SOURCE: Source = {
  text: 'Scott W.J., Water relations of food spoilage microorganisms, Adv. Food Res. 7, 83-127 (1957)',
  basis: 'memory',
};

/** What a water activity means for microbes; empty above 0.95, where all of them grow. */
export function growthAt(activity: number): string {
  return GROWTH_LIMITS.find(([below]) => activity < below)?.[1] ?? '';
}

interface Dosed {
  material: Pick<Material, 'composition'>;
  ppm: number;
}

/** What of a substance lines hold, g in 100 g, at the lower or the upper end of the suppliers' ranges. */
export function gramsHeld(
  lines: readonly Dosed[],
  is: (inci: string) => boolean,
  end: 'least' | 'most',
): number {
  return lines.reduce((sum, { material, ppm }) => {
    const share = material.composition.reduce((a, part) => a + endsOf(part, is)[end], 0);
    return sum + ((ppm / 10_000) * Math.min(share, WHOLE_PPM)) / WHOLE_PPM;
  }, 0);
}

/** Solutes of the table by name, g in 100 g. */
function gramsOfSolutes(lines: readonly Dosed[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { material, ppm } of lines)
    for (const { inci, lowPpm } of material.composition) {
      const name = plainName(inci);
      if (!Object.hasOwn(SOLUTES, name)) continue;
      found.set(name, (found.get(name) ?? 0) + ((ppm / 10_000) * lowPpm) / WHOLE_PPM);
    }
  return found;
}

/**
 * The activity of the water in a formula: each solute by Norrish or Raoult as if alone, all together by Ross's product.
 *
 * @param water g in 100 g
 * @returns null where there is no water, or no solute of the table
 */
export function activityOfWater(lines: readonly Dosed[], water: number): Worked | null {
  if (water <= 0) return null;
  const steps: WorkingStep[] = [];
  const shares: number[] = [];
  for (const [inci, grams] of gramsOfSolutes(lines)) {
    const solute = SOLUTES[inci];
    if (!solute || grams <= 0) continue;
    const { molarMass, particles, k } = solute;
    const molality = (1000 * grams * particles) / molarMass / water;
    const alone = waterActivity({ molality, k }).value;
    shares.push(alone);
    steps.push({
      says: `water activity beside ${inci} alone, ${show(molality)} mol${particles > 1 ? ' of ions' : ''} in 1 kg of water (${k === 0 ? 'Raoult' : `Norrish, K = ${show(k)}`})`,
      shows: `1000 × ${show(grams)}${particles > 1 ? ` × ${particles}` : ''} / ${show(molarMass)} / ${show(water)} = ${show(molality)}`,
      result: alone,
      unit: '',
    });
  }
  if (shares.length === 0) return null;
  steps.push({
    says: 'together (Ross): their product',
    shows: shares.map(show).join(' × '),
    result: shares.reduce((a, b) => a * b, 1),
    unit: '',
  });
  return worked(
    steps,
    [ROSS],
    ['An estimate at 25 °C: polymers and actives that it does not know bind water too. Measure it.'],
  );
}
