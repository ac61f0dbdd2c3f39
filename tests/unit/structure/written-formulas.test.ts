import { countAtoms } from '@core/structure/chemical-formula';
import { drawStructure } from '@core/structure/drawing';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { pairsOff } from '@core/structure/perfect-matching';
import { parseSmiles } from '@core/structure/parse-smiles';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

describe('a formula as it is written', () => {
  it.each([
    // CRC Handbook and monographs, from memory, g/mol.
    ['NaOH', 40],
    ['KOH', 56.11],
    ['Ca(OH)2', 74.09],
    ['NaCl', 58.44],
    ['MgSO4', 120.37],
    ['MgSO4·7H2O', 246.47],
    ['MgSO4.7H2O', 246.47],
    ['MgSO4*7H2O', 246.47],
    ['MgSO4 x 7 H2O', 246.47],
    ['MgSO4 × 7 H2O', 246.47],
    ['MgSO4x7H2O', 246.47],
    ['MgSO4 · 7 H2O', 246.47],
    ['MgSO4 . 7 H₂O', 246.47],
    ['C6H8O7 x H2O', 210.14],
    ['ZnSO4·7H2O', 287.54],
    ['KAl(SO4)2·12H2O', 474.38],
    ['Al2(SO4)3', 342.15],
    ['Na2B4O7·10H2O', 381.37],
    ['C6H8O7·H2O', 210.14],
    ['Na3C6H5O7·2H2O', 294.1],
    ['TiO2', 79.87],
    ['Fe2O3', 159.69],
    ['Mg3Si4O10(OH)2', 379.26],
    ['Al2Si2O5(OH)4', 258.16],
    ['C₁₂H₂₅NaO₄S', 288.38],
    ['[Cu(NH3)4]SO4', 227.73],
    ['  H2O  ', 18.02],
  ])('%s weighs %d g/mol', (formula, mass) =>
    expect(Math.abs(molarMassOfFormula(formula).value - mass)).toBeLessThanOrEqual(0.04),
  );

  it.each([
    ['', /./],
    ['   ', /./],
    ['h2o', /“h” is not an element/],
    ['H2O)', /not an element/],
    ['Na(Cl', /a “\)” is missing/],
    ['Na[Cl', /a “\]” is missing/],
    ['Na(Cl]', /./],
    ['()', /a bracket is empty/],
    ['H0', /a count is zero/],
    ['C12H24Xx', /“Xx” is not an element/],
    ['H2O·', /./],
    ['x 7 H2O', /“x” is not an element/],
    ['2', /./],
    ['water', /“w” is not an element/],
    ['C-C', /“-” is not an element/],
  ] as const)('“%s” is refused, with how one is written', (formula, says) => {
    const problem = refusal(() => countAtoms(formula), says);
    expect(problem.advice).toMatch(/C18H36O2/);
  });

  it('shows no more of a long text than fits a line', () => {
    const { message } = refusal(() => countAtoms('Xx'.repeat(400)), /cannot be read/);
    expect(message.length).toBeLessThan(200);
  });

  it('weighs the same as its structure', () => {
    for (const [smiles, formula] of [
      ['CCO', 'C2H6O'],
      ['OC(=O)CC(O)(CC(=O)O)C(=O)O', 'C6H8O7'],
      ['[Na+].[Cl-]', 'NaCl'],
      ['O', 'H2O'],
      ['c1ccccc1', 'C6H6'],
      ['[NH4+].[Cl-]', 'NH4Cl'],
    ] as const)
      expect(molarMassOfSmiles(smiles).value, smiles).toBeCloseTo(molarMassOfFormula(formula).value, 9);
  });
});

describe('a structure that no molecule is', () => {
  it.each([
    ['', /There is no SMILES/],
    ['   ', /There is no SMILES/],
    ['CC O', /it holds a space/],
    ['CC>>O', /it is a reaction/],
    ['C*', /it holds a wildcard/],
    ['C(', /its brackets do not pair/],
    ['C)', /its brackets do not pair/],
    ['C[', /its brackets do not pair/],
    ['(C]', /its brackets do not pair/],
    ['C'.repeat(4001), /longer than 4000 characters/],
    ['C'.repeat(401), /401 heavy atoms; 400 are the most/],
    ['CC.CCO', /is a mixture of 2 parts/],
    ['CCCCCCCCCCCC(=O)[O-].CCCCCCCCCCCCCCCC[N+](C)(C)C', /is a mixture of 2 parts/],
    ['[Na+].[K+].CCC(=O)[O-]', /is a mixture of 3 parts/],
    ['C(C)(C)(C)(C)C', /more bonds than it can hold/],
    ['[13CH4]', /holds an isotope/],
    ['[H][H]', /hydrogen alone/],
  ] as const)('%j is refused in words', (smiles, says) => {
    const problem = refusal(() => parseSmiles(smiles), says);
    expect(problem.advice).toMatch(/[Ee]nter|Write|Check|Give|Replace/);
    expect(problem.message.length).toBeLessThan(250);
  });

  it('at 400 heavy atoms is still read', () => {
    expect(parseSmiles('C'.repeat(400)).atoms).toHaveLength(400);
  });
});

