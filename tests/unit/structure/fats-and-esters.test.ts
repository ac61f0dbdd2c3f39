import fc from 'fast-check';
import { smilesOfPick, type ChainId, type HeadId } from '@core/structure/chain-and-head';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

const chain = (carbons: number): string => 'C'.repeat(carbons);
const acyl = (carbons: number): string => `${chain(carbons - 1)}C(=O)`;
const OLEOYL = 'CCCCCCCCC=CCCCCCCCC(=O)';
const LINOLEOYL = 'CCCCCC=CCC=CCCCCCCCC(=O)';
/** An acyl group as it is written behind an oxygen: from its carbonyl on. */
const behind = (of: string): string => `C(=O)${[...of.replace(/C\(=O\)$/, '')].reverse().join('')}`;
const triglyceride = (of: string): string => `${of}OCC(O${behind(of)})CO${behind(of)}`;

describe('the formula of a pick, by hand', () => {
  it.each([
    ['acid', null, 'C12H24O2'],
    ['soap-na', null, 'C12H23NaO2'],
    ['soap-k', null, 'C12H23KO2'],
    // Lauric acid C12H24O2 and triethanolamine C6H15NO3.
    ['soap-tea', null, 'C18H39NO5'],
    ['alcohol', null, 'C12H26O'],
    ['peg-ether', 3, 'C18H38O4'],
    ['peg-ester', 3, 'C18H36O5'],
    ['glycol', null, 'C14H28O3'],
    ['propylene-glycol', null, 'C15H30O3'],
    ['glyceryl', null, 'C15H30O4'],
    // Triglycerol C9H20O7 less water.
    ['polyglyceryl', 3, 'C21H42O8'],
    ['sorbitan', null, 'C18H34O6'],
    // Twenty of C2H4O more.
    ['polysorbate', 20, 'C58H114O26'],
    ['glucoside', null, 'C18H36O6'],
    ['sulfate-na', null, 'C12H25NaO4S'],
    ['ether-sulfate-na', 2, 'C16H33NaO6S'],
    ['dimethyl-amine', null, 'C14H31N'],
    ['trimethyl-ammonium', null, 'C15H34ClN'],
  ] as const)('of the C12 chain with “%s” and %s', (head, count, formula) => {
    expect(readStructure(smilesOfPick('c12', head, count)).formula).toBe(formula);
  });

  // Acid values of the pure acids, 56 106 over the molar mass (The Merck Index and suppliers print them), from memory.
  it.each([
    ['c8', 'C8H16O2', 389],
    ['c10', 'C10H20O2', 326],
    ['c12', 'C12H24O2', 280],
    ['c14', 'C14H28O2', 246],
    ['c16', 'C16H32O2', 219],
    ['c18', 'C18H36O2', 197],
    ['c18-iso', 'C18H36O2', 197],
    ['c18-1', 'C18H34O2', 199],
    ['c18-1-oh', 'C18H34O3', 188],
    ['c18-2', 'C18H32O2', 200],
    ['c20', 'C20H40O2', 180],
    ['c22', 'C22H44O2', 165],
    ['c22-1', 'C22H42O2', 166],
  ] as const)('of the acid on the chain %s is %s, its acid value %d', (one, formula, acidValue) => {
    expect(readStructure(smilesOfPick(one, 'acid', null)).formula).toBe(formula);
    const { ester } = readStructure(smilesOfPick(one, 'glyceryl', null));
    expect(Math.round(ester?.acidNumber ?? 0)).toBe(acidValue);
  });

  it('takes a number only where the head counts something', () => {
    expect(smilesOfPick('c12', 'acid', 7)).toBe(smilesOfPick('c12', 'acid', null));
    expect(smilesOfPick('c12', 'peg-ether', 2)).not.toBe(smilesOfPick('c12', 'peg-ether', 3));
    // One glycerol more is C3H6O2, 74.079 g/mol.
    const mass = (n: number): number => molarMassOfSmiles(smilesOfPick('c18', 'polyglyceryl', n)).value;
    expect(mass(10) - mass(2)).toBeCloseTo(8 * 74.079, 2);
  });
});

