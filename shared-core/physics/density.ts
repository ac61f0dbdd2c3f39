import { badInput, nonNegative, positive } from '../working/inputs';
import { oneStep, worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

const DEFINITION: Source = { text: 'definition of density', basis: 'common-practice' };
const PHARMACOPOEIA: Source = {
  text: 'Ansel H.C., Stoklosa M.J., Pharmaceutical Calculations, density and specific gravity',
  basis: 'memory',
};
const TEMPERATURE = 'Density goes with temperature: weigh both at the same one, mostly 20 or 25 °C.';

/**
 * Density from what a volume weighs.
 *
 * @param mass g, > 0
 * @param volume mL, > 0
 * @returns g/mL
 * @throws Problem `invalid-input`
 */
export function densityFromMass(mass: number, volume: number): Worked {
  positive(mass, 'Mass');
  positive(volume, 'Volume');
  const step = {
    says: 'density: mass / volume',
    shows: `${show(mass)} / ${show(volume)}`,
    result: mass / volume,
    unit: 'g/mL',
  };
  return oneStep(step, [DEFINITION], [TEMPERATURE]);
}

/**
 * Volume of a mass.
 *
 * @param mass g
 * @param density g/mL, > 0
 * @returns mL
 * @throws Problem `invalid-input`
 */
export function volumeFromMass(mass: number, density: number): Worked {
  nonNegative(mass, 'Mass');
  positive(density, 'Density');
  const step = {
    says: 'volume: mass / density',
    shows: `${show(mass)} / ${show(density)}`,
    result: mass / density,
    unit: 'mL',
  };
  return oneStep(step, [DEFINITION], [TEMPERATURE]);
}

/**
 * Specific gravity by pycnometer: weight of the liquid / weight of as much water.
 *
 * @param empty the vessel, any one unit
 * @param withWater the vessel full of water
 * @param withLiquid the vessel full of the liquid
 * @throws Problem `invalid-input`, also when the full vessel is no heavier than the empty one
 */
export function pycnometer(empty: number, withWater: number, withLiquid: number): Worked {
  nonNegative(empty, 'Empty vessel');
  heavier(withWater, empty, 'Vessel with water', 'the empty one');
  heavier(withLiquid, empty, 'Vessel with the liquid', 'the empty one');
  const step = {
    says: 'specific gravity: (with liquid − empty) / (with water − empty)',
    shows: `(${show(withLiquid)} − ${show(empty)}) / (${show(withWater)} − ${show(empty)})`,
    result: (withLiquid - empty) / (withWater - empty),
    unit: '',
  };
  return oneStep(step, [PHARMACOPOEIA], [TEMPERATURE]);
}

/**
 * Specific gravity by a plummet: loss of weight in the liquid / loss in water.
 *
 * @param inAir the plummet, any one unit
 * @throws Problem `invalid-input`, also when it weighs no less in a liquid than in air
 */
export function displacementSpecificGravity(inAir: number, inWater: number, inLiquid: number): Worked {
  nonNegative(inWater, 'Plummet in water');
  nonNegative(inLiquid, 'Plummet in the liquid');
  heavier(inAir, inWater, 'Plummet in air', 'in water');
  heavier(inAir, inLiquid, 'Plummet in air', 'in the liquid');
  const step = {
    says: 'specific gravity: (in air − in liquid) / (in air − in water)',
    shows: `(${show(inAir)} − ${show(inLiquid)}) / (${show(inAir)} − ${show(inWater)})`,
    result: (inAir - inLiquid) / (inAir - inWater),
    unit: '',
  };
  return oneStep(step, [PHARMACOPOEIA], [TEMPERATURE]);
}

function heavier(value: number, than: number, what: string, thanWhat: string): void {
  positive(value, what);
  if (value <= than)
    throw badInput(
      `${what} weighs ${show(value)}, no more than ${thanWhat} (${show(than)}).`,
      'Check the weighings and which is which.',
      what,
    );
}

/**
 * Density of a formula whose volumes add: Σ parts / Σ (parts / density).
 *
 * @param parts by mass, in any one unit, with densities in g/mL
 * @returns g/mL
 * @throws Problem `invalid-input` for no parts, or one without mass or density
 */
export function mixtureDensity(parts: readonly { name: string; mass: number; density: number }[]): Worked {
  for (const { name, mass, density } of parts) {
    nonNegative(mass, `Parts of ${name}`);
    positive(density, `Density of ${name}`);
  }
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  if (mass === 0) throw badInput('There is nothing to mix yet.', 'Enter at least one part by mass.', 'parts');
  const volume = parts.reduce((sum, part) => sum + part.mass / part.density, 0);
  const terms = parts.map((part) => `${show(part.mass)} / ${show(part.density)}`).join(' + ');
  return worked(
    [
      {
        says: 'volume, where volumes add: Σ parts by mass / density',
        shows: terms,
        result: volume,
        unit: 'mL, with the parts in g',
      },
      {
        says: 'density: parts in all / volume',
        shows: `${show(mass)} / ${show(volume)}`,
        result: mass / volume,
        unit: 'g/mL',
      },
    ],
    [{ text: 'additive volumes (ideal mixing)', basis: 'common-practice' }],
    [
      'Volumes do not quite add: water with alcohol or glycerin shrinks by up to 3 %. Air that is stirred in makes a cream lighter by far more.',
      'Measure the density of the filled product before a fill by volume or a label depends on it.',
    ],
  );
}
