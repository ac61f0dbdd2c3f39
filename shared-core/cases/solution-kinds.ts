import { z } from 'zod';
import { bufferCapacity, bufferPh, bufferRatio } from '../solutions/buffer';
import { ionicStrength } from '../solutions/ionic-strength';
import { solutionPh } from '../solutions/solution-ph';
import { waterActivity, waterActivityOfPercent } from '../solutions/water-activity';
import { displacementSpecificGravity, densityFromMass, pycnometer, volumeFromMass } from '../physics/density';
import { positive } from '../working/inputs';
import { number, optional } from './input-shapes';
import { kind, type Kind } from './kind';

const buffer = z.object({ pKa: number, acid: number, salt: number });
const ions = z.object({
  ions: z.array(z.object({ concentration: number, charge: number }), 'must be a list'),
});
const acids = z.object({
  acids: z.array(
    z.object({ pKa: z.array(number, 'must be a list'), concentration: number }),
    'must be a list',
  ),
  strongCation: number,
  temperature: number,
});
const norrish = z
  .object({ k: number, molality: optional, solutePercent: optional, soluteMolarMass: optional })
  .refine(
    (i) => i.molality !== undefined || (i.solutePercent !== undefined && i.soluteMolarMass !== undefined),
    'give “molality”, or “solutePercent” with “soluteMolarMass”',
  );

/** A weak acid alone; its Ka as the pKa that the screens ask for. */
function weakAcidPh({ ka, concentration }: { ka: number; concentration: number }): number {
  return solutionPh({
    protolytes: [
      {
        name: 'the acid',
        pKas: [-Math.log10(positive(ka, 'Ka'))],
        charge: 0,
        concentration: positive(concentration, 'Concentration'),
      },
    ],
    strongCation: 0,
    strongAnion: 0,
    temperature: 25,
    activities: 'none',
  }).pH.value;
}

export const SOLUTION_KINDS: Readonly<Record<string, Kind>> = {
  'density-from-mass': kind(
    z.object({ mass: number, volume: number }),
    (i) => densityFromMass(i.mass, i.volume).value,
  ),
  'volume-from-mass': kind(
    z.object({ mass: number, density: number }),
    (i) => volumeFromMass(i.mass, i.density).value,
  ),
  pycnometer: kind(
    z.object({ empty: number, withWater: number, withLiquid: number }),
    (i) => pycnometer(i.empty, i.withWater, i.withLiquid).value,
  ),
  'displacement-specific-gravity': kind(
    z.object({ inAir: number, inWater: number, inLiquid: number }),
    (i) => displacementSpecificGravity(i.inAir, i.inWater, i.inLiquid).value,
  ),
  'water-activity-norrish': kind(norrish, ({ k, molality, solutePercent, soluteMolarMass }) =>
    molality !== undefined
      ? waterActivity({ molality, k }).value
      : waterActivityOfPercent(solutePercent ?? Number.NaN, soluteMolarMass ?? Number.NaN, k).value,
  ),
  'buffer-ph': kind(buffer, (i) => bufferPh(i.pKa, i.acid, i.salt).value),
  'buffer-ratio': kind(z.object({ pKa: number, pH: number }), (i) => bufferRatio(i.pKa, i.pH).value),
  'buffer-capacity': kind(
    z.object({ totalConcentration: number, pKa: number, pH: number }),
    (i) => bufferCapacity(i.totalConcentration, i.pKa, i.pH).value,
  ),
  'weak-acid-ph': kind(z.object({ ka: number, concentration: number }), weakAcidPh),
  'ionic-strength': kind(ions, (i) => ionicStrength(i.ions).value),
  'buffer-ph-activity': kind(
    acids,
    (i) =>
      solutionPh({
        protolytes: i.acids.map((acid, index) => ({
          name: `acid ${index + 1}`,
          pKas: acid.pKa,
          charge: 0,
          concentration: acid.concentration,
        })),
        strongCation: i.strongCation,
        strongAnion: 0,
        temperature: i.temperature,
        activities: 'Davies',
      }).pH.value,
  ),
};