describe('a fat', () => {
  // Saponification values of the pure triglycerides, mg KOH/g (oil chemistry handbooks), from memory.
  it.each([
    ['tricaprylin', triglyceride(acyl(8)), 'C27H50O6', 357.6],
    ['tricaprin', triglyceride(acyl(10)), 'C33H62O6', 303.4],
    ['trilaurin', triglyceride(acyl(12)), 'C39H74O6', 263.5],
    ['trimyristin', triglyceride(acyl(14)), 'C45H86O6', 232.7],
    ['tripalmitin', triglyceride(acyl(16)), 'C51H98O6', 208.5],
    ['tristearin', triglyceride(acyl(18)), 'C57H110O6', 188.8],
    ['triolein', triglyceride(OLEOYL), 'C57H104O6', 190.1],
    ['trilinolein', triglyceride(LINOLEOYL), 'C57H98O6', 191.4],
    ['tribehenin', triglyceride(acyl(22)), 'C69H134O6', 158.9],
  ])('%s has its formula and saponification value', (_, smiles, formula, value) => {
    const { ester, formula: read } = readStructure(smiles);
    expect(read).toBe(formula);
    expect(Math.abs((ester?.saponificationNumber ?? 0) - value)).toBeLessThan(0.4);
  });

  it('of one glycerol with more acids holds less polyol: mono, di and tristearate 5.1, 2.9, 2.1 by mass', () => {
    // 92.094 of 358.563, 625.03 and 891.50, in twentieths.
    const mono = smilesOfPick('c18', 'glyceryl', null);
    const di = `${acyl(18)}OCC(O)CO${behind(acyl(18))}`;
    const of = (smiles: string): number => readStructure(smiles).polyolPercent / 5;
    expect(of(mono)).toBeCloseTo(5.137, 2);
    expect(of(di)).toBeCloseTo(2.947, 2);
    expect(of(triglyceride(acyl(18)))).toBeCloseTo(2.066, 2);
  });

  it('mixed of two acids lies between those of one, wherever the acids sit', () => {
    const fat = (a: string, b: string, c: string): string => `${a}OCC(O${behind(b)})CO${behind(c)}`;
    const value = (smiles: string): number => readStructure(smiles).ester?.saponificationNumber ?? 0;
    const mixed = value(fat(acyl(12), acyl(18), acyl(12)));
    expect(value(fat(acyl(18), acyl(12), acyl(12)))).toBeCloseTo(mixed, 9);
    expect(mixed).toBeLessThan(value(triglyceride(acyl(12))));
    expect(mixed).toBeGreaterThan(value(triglyceride(acyl(18))));
  });
});

