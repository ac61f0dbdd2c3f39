import fc from 'fast-check';
import { countAtoms } from '@core/structure/chemical-formula';
import { drawStructure } from '@core/structure/drawing';
import { elementWeight, molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { nuclideMass } from '@core/structure/nuclide-mass';
import { parseSmiles } from '@core/structure/parse-smiles';
import { readStructure } from '@core/structure/read-structure';
import { shortened } from '@core/structure/smiles-fault';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const counts = (formula: string) => Object.fromEntries(countAtoms(formula));

describe('a formula as suppliers write it', () => {
  it.each([
    ['CH3(CH2)16COOH', { C: 18, H: 36, O: 2 }],
    ['CH3COONa·3H2O', { C: 2, H: 9, O: 5, Na: 1 }],
    ['C2H5OH', { C: 2, H: 6, O: 1 }],
    ['HOCH2CH(OH)CH2OH', { C: 3, H: 8, O: 3 }],
    ['(CH3)2CO', { C: 3, H: 6, O: 1 }],
    ['N(CH2CH2OH)3', { N: 1, C: 6, H: 15, O: 3 }],
    ['Na2CO3 · 10 H2O', { Na: 2, C: 1, O: 13, H: 20 }],
    ['2MgO.SiO2', { Mg: 2, O: 4, Si: 1 }],
    ['CaSO4·½H2O', { Ca: 1, S: 1, O: 4.5, H: 1 }],
    ['3MgO·4SiO2·H2O', { Mg: 3, O: 12, Si: 4, H: 2 }],
    ['{[Co(NH3)6]Cl3}2', { Co: 2, N: 12, H: 36, Cl: 6 }],
    ['NH4^+', { N: 1, H: 4 }],
    ['Cl-', { Cl: 1 }],
    ['Cl−', { Cl: 1 }],
    ['PO4^3-', { P: 1, O: 4 }],
    ['Ca^2+', { Ca: 1 }],
    ['CO', { C: 1, O: 1 }],
    ['Co', { Co: 1 }],
    ['NO', { N: 1, O: 1 }],
    ['No2', null],
  ])('%s', (formula, expected) => {
    if (expected === null) refusal(() => counts(formula), /“No” is not an element/);
    else expect(counts(formula)).toEqual(expected);
  });

  // 14.4 g of talc in moles, as the mineral formula and as its oxides: the same 379.26 g/mol.
  it('weighs the same in oxides as in one: talc, kaolin, borax', () => {
    for (const [one, oxides] of [
      ['Mg3Si4O10(OH)2', '3MgO·4SiO2·H2O'],
      ['Al2Si2O5(OH)4', 'Al2O3·2SiO2·2H2O'],
      ['Na2B4O7·10H2O', 'Na2O·2B2O3·10H2O'],
    ] as const)
      expect(molarMassOfFormula(one).value).toBeCloseTo(molarMassOfFormula(oxides).value, 6);
  });

  it('shows its working: each element as often as it stands there, by its weight', () => {
    const { steps, unit, sources } = molarMassOfFormula('NaCl');
    expect(steps[0]?.shows).toBe('1 Na × 22.99 + 1 Cl × 35.45');
    expect(unit).toBe('g/mol');
    expect(sources[0]?.text).toMatch(/IUPAC standard atomic weights/);
    expect(sources[0]?.basis).toBe('memory');
  });

  it('lies at the fault in its own words, and puts the whole formula in the message', () => {
    for (const written of ['C6H12O6)', 'C6(H12', 'Xx', 'C6H12O6·']) {
      const { message, fields } = refusal(() => countAtoms(written), /cannot be read/);
      expect(message).toContain(`“${written}”`);
      expect(fields.map(({ path }) => path)).toEqual(['formula']);
    }
  });

  it('of an element without a standard weight is refused: technetium, plutonium', () => {
    for (const element of ['Tc', 'Pu', 'Po', 'Rn']) refusal(() => countAtoms(element), /is not an element/);
    expect(() => elementWeight('Tc')).toThrow('No atomic weight for Tc.');
  });

  it('twice as large weighs twice as much, and a sum of two formulas the sum of both', () => {
    const formula = fc.constantFrom('C3H8O3', 'NaCl', 'C18H36O2', 'TiO2', 'C6H15NO3', 'Al2(SO4)3');
    fc.assert(
      fc.property(formula, formula, fc.integer({ min: 2, max: 20 }), (one, other, times) => {
        const mass = (written: string): number => molarMassOfFormula(written).value;
        expect(mass(`(${one})${times}`)).toBeCloseTo(times * mass(one), 6);
        expect(mass(`${one}·${times}(${other})`)).toBeCloseTo(mass(one) + times * mass(other), 6);
        expect(mass(`[${one}][${other}]`)).toBeCloseTo(mass(one) + mass(other), 6);
      }),
      { numRuns: 30 },
    );
  });
});

describe('a formula in Hill’s order', () => {
  // Hill E.A., J. Am. Chem. Soc. 22, 478 (1900), from memory: carbon, hydrogen, the others by letter; all by letter without carbon.
  it.each([
    ['CCBr', 'C2H5Br'],
    ['ClC(Cl)(Cl)Cl', 'CCl4'],
    ['[Na+].[Cl-]', 'ClNa'],
    ['[NH4+].[Cl-]', 'ClH4N'],
    ['OS(=O)(=O)O', 'H2O4S'],
    ['O=C=O', 'CO2'],
    ['[K+].[I-]', 'IK'],
    ['O=[Ti]=O', 'O2Ti'],
    ['CSCCC(N)C(=O)O', 'C5H11NO2S'],
  ])('%s is %s', (smiles, formula) => expect(readStructure(smiles).formula).toBe(formula));
});

describe('the parts of a structure', () => {
  it.each([
    ['CC(=O)[O-].[Na+]', [{ kind: 'Na', charge: 1 }], 0, 4],
    ['CC(=O)[O-].[Na+].O.O.O', [{ kind: 'Na', charge: 1 }], 3, 4],
    ['OCC[NH2+]CCO.CC(=O)[O-]', [{ kind: 'organic', charge: -1 }], 0, 7],
    ['CC(=O)[O-].[NH4+]', [{ kind: 'NH4', charge: 1 }], 0, 4],
    ['CCO', [], 0, 3],
    ['O', [], 0, 1],
    ['CCN.O', [], 1, 3],
  ])('of %s: its counter-ions, its water, and the atoms of the rest', (smiles, ions, waters, heavy) => {
    const read = parseSmiles(smiles);
    expect([read.counterIons, read.waters, read.atoms.length]).toEqual([ions, waters, heavy]);
  });

  it('is trimmed, and knows its rings with their atoms', () => {
    const { smiles, rings } = parseSmiles('  c1ccccc1C1CCCC1  ');
    expect(smiles).toBe('c1ccccc1C1CCCC1');
    expect(rings.map((ring) => ring.length).sort()).toEqual([5, 6]);
    expect(parseSmiles('CCCC').rings).toEqual([]);
  });

  it('water alone is a substance, two of it a mixture', () => {
    expect(parseSmiles('O').waters).toBe(0);
    refusal(() => parseSmiles('O.O'), /mixture of 2 parts/);
  });

  it('adds 18.015 g/mol with each water of a hydrate, and says that it did', () => {
    const mass = (waters: number): number =>
      molarMassOfSmiles(`[Mg+2].[O-]S(=O)(=O)[O-]${'.O'.repeat(waters)}`).value;
    // Magnesium sulfate 120.36, its heptahydrate 246.47 (CRC Handbook, from memory).
    expect(mass(0)).toBeCloseTo(120.36, 1);
    expect(mass(7)).toBeCloseTo(246.47, 1);
    expect(mass(7) - mass(6)).toBeCloseTo(18.015, 6);
  });
});

describe('a labelled atom', () => {
  // Nuclide masses, AME tables, g/mol, from memory.
  it.each([
    ['[2H]', 2.0141],
    ['[3H]', 3.01605],
    ['[13C]', 13.00335],
    ['[14C]', 14.00324],
    ['[15N]', 15.00011],
    ['[18O]', 17.99916],
  ])('%s weighs %d', (label, mass) => expect(nuclideMass(label)).toBeCloseTo(mass, 3));

  it.each([
    ['heavy water of oxygen-18', '[18OH2]', 20.015],
    ['urea of carbon-13', 'N[13C](=O)N', 61.05],
    ['fully labelled ethanol', '[2H]OC([2H])([2H])C([2H])([2H])[2H]', 52.1],
  ])('in %s', (_, smiles, mass) =>
    expect(Math.abs(molarMassOfSmiles(smiles).value - mass)).toBeLessThan(0.02),
  );

  it('that no table knows is refused by its name', () => {
    for (const label of ['[99C]', '[40H]']) refusal(() => nuclideMass(label), /No mass is known for/);
  });
});

describe('a drawing', () => {
  const BOND = 22;

  it('draws every bond of a plain chain alike long, and zigzag: no three atoms on a line', () => {
    const { lines, labels } = drawStructure('CCCCCCCC');
    expect(labels).toEqual([]);
    expect(lines).toHaveLength(7);
    for (const { x1, y1, x2, y2 } of lines) expect(Math.hypot(x2 - x1, y2 - y1)).toBeCloseTo(BOND, 1);
    lines.slice(1).forEach((line, at) => {
      const before = lines[at]!;
      const cross =
        (line.x2 - line.x1) * (before.y2 - before.y1) - (line.y2 - line.y1) * (before.x2 - before.x1);
      expect(Math.abs(cross)).toBeGreaterThan(1);
    });
  });

  it('keeps bonds clear of letters: a bond to a hydroxyl is shorter by the room of one', () => {
    const lengths = drawStructure('CCO').lines.map(({ x1, y1, x2, y2 }) => Math.hypot(x2 - x1, y2 - y1));
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeCloseTo(8, 1);
  });

  it('never puts two atoms on one place, rings and branches included', () => {
    for (const smiles of ['OCC(O)C(O)C(O)C(O)CO', 'NC(=O)c1cccnc1', 'OS(=O)(=O)O', 'FC(F)(F)C(F)(F)F']) {
      const { labels } = drawStructure(smiles);
      for (const [at, one] of labels.entries())
        for (const other of labels.slice(at + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y), smiles).toBeGreaterThan(BOND / 2);
    }
  });

  it.each([
    ['C#N', 3],
    ['O=C=O', 4],
    ['c1ccccc1', 9],
    ['CC(=O)O', 4],
    ['[Na+].[Cl-]', 0],
  ])('%s has %d lines', (smiles, lines) => expect(drawStructure(smiles).lines).toHaveLength(lines));
});

describe('a message', () => {
  it('holds no more of a text than fits, and all of one that does', () => {
    expect(shortened('CCO')).toBe('CCO');
    expect(shortened('C'.repeat(60))).toBe('C'.repeat(60));
    expect(shortened('C'.repeat(61))).toBe(`${'C'.repeat(60)}…`);
  });
});
