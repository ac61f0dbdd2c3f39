import { hlbByAllMethods, type HlbMethod } from '@core/emulsions/hlb-methods';
import { smilesOfPick } from '@core/structure/chain-and-head';
import { hlbInputOf } from '@core/structure/hlb-of-structure';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

function outcomeOf(smiles: string, method: HlbMethod): number | string {
  const found = hlbByAllMethods(hlbInputOf(readStructure(smiles))).methods.find(
    (one) => one.method === method,
  );
  if (!found) throw new Error(`No method ${method}.`);
  return found.applies ? found.worked.value : found.reason;
}

describe('oxypropylene in a chain is no polyol', () => {
  // 4 × 44.053 of 368.467 g/mol is 47.82 % oxyethylene, by hand.
  it.each([
    ['EO2-PO3-EO2', 'OCCOCCOC(C)COC(C)COC(C)COCCOCCO'],
    ['PO3 at one end', 'CC(O)COC(C)COC(C)COCCOCCOCCOCCO'],
  ])('%s has E/5 of its oxyethylene alone', (_, smiles) => {
    expect(readStructure(smiles).polyolPercent).toBe(0);
    expect(outcomeOf(smiles, 'ethoxylate')).toBeCloseTo(9.56, 2);
    expect(outcomeOf(smiles, 'mass')).toBeCloseTo(9.56, 2);
    expect(outcomeOf(smiles, 'polyol')).toBe('It holds no polyol.');
  });

  it('propylene glycol alone stays the polyol of its ester', () => {
    const { polyolPercent, molarMass } = readStructure(smilesOfPick('c18', 'propylene-glycol', null));
    // Propylene glycol C3H8O2 is 76.095 g/mol.
    expect((polyolPercent * molarMass.value) / 100).toBeCloseTo(76.095, 2);
  });
});

describe('the ester method takes fatty acids only', () => {
  const STEARATE = 'CCCCCCCCCCCCCCCCCC(=O)O';

  it.each([
    ['glyceryl stearate citrate', `${STEARATE}CC(O)COC(=O)CC(O)(C(=O)O)CC(=O)O`, /3 carboxyl groups/],
    ['glyceryl stearate succinate', `${STEARATE}CC(O)COC(=O)CCC(=O)O`, /2 carboxyl groups/],
    ['an acetylated monoglyceride', `${STEARATE}CC(O)COC(=O)C`, /2 carbons only/],
    ['glyceryl stearate lactate', `${STEARATE}CC(O)COC(=O)C(C)O`, /3 carbons only/],
    ['glyceryl benzoate', 'OCC(O)COC(=O)c1ccccc1', /holds a ring/],
    ['a stearoyl lactylate', `${STEARATE}C(C)C(=O)OCC(O)CO`, /esterified itself/],
    ['PEG-8 stearate', smilesOfPick('c18', 'peg-ester', 8), /oxyethylene chain/],
  ])('%s is refused, with why', (_, smiles, why) => {
    expect(outcomeOf(smiles, 'ester')).toMatch(why);
  });

  it.each([
    ['glyceryl stearate', smilesOfPick('c18', 'glyceryl', null)],
    ['glyceryl hydroxystearate', 'CCCCCCC(O)CCCCCCCCCCC(=O)OCC(O)CO'],
    ['glyceryl laurate', smilesOfPick('c12', 'glyceryl', null)],
  ])('%s is not', (_, smiles) => {
    expect(outcomeOf(smiles, 'ester')).toBeTypeOf('number');
  });

  it('an ether is no ester, and says nothing of acids', () => {
    expect(outcomeOf(smilesOfPick('c18', 'peg-ether', 2), 'ester')).toMatch(/It is no ester/);
  });
});
