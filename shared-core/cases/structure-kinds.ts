import { z } from 'zod';
import { BLANK_NEUTRALISE } from '../calculators/neutralise-request';
import { calculateNeutralise } from '../calculators/neutralise';
import { hlbByAllMethods, HLB_METHODS, type HlbMethod } from '../emulsions/hlb-methods';
import { hlbInputOf } from '../structure/hlb-of-structure';
import { readStructure } from '../structure/read-structure';
import { badInput } from '../working/inputs';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const structure = z.object({
  smiles: z.string('must be a text'),
  method: z.enum(Object.keys(HLB_METHODS) as [HlbMethod, ...HlbMethod[]], 'must name a method'),
});

const toPh = z.object({
  acidPercent: number,
  molarMass: number,
  pKas: z.array(number, 'must be a list').min(1).max(3),
  pH: number,
  baseMolarMass: number,
  baseEquivalents: number,
});

/** HLB of a structure by one method; a method that does not apply refuses. */
function hlbOfStructure({ smiles, method }: z.infer<typeof structure>): number {
  const outcome = hlbByAllMethods(hlbInputOf(readStructure(smiles))).methods.find(
    (one) => one.method === method,
  );
  if (outcome?.applies) return outcome.worked.value;
  throw badInput(outcome?.reason ?? 'There is no such method.', 'Use another method.', 'method');
}

/** Pure base for an acid to a pH, % of the formula. */
function baseToPh(i: z.infer<typeof toPh>): number {
  const { results } = calculateNeutralise({
    ...BLANK_NEUTRALISE,
    acidKnownBy: 'molar mass',
    acidPercent: i.acidPercent,
    acidActivePercent: 100,
    acidMolarMass: i.molarMass,
    acidEquivalents: i.pKas.length,
    acidPKas: i.pKas,
    baseMolarMass: i.baseMolarMass,
    baseEquivalents: i.baseEquivalents,
    basePercent: 100,
    neutraliseTo: 'pH',
    pH: i.pH,
    waterPercent: 100,
  });
  return results.find((one) => one.key === 'percent')?.worked.value ?? Number.NaN;
}

export const STRUCTURE_KINDS: Readonly<Record<string, Kind>> = {
  'hlb-structure': kind(structure, hlbOfStructure),
  'neutralise-to-ph': kind(toPh, baseToPh),
};
