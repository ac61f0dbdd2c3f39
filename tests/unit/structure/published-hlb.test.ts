import fc from 'fast-check';
import { daviesHlb } from '@core/emulsions/davies';
import { griffinEthoxylate, griffinMass } from '@core/emulsions/griffin';
import { smilesOfPick, type ChainId } from '@core/structure/chain-and-head';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

const byMass = (smiles: string): number => {
  const { hydrophilicMolarMass, molarMass } = readStructure(smiles);
  return griffinMass(hydrophilicMolarMass, molarMass.value).value;
};

describe('HLB of an ethoxylate by its structure, against what suppliers print', () => {
  // Griffin 1949, 1954 and supplier tables, from memory; each to the tenth.
  it.each([
    ['laureth-4', 'c12', 'peg-ether', 4, 9.7],
    ['laureth-23', 'c12', 'peg-ether', 23, 16.9],
    ['ceteth-2', 'c16', 'peg-ether', 2, 5.3],
    ['ceteth-10', 'c16', 'peg-ether', 10, 12.9],
    ['ceteth-20', 'c16', 'peg-ether', 20, 15.7],
    ['steareth-2', 'c18', 'peg-ether', 2, 4.9],
    ['steareth-10', 'c18', 'peg-ether', 10, 12.4],
    ['steareth-20', 'c18', 'peg-ether', 20, 15.3],
    ['steareth-21', 'c18', 'peg-ether', 21, 15.5],
    ['steareth-100', 'c18', 'peg-ether', 100, 18.8],
    ['oleth-2', 'c18-1', 'peg-ether', 2, 4.9],
    ['oleth-10', 'c18-1', 'peg-ether', 10, 12.4],
    ['oleth-20', 'c18-1', 'peg-ether', 20, 15.3],
    ['PEG-8 stearate', 'c18', 'peg-ester', 8, 11.1],
    ['PEG-100 stearate', 'c18', 'peg-ester', 100, 18.8],
  ] as const)('%s', (_, chain, head, units, printed) => {
    const smiles = smilesOfPick(chain, head, units);
    expect(Math.abs(byMass(smiles) - printed)).toBeLessThanOrEqual(0.06);
    // A fifth of the oxyethylene says the same, as no polyol is there.
    expect(griffinEthoxylate(readStructure(smiles).oxyethylenePercent).value).toBeCloseTo(byMass(smiles), 9);
  });

  it('rises with every unit, less and less, and never reaches 20', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<ChainId>('c12', 'c16', 'c18-1'),
        fc.integer({ min: 1, max: 80 }),
        (one, n) => {
          const [a, b, c] = [n, n + 1, n + 2].map((units) => byMass(smilesOfPick(one, 'peg-ether', units)));
          expect(b!).toBeGreaterThan(a!);
          expect(c! - b!).toBeLessThan(b! - a!);
          expect(c!).toBeLessThan(20);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('falls with the chain: laureth, ceteth and steareth of as many units', () => {
    const row = (['c12', 'c14', 'c16', 'c18', 'c20', 'c22'] as const).map((one) =>
      byMass(smilesOfPick(one, 'peg-ether', 10)),
    );
    expect(row).toEqual([...row].sort((a, b) => b - a));
  });
});

describe('the water-loving part of a polyol ester, by hand', () => {
  const stearoyl = `${'C'.repeat(17)}C(=O)`;
  const GLUCOSE = 'OC1OC(CO)C(O)C(O)C1O';

  // The free polyol: sorbitan C6H12O5 164.157, glycerol C3H8O3 92.094, sucrose C12H22O11 342.297, diglycerol C6H14O5
  // 166.173, triglycerol C9H20O7 240.252, glucose C6H12O6 180.156, pentaerythritol C5H12O4 136.147, sorbitol C6H14O6 182.172.
  it.each([
    ['sorbitan palmitate', smilesOfPick('c16', 'sorbitan', null), 164.157],
    ['sorbitan isostearate', smilesOfPick('c18-iso', 'sorbitan', null), 164.157],
    [
      'sorbitan tristearate',
      `${stearoyl}OCC(OC(=O)${'C'.repeat(17)})C1OCC(O)C1OC(=O)${'C'.repeat(17)}`,
      164.157,
    ],
    ['glyceryl oleate', smilesOfPick('c18-1', 'glyceryl', null), 92.094],
    ['glyceryl behenate', smilesOfPick('c22', 'glyceryl', null), 92.094],
    ['polyglyceryl-2 stearate', smilesOfPick('c18', 'polyglyceryl', 2), 166.173],
    ['polyglyceryl-3 stearate', smilesOfPick('c18', 'polyglyceryl', 3), 240.252],
    ['sucrose stearate', `${stearoyl}OCC1OC(OC2(CO)OC(CO)C(O)C2O)C(O)C(O)C1O`, 342.297],
    ['lauryl glucoside', `${'C'.repeat(12)}${GLUCOSE}`, 180.156],
    ['pentaerythrityl stearate', `${stearoyl}OCC(CO)(CO)CO`, 136.147],
    ['sorbitol stearate', `${stearoyl}OCC(O)C(O)C(O)C(O)CO`, 182.172],
    ['butylene glycol stearate', `${stearoyl}OCCC(C)O`, 90.122],
  ])('%s', (_, smiles, polyol) => {
    const { hydrophilicMolarMass, polyolPercent, molarMass, oxyethyleneUnits } = readStructure(smiles);
    expect(oxyethyleneUnits).toBe(0);
    expect(hydrophilicMolarMass).toBeCloseTo(polyol, 2);
    expect((polyolPercent * molarMass.value) / 100).toBeCloseTo(polyol, 2);
  });

  it('of sucrose stearate is 11.2, as suppliers print 11 for the monoester', () => {
    // 20 × 342.297 / 608.766
    expect(byMass(`${stearoyl}OCC1OC(OC2(CO)OC(CO)C(O)C2O)C(O)C(O)C1O`)).toBeCloseTo(11.246, 2);
  });

  it('of polysorbates is sorbitan and twenty oxyethylenes, 1045.2 g/mol, whatever acid they bear', () => {
    for (const one of ['c12', 'c16', 'c18', 'c18-1'] as const) {
      const read = readStructure(smilesOfPick(one, 'polysorbate', 20));
      expect(read.hydrophilicMolarMass).toBeCloseTo(164.157 + 20 * 44.053, 2);
      expect(read.oxyethylenePercent).toBeCloseTo((100 * 20 * 44.053) / read.molarMass.value, 6);
    }
    // Polysorbate 20: 1045.217 of 1227.524, in twentieths, 17.03; 16.7 is printed, from the saponification value.
    expect(byMass(smilesOfPick('c12', 'polysorbate', 20))).toBeCloseTo(17.03, 2);
  });

  it('spreads any number of units over a sorbitan without losing one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (units) => {
        const { oxyethyleneUnits, groups } = readStructure(smilesOfPick('c12', 'polysorbate', units));
        expect(oxyethyleneUnits).toBe(units);
        expect(groups['ester-sorbitan-ring']).toBe(1);
      }),
      { numRuns: 12 },
    );
  });
});