describe('an ester', () => {
  const carbons = fc.integer({ min: 4, max: 22 });

  it('weighs its acid and its alcohol less one water, 18.015 g/mol', () => {
    fc.assert(
      fc.property(carbons, carbons, (acid, alcohol) => {
        const mass = (smiles: string): number => molarMassOfSmiles(smiles).value;
        expect(mass(`${acyl(acid)}O${chain(alcohol)}`)).toBeCloseTo(
          mass(`${acyl(acid)}O`) + mass(`O${chain(alcohol)}`) - 18.015,
          6,
        );
      }),
      { numRuns: 25 },
    );
  });

  it('is the same read from either end, and branched it has the groups and the mass that it has straight', () => {
    fc.assert(
      fc.property(carbons, carbons, fc.integer({ min: 0, max: 1 }), (acid, alcohol, at) => {
        const straight = readStructure(`${acyl(acid)}O${chain(alcohol)}`);
        const turned = readStructure(`${chain(alcohol)}OC(=O)${chain(acid - 1)}`);
        expect([turned.formula, turned.groups]).toEqual([straight.formula, straight.groups]);
        // One carbon hangs beside the chain instead of at its end.
        const branched = readStructure(`${acyl(acid)}O${chain(at + 1)}(C)${chain(alcohol - at - 2)}`);
        expect([branched.formula, branched.groups]).toEqual([straight.formula, straight.groups]);
      }),
      { numRuns: 25 },
    );
  });

  // Esters of the trade with the molar masses that suppliers print, from memory.
  it.each([
    ['caprylic/capric diglyceride, of C8', `${acyl(8)}OCC(O)CO${behind(acyl(8))}`, 'C19H36O5', 344.49],
    ['propylene glycol dicaprylate', `${acyl(8)}OCC(C)O${behind(acyl(8))}`, 'C19H36O4', 328.49],
    ['coco-caprylate, of C12', `${acyl(8)}O${chain(12)}`, 'C20H40O2', 312.53],
    ['dibutyl adipate', 'CCCCOC(=O)CCCCC(=O)OCCCC', 'C14H26O4', 258.36],
    ['diisopropyl sebacate', 'CC(C)OC(=O)CCCCCCCCC(=O)OC(C)C', 'C16H30O4', 286.41],
    ['triethyl citrate', 'CCOC(=O)CC(O)(CC(=O)OCC)C(=O)OCC', 'C12H20O7', 276.28],
    ['triacetin', 'CC(=O)OCC(OC(C)=O)COC(C)=O', 'C9H14O6', 218.2],
    ['C12-15 alkyl benzoate, of C13', `O=C(O${chain(13)})c1ccccc1`, 'C20H32O2', 304.47],
    ['tocopheryl acetate', 'CC(=O)Oc1c(C)c(C)c2OC(C)(CCCC(C)CCCC(C)CCCC(C)C)CCc2c1C', 'C31H52O3', 472.75],
    ['ascorbyl palmitate', `${acyl(16)}OCC(O)C1OC(=O)C(O)=C1O`, 'C22H38O7', 414.54],
    ['benzyl benzoate', 'O=C(OCc1ccccc1)c1ccccc1', 'C14H12O2', 212.25],
  ])('%s', (_, smiles, formula, mass) => {
    const read = readStructure(smiles);
    expect(read.formula).toBe(formula);
    expect(Math.abs(read.molarMass.value - mass)).toBeLessThan(0.04);
    expect(molarMassOfFormula(formula).value).toBeCloseTo(read.molarMass.value, 6);
  });
});

describe('a soap', () => {
  const base = (head: HeadId, one: ChainId): number => molarMassOfSmiles(smilesOfPick(one, head, null)).value;

  it('of potassium weighs 16.108 g/mol more than of sodium, and 21.982 more than its acid, on every chain', () => {
    // K 39.098, Na 22.990, H 1.008.
    for (const one of ['c8', 'c12', 'c18', 'c18-1', 'c22'] as const) {
      expect(base('soap-k', one) - base('soap-na', one)).toBeCloseTo(16.108, 6);
      expect(base('soap-na', one) - base('acid', one)).toBeCloseTo(21.982, 6);
      // With triethanolamine, 149.19: the whole base is added and nothing is lost.
      expect(base('soap-tea', one) - base('acid', one)).toBeCloseTo(149.19, 2);
    }
  });

  it.each([
    ['calcium stearate', `[Ca+2].${acyl(18)}[O-].${acyl(18)}[O-]`, 'C36H70CaO4', 607.03],
    ['magnesium stearate', `[Mg+2].${acyl(18)}[O-].${acyl(18)}[O-]`, 'C36H70MgO4', 591.26],
    ['zinc stearate', `[Zn+2].${acyl(18)}[O-].${acyl(18)}[O-]`, 'C36H70O4Zn', 632.33],
    [
      'aluminum tristearate',
      `[Al+3].${[1, 2, 3].map(() => `${acyl(18)}[O-]`).join('.')}`,
      'C54H105AlO6',
      877.41,
    ],
    ['sodium cocoate, of C12', `[Na+].${acyl(12)}[O-]`, 'C12H23NaO2', 222.3],
  ])('%s is one substance with its formula and handbook mass', (_, smiles, formula, mass) => {
    const read = readStructure(smiles);
    expect(read.formula).toBe(formula);
    expect(Math.abs(read.molarMass.value - mass)).toBeLessThan(0.06);
    expect(read.charge).toBe('anionic');
  });
});
