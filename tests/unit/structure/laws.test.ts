import fc from 'fast-check';
import { DAVIES_GROUPS, type DaviesGroupId } from '@core/emulsions/davies-groups';
import { daviesHlb } from '@core/emulsions/davies';
import { ATOMIC_WEIGHTS } from '@core/structure/atomic-weights';
import { CHAINS, smilesOfPick, type ChainId, type HeadId } from '@core/structure/chain-and-head';
import { countAtoms } from '@core/structure/chemical-formula';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

const UNITS = 6;
const CARBONS: Partial<Record<ChainId, number>> = {
  c12: 12,
  c16: 16,
  c18: 18,
  'c18-1': 18,
  'c18-1-oh': 18,
  c22: 22,
};

/**
 * What Davies 1957 counts in each head, over n carbons of the fatty acid: a carbonyl carbon goes with its group, an
 * oxyethylene with its ether oxygen, so that the unit behind an ester has none and its two carbons stay.
 */
const COUNTED: Partial<Record<HeadId, (n: number) => Partial<Record<DaviesGroupId, number>>>> = {
  acid: (n) => ({ 'carboxylic-acid': 1, carbon: n - 1 }),
  'soap-na': (n) => ({ 'carboxylate-na': 1, carbon: n - 1 }),
  'soap-k': (n) => ({ 'carboxylate-k': 1, carbon: n - 1 }),
  alcohol: (n) => ({ hydroxyl: 1, carbon: n }),
  'peg-ether': (n) => ({ oxyethylene: UNITS, hydroxyl: 1, carbon: n }),
  'peg-ester': (n) => ({ ester: 1, oxyethylene: UNITS - 1, hydroxyl: 1, carbon: n + 1 }),
  glycol: (n) => ({ ester: 1, hydroxyl: 1, carbon: n + 1 }),
  'propylene-glycol': (n) => ({ ester: 1, hydroxyl: 1, carbon: n + 2 }),
  glyceryl: (n) => ({ ester: 1, hydroxyl: 2, carbon: n + 2 }),
  polyglyceryl: (n) => ({ ester: 1, ether: UNITS - 1, hydroxyl: UNITS + 1, carbon: n - 1 + 3 * UNITS }),
  'sulfate-na': (n) => ({ 'sulfate-na': 1, carbon: n }),
  'dimethyl-amine': (n) => ({ 'tertiary-amine': 1, carbon: n + 2 }),
};

describe.each(Object.entries(COUNTED))('Davies’ groups of a chain with the head “%s”', (head, counted) => {
  it('are those counted by hand, on every chain', () => {
    for (const [chain, carbons] of Object.entries(CARBONS)) {
      const { groups, withoutNumber } = readStructure(smilesOfPick(chain as ChainId, head as HeadId, UNITS));
      const expected = counted(carbons);
      // Ricinoleic acid bears a hydroxyl of its own.
      if (chain === 'c18-1-oh') expected.hydroxyl = (expected.hydroxyl ?? 0) + 1;
      expect(groups, chain).toEqual(expected);
      expect(withoutNumber).toEqual([]);
    }
  });

  it('add up to its HLB: 7 and each number as often as its group stands there', () => {
    const counts = counted(18);
    const byHand = Object.entries(counts).reduce(
      (sum, [id, count]) => sum + count * DAVIES_GROUPS[id as DaviesGroupId].number,
      7,
    );
    const { groups } = readStructure(smilesOfPick('c18', head as HeadId, UNITS));
    expect(daviesHlb(groups).value).toBeCloseTo(byHand, 9);
  });
});

describe('a head without a number of Davies', () => {
  it.each(['soap-tea', 'ether-sulfate-na', 'trimethyl-ammonium'] as const)(
    '%s is named, never counted',
    (head) => {
      for (const chain of Object.keys(CHAINS) as ChainId[])
        expect(readStructure(smilesOfPick(chain, head, 2)).withoutNumber, chain).toHaveLength(1);
    },
  );
});