describe('Davies’ HLB of homologues', () => {
  it('falls by 0.475 with each carbon and rises by 0.33 with each oxyethylene of an ether', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 24 }), fc.integer({ min: 1, max: 30 }), (carbons, units) => {
        const hlb = (c: number, n: number): number =>
          daviesHlb(readStructure(`${'C'.repeat(c)}${'OCC'.repeat(n)}O`).groups).value;
        expect(hlb(carbons + 1, units) - hlb(carbons, units)).toBeCloseTo(-0.475, 9);
        expect(hlb(carbons, units + 1) - hlb(carbons, units)).toBeCloseTo(0.33, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('of the soap of potassium is 2 above that of sodium: 21.1 and 19.1', () => {
    for (const one of ['c12', 'c18', 'c18-1'] as const) {
      const hlb = (head: 'soap-na' | 'soap-k'): number =>
        daviesHlb(readStructure(smilesOfPick(one, head, null)).groups).value;
      expect(hlb('soap-k') - hlb('soap-na')).toBeCloseTo(2, 9);
    }
  });

  it('of sorbitan laurate is 7 + 6.8 + 3 × 0.5 + 1.3 − 17 × 0.475 = 8.525; 8.6 is printed', () => {
    const { groups } = readStructure(smilesOfPick('c12', 'sorbitan', null));
    expect(daviesHlb(groups).value).toBeGreaterThan(4);
    // The ester sits on the side chain of the sorbitan, which Davies counts with its ring.
    expect(groups['ester-sorbitan-ring']).toBe(1);
    expect(groups['hydroxyl-sorbitan-ring']).toBe(3);
    expect(daviesHlb(groups).value).toBeCloseTo(8.525, 9);
  });
});