describe('a structure that is drawn', () => {
  const SHOWN = [
    'CCO',
    'OCC(O)CO',
    'c1ccccc1C(=O)O',
    '[Na+].CCCC(=O)[O-]',
    'C',
    'CCCCCCCCCCCCOCCOCCO',
    'CC#N',
  ];

  it.each(SHOWN)('%s lies within its sheet, with a letter at each hetero atom', (smiles) => {
    const { width, height, lines, labels } = drawStructure(smiles);
    for (const { x1, y1, x2, y2 } of lines)
      for (const [x, y] of [
        [x1, y1],
        [x2, y2],
      ] as const) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(height);
      }
    const hetero = parseSmiles(smiles).atoms.filter(({ element }) => element !== 'C').length;
    expect(labels.length).toBeGreaterThanOrEqual(hetero);
    expect(Number.isFinite(width) && Number.isFinite(height)).toBe(true);
  });

  it.each([
    ['CCO', ['OH']],
    ['OCC(O)CO', ['OH', 'OH', 'OH']],
    ['CC(=O)[O-].[Na+]', ['Na⁺', 'O', 'O⁻']],
    ['CN', ['NH₂']],
    ['C', ['CH₄']],
    ['[Mg+2].[Cl-].[Cl-]', ['Cl⁻', 'Cl⁻', 'Mg²⁺']],
  ])('%s bears the letters %j', (smiles, letters) =>
    expect(
      drawStructure(smiles)
        .labels.map(({ text }) => text)
        .sort(),
    ).toEqual([...letters].sort()),
  );
});

describe('whether all can be paired off', () => {
  const graph = (count: number, edges: readonly (readonly [number, number])[]): number[][] => {
    const neighbours = Array.from({ length: count }, (): number[] => []);
    for (const [a, b] of edges) {
      neighbours[a]!.push(b);
      neighbours[b]!.push(a);
    }
    return neighbours;
  };
  const ring = (count: number): (readonly [number, number])[] =>
    Array.from({ length: count }, (_, n) => [n, (n + 1) % count] as const);

  it.each([
    ['nobody', graph(0, []), true],
    ['one alone', graph(1, []), false],
    ['two that know each other', graph(2, [[0, 1]]), true],
    ['two that do not', graph(2, []), false],
    ['benzene', graph(6, ring(6)), true],
    ['a ring of five', graph(5, ring(5)), false],
    ['naphthalene', graph(10, [...ring(10), [0, 5]]), true],
    ['two rings of five on one bond', graph(8, [...ring(8), [0, 4]]), true],
    [
      'two triangles on a bridge',
      graph(6, [
        [0, 1],
        [1, 2],
        [2, 0],
        [3, 4],
        [4, 5],
        [5, 3],
        [0, 3],
      ]),
      true,
    ],
    [
      'a star of four',
      graph(4, [
        [0, 1],
        [0, 2],
        [0, 3],
      ]),
      false,
    ],
  ] as const)('%s: %#', (_, neighbours, paired) => expect(pairsOff(neighbours)).toBe(paired));

  it('is what trying every pairing says', () => {
    const tried = (neighbours: readonly (readonly number[])[], left: readonly number[]): boolean => {
      const [first, ...others] = left;
      if (first === undefined) return true;
      return others.some(
        (other) =>
          neighbours[first]!.includes(other) &&
          tried(
            neighbours,
            others.filter((one) => one !== other),
          ),
      );
    };
    const edges = fc.uniqueArray(
      fc.tuple(fc.nat(7), fc.nat(7)).filter(([a, b]) => a < b),
      {
        maxLength: 14,
        selector: ([a, b]) => a * 8 + b,
      },
    );
    fc.assert(
      fc.property(edges, (all) => {
        const neighbours = graph(8, all);
        expect(pairsOff(neighbours)).toBe(tried(neighbours, [0, 1, 2, 3, 4, 5, 6, 7]));
      }),
    );
  });
});
