import { z } from 'zod';
import { requiredHlb } from '../emulsions/required-hlb';
import type { AcidStrength, NeutralisationWish } from '../neutralisation/neutralise';

export const number = z.number('must be a number');
/** A value that a case may leave out; null says the same. */
export const optional = number.nullish().transform((value) => value ?? undefined);
const oil = z.object({ mass: number, requiredHlb: number });

export const ethoxylate = z.object({ oxyethylenePercent: number });
export const ester = z.object({ saponificationNumber: number, acidNumber: number });
export const massFraction = z.object({ hydrophilicMolarMass: number, molarMass: number });
export const davies = z.object({ groups: z.record(z.string(), number, 'must give counts by group id') });
export const oilPhase = z.object({ oils: z.array(oil, 'must be a list') });
export const emulsifiers = z.object({
  emulsifiers: z.array(z.object({ mass: number, hlb: number }), 'must be a list'),
});
export const pair = z.object({ targetHlb: number, lowHlb: number, highHlb: number });
/** A stated target goes before the one computed from the oils. */
export const pairMasses = z
  .object({
    targetHlb: optional,
    oils: z
      .array(oil, 'must be a list')
      .nullish()
      .transform((oils) => oils ?? undefined),
    lowHlb: number,
    highHlb: number,
    totalEmulsifierMass: number,
  })
  .refine((i) => i.targetHlb !== undefined || i.oils !== undefined, 'give “targetHlb” or “oils”');
export const eacnOils = z.object({
  oils: z.array(z.object({ fraction: number, eacn: number }), 'must be a list'),
});
export const ccSurfactants = z.object({
  surfactants: z.array(z.object({ moleFraction: number, cc: number }), 'must be a list'),
});

/** The format says of the alcohol term: 0 if absent. */
const system = z.object({
  eacn: number,
  cc: number,
  alcoholTerm: number.nullish().transform((term) => term ?? 0),
  k: number,
});
export const ionicAnySalinity = system.extend({ temperature: number, alphaT: number });
export const ionic = ionicAnySalinity.extend({ salinityPercent: number });
export const nonionicAnywhere = system.extend({ salinityPercent: number, b: number, cT: number });
export const nonionic = nonionicAnywhere.extend({ temperature: number });

export const neutralisation = z
  .object({
    acidMass: number,
    acidValue: optional,
    acidMolarMass: optional,
    acidEquivalents: optional,
    baseMolarMass: number,
    baseEquivalents: number,
    baseConcentrationPercent: number,
    fraction: number,
  })
  .refine(
    (i) => i.acidValue !== undefined || (i.acidMolarMass !== undefined && i.acidEquivalents !== undefined),
    'give “acidValue”, or “acidMolarMass” with “acidEquivalents”',
  );
export const acidAtPh = z.object({ pKa: number, pH: number });
export const doseAtPh = acidAtPh.extend({ totalPercent: number });
export const droplet = z.object({ radius: number, densityDifference: number, viscosity: number });
export const rotor = z.object({ radiusCm: number, rpm: number });
export const ageing = z.object({
  realTemperature: number,
  testTemperature: number,
  q10: number,
  realTime: number,
});
export const shelfLife = z.object({
  q10: number,
  knownTemperature: number,
  knownTime: number,
  temperature: number,
});
export const q10Pair = z.object({ q10: number, temperature1: number, temperature2: number });
export const suspension = z.object({
  phi: number,
  phiMax: number,
  intrinsicViscosity: number,
  mediumViscosity: number,
});
export const substance = z.union(
  [z.object({ smiles: z.string() }), z.object({ formula: z.string() })],
  'give “smiles” or “formula” as a text',
);
export const dilution = z.object({ c1: number, v1: number, c2: number });
export const fill = z.object({ volume: number, density: number });

/** Required HLB of a case's oils, which always carry a value. */
export function required(oils: readonly { mass: number; requiredHlb: number }[]): number {
  const lines = oils.map(({ mass, requiredHlb: value }, index) => ({
    name: `oil ${index + 1}`,
    mass,
    value,
    low: null,
    high: null,
    source: null,
  }));
  return requiredHlb(lines, 'o/w').worked.value;
}

export function neutralisationWish(i: z.infer<typeof neutralisation>): NeutralisationWish {
  const acid: AcidStrength =
    i.acidValue !== undefined
      ? { acidValue: i.acidValue }
      : { molarMass: i.acidMolarMass ?? Number.NaN, equivalents: i.acidEquivalents ?? Number.NaN };
  const base = {
    molarMass: i.baseMolarMass,
    equivalents: i.baseEquivalents,
    concentrationPercent: i.baseConcentrationPercent,
    handling: [],
  };
  return { acidMass: i.acidMass, acid, base, fraction: i.fraction };
}
