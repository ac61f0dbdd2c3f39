import { countAtoms } from '@core/structure/chemical-formula';
import { pairsOff } from '@core/structure/perfect-matching';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { parseSmiles } from '@core/structure/parse-smiles';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const NOT_AROMATIC = /aromatic, but stands in no aromatic ring/;
const NO_KEKULE = /no alternation of single and double bonds/;
const NOWHERE = /a bond leads nowhere/;

describe('a SMILES that the library would read as another substance is refused', () => {
  it.each([
    ['cco', NOT_AROMATIC],
    ['Cc', NOT_AROMATIC],
    ['c1ccccc1c', NOT_AROMATIC],
    ['c1ccccc1.c', NOT_AROMATIC],
    ['c1cccc1', NO_KEKULE],
    ['n1cccc1', NO_KEKULE],
    ['c1ccc2cccc2c1', NO_KEKULE],
    ['c1(C)(C)ccccc1', NO_KEKULE],
    ['C:C', /aromatic bond/],
    ['C-', NOWHERE],
    ['C=', NOWHERE],
    ['C(=)C', NOWHERE],
    ['C=(C)C', NOWHERE],
    ['C=.C', NOWHERE],
    ['=CC', /before any atom/],
    ['C.=C', /before any atom/],
    ['C==C', /two bonds/],
    ['C//C=C/C', /two bonds/],
    ['C()C', /a bracket is empty/],
    ['()', /no atom bears it/],
    ['(C)C', /no atom bears it/],
    ['C((C))C', /no atom bears it/],
    ['[]C', /“\[\]” is no atom/],
    ['12', /ring number 1 stands where no atom/],
    ['C(1CC1)', /ring number 1 stands where no atom/],
    ['.CC', /dot stands without/],
    ['CC.', /dot stands without/],
    ['C..C', /dot stands without/],
    ['C(.)C', /dot stands without/],
    ['C1CC', /ring number 1 is opened and never closed/],
    ['C1C1', /closes no ring/],
    ['C11', /closes no ring/],
    ['C=1CC#1', /one bond where it opens/],
    ['C~C', /“~” is no atom/],
    ['[Na+', /brackets do not pair/],
    ['[C!]', /“\[C!\]” is no atom/],
  ])('%s', (smiles, says) => {
    refusal(() => parseSmiles(smiles), says);
  });
});

/** Formulas by hand or from textbooks; the molar mass of the formula is the independent check. */
const VALID: [smiles: string, formula: string][] = [
  ['C', 'CH4'],
  ['CCO', 'C2H6O'],
  ['OCC(O)CO', 'C3H8O3'],
  ['C(C)(C)C', 'C4H10'],
  ['CC(C)', 'C3H8'],
  ['C#N', 'CHN'],
  ['CC(=O)O', 'C2H4O2'],
  ['O=C=O', 'CO2'],
  ['C1CCCCC1', 'C6H12'],
  ['C%10CCCCC%10', 'C6H12'],
  ['C%(10)CCCCC%(10)', 'C6H12'],
  ['C=1CCCCC1', 'C6H10'],
  ['C=1CCCCC=1', 'C6H10'],
  ['C12CC1C2', 'C4H6'],
  ['c1ccccc1', 'C6H6'],
  ['c1:c:c:c:c:c1', 'C6H6'],
  ['C1=CC=CC=C1', 'C6H6'],
  ['c1=cc=cc=c1', 'C6H6'],
  ['c1ccccc1-c1ccccc1', 'C12H10'],
  ['c1ccccc1c1ccccc1', 'C12H10'],
  ['c1ccc2ccccc2c1', 'C10H8'],
  ['c1ccc2cccc-2cc1', 'C10H8'],
  ['c1cccc2cccc2c1', 'C10H8'],
  ['c1cc[nH]c1', 'C4H5N'],
  ['[nH]1cccc1', 'C4H5N'],
  ['Cn1cccc1', 'C5H7N'],
  ['c1ccncc1', 'C5H5N'],
  ['c1cnc[nH]1', 'C3H4N2'],
  ['c1ccoc1', 'C4H4O'],
  ['c1ccsc1', 'C4H4S'],
  ['c1cc[se]c1', 'C4H4Se'],
  ['c1ccc2[nH]ccc2c1', 'C8H7N'],
  ['Cn1cnc2c1c(=O)n(C)c(=O)n2C', 'C8H10N4O2'],
  ['O=c1cccc[nH]1', 'C5H5NO'],
  ['O=c1ccc(=O)cc1', 'C6H4O2'],
  ['O=c1cccccc1', 'C7H6O'],
  ['c1cc[n+]([O-])cc1', 'C5H5NO'],
  ['O=n1ccccc1', 'C5H5NO'],
  ['O=C1c2ccccc2C(=O)N1', 'C8H5NO2'],
  ['[O-]n1ccccc1=S.[Na+]', 'C5H4NNaOS'],
  ['CCCCCCCCCCCCCCCC[n+]1ccccc1.[Cl-]', 'C21H38NCl'],
  ['C[N+](C)(C)CC(=O)[O-]', 'C5H11NO2'],
  ['[Na+].CCCCCCCCCCCC(=O)[O-]', 'C12H23NaO2'],
  ['[Ca++].[O-]C(=O)C.[O-]C(=O)C', 'C4H6CaO4'],
  ['N[C@@H](C)C(=O)O', 'C3H7NO2'],
  ['F/C=C/F', 'C2H2F2'],
  ['CCCCCCCC/C=C\\CCCCCCCC(=O)O', 'C18H34O2'],
  ['[H]OC([H])([H])C', 'C2H6O'],
  ['[CH3:1][OH:2]', 'CH4O'],
  ['CS(=O)(=O)C', 'C2H6O2S'],
  ['C[Si](C)(C)O[Si](C)(C)C', 'C6H18OSi2'],
];

describe('valid SMILES stay valid', () => {
  it.each(VALID)('%s is %s', (smiles, formula) => {
    const { counts } = parseSmiles(smiles);
    expect([...counts].sort()).toEqual([...countAtoms(formula)].sort());
  });
});

describe('pairing off', () => {
  const graphs = fc
    .tuple(fc.integer({ min: 2, max: 8 }), fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { maxLength: 14 }))
    .map(([size, pairs]) => {
      const neighbours = Array.from({ length: size }, () => new Set<number>());
      for (const [one, two] of pairs) {
        if (one === two || one >= size || two >= size) continue;
        neighbours[one]?.add(two);
        neighbours[two]?.add(one);
      }
      return neighbours.map((own) => [...own]);
    });
  /** By trying every pairing. */
  const exhaustive = (neighbours: number[][], left: number[]): boolean => {
    const [first, ...rest] = left;
    if (first === undefined) return true;
    return (neighbours[first] ?? []).some(
      (mate) =>
        rest.includes(mate) &&
        exhaustive(
          neighbours,
          rest.filter((one) => one !== mate),
        ),
    );
  };

  it('agrees with trying every pairing', () => {
    fc.assert(
      fc.property(graphs, (neighbours) => {
        expect(pairsOff(neighbours)).toBe(exhaustive(neighbours, [...neighbours.keys()]));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a formula', () => {
  it.each(['C0', 'C0H4', 'CuSO4·0H2O', '(CH2)0C'])('%s counts nothing and is refused', (formula) => {
    refusal(() => molarMassOfFormula(formula), /a count is zero/);
  });
});