describe('one molecule, however it is written', () => {
  it.each([
    ['ethanol', ['CCO', 'OCC', 'C(O)C', '[CH3][CH2][OH]', '[H]OCC', 'C1.C1O', 'C-C-O']],
    ['benzoic acid', ['c1ccccc1C(=O)O', 'OC(=O)c1ccccc1', 'C1=CC=CC=C1C(O)=O', 'O=C(O)c%10ccccc%10']],
    ['sodium laurate', ['CCCCCCCCCCCC(=O)[O-].[Na+]', '[Na+].[O-]C(=O)CCCCCCCCCCC', 'CCCCCCCCCCCC(=O)O[Na]']],
    ['oleic acid', ['CCCCCCCCC=CCCCCCCCC(=O)O', 'CCCCCCCC/C=C\\CCCCCCCC(=O)O', 'OC(=O)CCCCCCCC=CCCCCCCCC']],
    ['glycerol', ['OCC(O)CO', 'C(C(CO)O)O', 'OC[C@H](O)CO']],
    ['laureth-2', ['CCCCCCCCCCCCOCCOCCO', 'OCCOCCOCCCCCCCCCCCC', 'C(CO)OCCOCCCCCCCCCCCC']],
    ['cetrimonium chloride', ['CCCCCCCCCCCCCCCC[N+](C)(C)C.[Cl-]', '[Cl-].C[N+](C)(C)CCCCCCCCCCCCCCCC']],
  ])('%s has one formula, mass, charge and hydrophile', (_, [first = '', ...others]) => {
    const { formula, molarMass, charge, hydrophilicMolarMass, groups, ester } = readStructure(first);
    for (const smiles of others) {
      const read = readStructure(smiles);
      expect(read, smiles).toMatchObject({ formula, charge, groups, ester });
      expect(read.molarMass.value).toBeCloseTo(molarMass.value, 9);
      expect(read.hydrophilicMolarMass).toBeCloseTo(hydrophilicMolarMass, 9);
    }
  });

  it.each([
    ['CCCCCCCCCCCCOS(=O)(=O)[O-].[Na+]', 'anionic'],
    ['CCCCCCCCCCCC(=O)O', 'non-ionic'],
    ['CCCCCCCCCCCCCCCC[N+](C)(C)C.[Cl-]', 'cationic'],
    ['CCCCCCCCCCCC[N+](C)(C)CC(=O)[O-]', 'amphoteric'],
    // Charges that neighbours cancel make no ion.
    ['CCCCCCCCCCCC[N+](C)(C)[O-]', 'non-ionic'],
    ['CC[N+](=O)[O-]', 'non-ionic'],
  ])('%s is %s', (smiles, charge) => {
    expect(readStructure(smiles).charge).toBe(charge);
  });
});

describe('a structure grown by one unit', () => {
  it('weighs 44.053 g/mol more with each oxyethylene, all of it hydrophile, and 14.027 with each methylene, none of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 6, max: 22 }), (units, carbons) => {
        const of = (n: number, c: number) => readStructure(`${'C'.repeat(c)}${'OCC'.repeat(n)}O`);
        const [base, ethoxy, methylene] = [
          of(units, carbons),
          of(units + 1, carbons),
          of(units, carbons + 1),
        ];
        expect(ethoxy.molarMass.value - base.molarMass.value).toBeCloseTo(44.053, 2);
        expect(ethoxy.hydrophilicMolarMass - base.hydrophilicMolarMass).toBeCloseTo(44.053, 2);
        expect(ethoxy.oxyethyleneUnits).toBe(units + 1);
        expect(methylene.molarMass.value - base.molarMass.value).toBeCloseTo(14.027, 2);
        expect(methylene.hydrophilicMolarMass).toBeCloseTo(base.hydrophilicMolarMass, 9);
        expect(base.oxyethylenePercent + base.polyolPercent).toBeLessThan(100);
      }),
      { numRuns: 25 },
    );
  });

  it('of an ester has S and A by the masses of ester and acid: glyceryl stearate 156.5 and 197.2, by hand', () => {
    // 56106 / 358.563 and 56106 / 284.484.
    const { ester } = readStructure(smilesOfPick('c18', 'glyceryl', null));
    expect(ester?.saponificationNumber).toBeCloseTo(156.47, 1);
    expect(ester?.acidNumber).toBeCloseTo(197.22, 1);
  });
});

describe('a written formula', () => {
  const elements = ['C', 'H', 'O', 'N', 'S', 'Na', 'Cl', 'Si', 'Mg'] as const;
  const counts = fc.uniqueArray(fc.tuple(fc.constantFrom(...elements), fc.integer({ min: 1, max: 60 })), {
    minLength: 1,
    maxLength: 6,
    selector: ([element]) => element,
  });
  const written = (atoms: readonly (readonly [string, number])[]) =>
    atoms.map(([element, count]) => (count === 1 ? element : `${element}${count}`)).join('');

  it('gives back the atoms that it was written from, in any order and in small figures', () => {
    fc.assert(
      fc.property(counts, (atoms) => {
        const expected = Object.fromEntries(atoms);
        expect(Object.fromEntries(countAtoms(written(atoms)))).toEqual(expected);
        expect(Object.fromEntries(countAtoms(written([...atoms].reverse())))).toEqual(expected);
        const small = written(atoms).replace(/\d/g, (digit) => '₀₁₂₃₄₅₆₇₈₉'.charAt(Number(digit)));
        expect(Object.fromEntries(countAtoms(small))).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });

  it('in brackets counts as often as they say, and a hydrate adds its water', () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 2, max: 9 }), (atoms, times) => {
        const mass = (formula: string) => molarMassOfFormula(formula).value;
        const once = mass(written(atoms));
        expect(mass(`(${written(atoms)})${times}`)).toBeCloseTo(times * once, 6);
        expect(mass(`[(${written(atoms)})${times}]2`)).toBeCloseTo(2 * times * once, 6);
        expect(mass(`${written(atoms)}·${times}H2O`)).toBeCloseTo(once + times * 18.015, 6);
        expect(mass(`${times}(${written(atoms)})`)).toBeCloseTo(times * once, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('weighs what its atoms weigh, one element or all of them', () => {
    for (const [element, weight] of Object.entries(ATOMIC_WEIGHTS))
      expect(molarMassOfFormula(element).value, element).toBe(weight);
  });
});
