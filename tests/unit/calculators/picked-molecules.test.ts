import { calculateHlb } from '@core/calculators/hlb';
import { BLANK_HLB } from '@core/calculators/hlb-request';
import { countAtoms } from '@core/structure/chemical-formula';
import { CHAINS, HEADS, smilesOfPick, type ChainId, type HeadId } from '@core/structure/chain-and-head';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

type Atoms = Partial<Record<'C' | 'H' | 'O' | 'N' | 'S' | 'Na' | 'K' | 'Cl', number>>;

/** Carbons, double bonds and hydroxyls of each chain: of the fatty acid that it is named after. */
const CHAIN: Record<ChainId, [carbons: number, doubleBonds: number, hydroxyls: number]> = {
  ...{ c8: [8, 0, 0], c10: [10, 0, 0], c12: [12, 0, 0], c14: [14, 0, 0], c16: [16, 0, 0], c18: [18, 0, 0] },
  ...{ 'c18-iso': [18, 0, 0], 'c18-1': [18, 1, 0], 'c18-1-oh': [18, 1, 1], 'c18-2': [18, 2, 0] },
  ...{ c20: [20, 0, 0], c22: [22, 0, 0], 'c22-1': [22, 1, 0] },
};

const EO = 5;
const GLYCEROLS = 3;
/** What a head adds to the fatty acid, CnH2nO2, or to the alcohol, CnH2n+2O, by the equation of its making. */
const HEAD: Record<HeadId, { to: 'acid' | 'alcohol'; adds: Atoms; count?: number }> = {
  acid: { to: 'acid', adds: {} },
  'soap-na': { to: 'acid', adds: { H: -1, Na: 1 } },
  'soap-k': { to: 'acid', adds: { H: -1, K: 1 } },
  // Triethanolamine, C6H15NO3, takes up the acid's hydrogen.
  'soap-tea': { to: 'acid', adds: { C: 6, H: 15, N: 1, O: 3 } },
  alcohol: { to: 'alcohol', adds: {} },
  'peg-ether': { to: 'alcohol', adds: { C: 2 * EO, H: 4 * EO, O: EO }, count: EO },
  'peg-ester': { to: 'acid', adds: { C: 2 * EO, H: 4 * EO, O: EO }, count: EO },
  // Each ester loses a water to the polyol: glycol C2H6O2, propylene glycol C3H8O2, glycerol C3H8O3, sorbitan C6H12O5.
  glycol: { to: 'acid', adds: { C: 2, H: 4, O: 1 } },
  'propylene-glycol': { to: 'acid', adds: { C: 3, H: 6, O: 1 } },
  glyceryl: { to: 'acid', adds: { C: 3, H: 6, O: 2 } },
  polyglyceryl: {
    to: 'acid',
    adds: { C: 3 * GLYCEROLS, H: 6 * GLYCEROLS, O: 2 * GLYCEROLS },
    count: GLYCEROLS,
  },
  sorbitan: { to: 'acid', adds: { C: 6, H: 10, O: 4 } },
  polysorbate: { to: 'acid', adds: { C: 6 + 2 * EO, H: 10 + 4 * EO, O: 4 + EO }, count: EO },
  // Glucose, C6H12O6, less a water.
  glucoside: { to: 'alcohol', adds: { C: 6, H: 10, O: 5 } },
  'sulfate-na': { to: 'alcohol', adds: { H: -1, S: 1, O: 3, Na: 1 } },
  'ether-sulfate-na': {
    to: 'alcohol',
    adds: { C: 2 * EO, H: 4 * EO - 1, S: 1, O: 3 + EO, Na: 1 },
    count: EO,
  },
  // Dimethylamine, C2H7N, takes the place of a water; chloromethane, CH3Cl, joins it.
  'dimethyl-amine': { to: 'alcohol', adds: { C: 2, H: 5, N: 1, O: -1 } },
  'trimethyl-ammonium': { to: 'alcohol', adds: { C: 3, H: 8, N: 1, O: -1, Cl: 1 } },
};

