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

describe('the ester method is for polyhydric alcohols', () => {
  it.each([
    ['isopropyl myristate', 'CCCCCCCCCCCCCC(=O)OC(C)C'],
    ['cetyl palmitate', `CCCCCCCCCCCCCCCC(=O)O${'C'.repeat(16)}`],
    ['decyl oleate', 'CCCCCCCCC=CCCCCCCCC(=O)OCCCCCCCCCC'],
    ['a jojoba ester', 'CCCCCCCCC=CCCCCCCCCCC(=O)OCCCCCCCCCCCC=CCCCCCCCC'],
    ['cetyl ethylhexanoate', `CCCCC(CC)C(=O)O${'C'.repeat(16)}`],
    ['cholesteryl isostearate', 'CC(C)CCCCCCCCCCCCCCC(=O)OC1CCC2(C)C(=CCC3C2CCC2(C)C3CCC2C(C)CCCC(C)C)C1'],
    ['laureth-1 stearate', 'CCCCCCCCCCCCCCCCCC(=O)OCCOCCCCCCCCCCCC'],
  ])('%s is refused: its alcohol has one hydroxyl', (_, smiles) => {
    expect(outcomeOf(smiles, 'ester')).toMatch(/one hydroxyl only/);
  });

  it('a glucoside or glyceryl ether with a fatty chain is refused too', () => {
    expect(outcomeOf('CCCCCCCCCCCCCCCCCC(=O)OCC(O)COCCCCCCCCCCCCCCCCCC', 'ester')).toMatch(/chain/);
  });

  // By hand, IUPAC weights: neopentyl glycol 104.149 of diheptanoate 328.493, 20 × 104.149 / 328.493 = 6.341;
  // S 2 × 56106 / 328.493 = 341.6, A 56106 / 130.187 = 431.0, 20 × (1 − S/A) = 4.147.
  it('neopentyl glycol diheptanoate is an ester of a diol, and holds it as its polyol', () => {
    const smiles = 'CCCCCCC(=O)OCC(C)(C)COC(=O)CCCCCC';
    expect(outcomeOf(smiles, 'polyol')).toBeCloseTo(6.341, 3);
    expect(outcomeOf(smiles, 'ester')).toBeCloseTo(4.147, 2);
  });

  it('hexanediol counts as a diol, a hydroxylated fatty alcohol as fat', () => {
    expect(outcomeOf('CCCCCCCC(=O)OCCCCCCOC(=O)CCCCCCC', 'polyol')).toBeTypeOf('number');
    expect(outcomeOf('CCCCCC(O)CCCCCCCCCCCOC(=O)CCCCCCC', 'polyol')).toBe('It holds no polyol.');
  });
});

describe('oxyethylene on nitrogen counts as oxyethylene', () => {
  // n × 44.053 of laurylamine 185.355 or lauramide 199.338 with n units, a fifth of it, by hand.
  it.each([
    ['PEG-15 laurylamine', `CCCCCCCCCCCCN(${'CCO'.repeat(8)})${'CCO'.repeat(7)}`, 15.619],
    ['PEG-5 lauramide', `CCCCCCCCCCCC(=O)N${'CCO'.repeat(5)}`, 10.498],
    ['lauramide MEA', 'CCCCCCCCCCCC(=O)NCCO', 3.62],
    ['lauramide DEA', 'CCCCCCCCCCCC(=O)N(CCO)CCO', 6.131],
  ])('%s', (_, smiles, hlb) => {
    expect(outcomeOf(smiles, 'ethoxylate')).toBeCloseTo(hlb, 2);
  });

  it('an ester of triethanolamine is no polyol ester', () => {
    expect(outcomeOf('CCCCCCCCCCCCCCCCCC(=O)OCCN(CCO)CCO', 'ester')).toMatch(/oxyethylene chain/);
  });
});

describe('rings and sugars', () => {
  it('isosorbide is no sorbitan to Davies: 7 + 2 × 2.4 + 2 × 1.3 − 20 × 0.475 = 4.9', () => {
    expect(outcomeOf('CCCCCCCC(=O)OC1COC2C1OCC2OC(=O)CCCCCCC', 'davies')).toBeCloseTo(4.9, 9);
  });

  // Methyl glucoside C7H14O6 194.183 of methyl glucose dioleate 723.089, by hand.
  it('a methyl glucoside is weighed with its methyl', () => {
    const dioleate = 'COC1OC(COC(=O)CCCCCCCC=CCCCCCCCC)C(OC(=O)CCCCCCCC=CCCCCCCCC)C(O)C1O';
    expect(outcomeOf(dioleate, 'polyol')).toBeCloseTo((20 * 194.183) / 723.089, 3);
    expect(outcomeOf(dioleate, 'ester')).toBeCloseTo(4.374, 2);
  });

  it('the methyl of an ether elsewhere is not', () => {
    const { polyolPercent, molarMass } = readStructure('COCC(O)CO');
    expect((polyolPercent * molarMass.value) / 100).toBeCloseTo(92.094, 2);
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
    expect(outcomeOf(smilesOfPick('c18', 'peg-ether', 2), 'ester')).toMatch(/It is not an ester/);
  });
});
