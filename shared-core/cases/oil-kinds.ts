import { z } from 'zod';
import {
  hlbTemperature,
  mixedInversionTemperature,
  saltShift,
} from '../phase-inversion/inversion-temperature';
import { cubeRootViscosity, logMixViscosity, refutasIndex, refutasViscosity } from '../rheology/mixing';
import { glycerolViscosity, viscosityAt } from '../rheology/temperature';
import { number, optional } from './input-shapes';
import { kind, type Kind } from './kind';

const fractions = z.object({
  components: z.array(z.object({ fraction: number, viscosity: number }), 'must be a list'),
  interaction: optional,
});
const masses = z.object({
  components: z.array(z.object({ massFraction: number, viscosity: number }), 'must be a list'),
});
const oils = z.object({ oils: z.array(z.object({ volumeFraction: number, pit: number }), 'must be a list') });
const twoTemperatures = z.object({
  temperature1: number,
  viscosity1: number,
  temperature2: number,
  viscosity2: number,
  temperature: number,
});

export const OIL_KINDS: Readonly<Record<string, Kind>> = {
  'pit-mix': kind(oils, (i) => mixedInversionTemperature(i.oils).value),
  'kunieda-hlb-temperature': kind(
    z.object({ k: number, nHlb: number, nOil: number }),
    (i) => hlbTemperature(i.k, i.nHlb, i.nOil).value,
  ),
  'pit-salt-shift': kind(
    z.object({ b: number, cT: number, salinityPercent: number }),
    (i) => saltShift(i.b, i.cT, i.salinityPercent).value,
  ),
  'glycerol-viscosity': kind(
    z.object({ percent: number, temperature: number }),
    (i) => glycerolViscosity(i.percent, i.temperature).value,
  ),
  'viscosity-two-temperatures': kind(
    twoTemperatures,
    (i) =>
      viscosityAt(
        { temperature: i.temperature1, viscosity: i.viscosity1 },
        { temperature: i.temperature2, viscosity: i.viscosity2 },
        i.temperature,
      ).value,
  ),
  'refutas-index': kind(z.object({ viscosity: number }), (i) => refutasIndex(i.viscosity).value),
  'viscosity-refutas': kind(
    masses,
    (i) =>
      refutasViscosity(
        i.components.map(({ massFraction, viscosity }) => ({ fraction: massFraction, viscosity })),
      ).value,
  ),
  'viscosity-log-mix': kind(fractions, (i) => logMixViscosity(i.components, i.interaction ?? 0).value),
  'viscosity-cube-root': kind(fractions, (i) => cubeRootViscosity(i.components).value),
};