function expected(chain: ChainId, head: HeadId): Atoms {
  const [carbons, doubleBonds, hydroxyls] = CHAIN[chain];
  const { to, adds } = HEAD[head];
  const start: Atoms = {
    C: carbons,
    H: 2 * carbons + (to === 'alcohol' ? 2 : 0) - 2 * doubleBonds,
    O: (to === 'alcohol' ? 1 : 2) + hydroxyls,
  };
  const all = Object.entries({ ...adds, ...start }).map(([element]) => {
    const key = element as keyof Atoms;
    return [key, (start[key] ?? 0) + (adds[key] ?? 0)] as const;
  });
  return Object.fromEntries(all.filter(([, count]) => count > 0));
}

/** IUPAC's abridged standard atomic weights (2021). */
const WEIGHTS = {
  C: 12.011,
  H: 1.008,
  O: 15.999,
  N: 14.007,
  S: 32.06,
  Na: 22.99,
  K: 39.098,
  Cl: 35.45,
} as const;

const calculated = (chain: ChainId, head: HeadId) =>
  calculateHlb({ ...BLANK_HLB, chain, head, count: HEAD[head].count ?? null }, new Map());

describe.each(Object.keys(HEADS) as HeadId[])('a fatty chain with the head “%s”', (head) => {
  it('has the atoms that its making leaves it, on every chain', () => {
    for (const chain of Object.keys(CHAINS) as ChainId[]) {
      const { reading } = calculated(chain, head);
      expect(Object.fromEntries(countAtoms(reading?.formula ?? '')), `${chain} ${head}`).toEqual(
        expected(chain, head),
      );
    }
  });

  it('weighs what those atoms weigh', () => {
    const atoms = Object.entries(expected('c18', head)) as [keyof typeof WEIGHTS, number][];
    const mass = atoms.reduce((sum, [element, count]) => sum + count * WEIGHTS[element], 0);
    expect(calculated('c18', head).reading?.molarMass.value).toBeCloseTo(mass, 1);
  });
});

describe('a picked molecule', () => {
  it.each([
    ['peg-ether', 0],
    ['peg-ether', 101],
    ['peg-ether', 2.5],
    ['peg-ether', null],
    ['polyglyceryl', 1],
    ['polyglyceryl', 21],
    ['polysorbate', Number.NaN],
  ] as const)('%s of %s units is refused', (head, count) => {
    refusal(() => smilesOfPick('c18', head, count), /Number of (oxyethylene units|glycerols)/);
  });

  it('does not mind a number that its head does not take', () => {
    expect(smilesOfPick('c18', 'glyceryl', 99)).toBe(smilesOfPick('c18', 'glyceryl', null));
  });

  it('takes both ends of what is made', () => {
    for (const [head, least, most] of [
      ['peg-ether', 1, 100],
      ['polyglyceryl', 2, 20],
      ['polysorbate', 1, 100],
    ] as const)
      for (const count of [least, most]) expect(() => smilesOfPick('c12', head, count)).not.toThrow();
  });

  it('grows more hydrophilic with each unit, less so with each carbon (Griffin)', () => {
    const hlb = (chain: ChainId, count: number) =>
      calculateHlb({ ...BLANK_HLB, chain, head: 'peg-ether', count }, new Map()).results.find(
        ({ key }) => key === 'mass',
      )?.worked.value ?? Number.NaN;
    expect(hlb('c18', 10)).toBeGreaterThan(hlb('c18', 9));
    expect(hlb('c18', 10)).toBeLessThan(hlb('c16', 10));
    // Griffin 1949: steareth-20, 20 × 44.05 of 1151.6, is 15.3 by hand.
    expect(hlb('c18', 20)).toBeCloseTo((20 * 20 * 44.053) / 1151.56, 1);
  });
});
