import { describe, expect, it } from 'vitest';
import { countAtoms } from '@core/structure/chemical-formula';
import { smilesOfPick } from '@core/structure/chain-and-head';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { readStructure } from '@core/structure/read-structure';
import { refusal } from '../working/refusal';

describe('a SMILES that cannot be one emulsifier is refused in words', () => {
  it.each([
    ['', /no SMILES/],
    ['CCCC(', /brackets do not pair/],
    ['C1CC', /cannot be read/],
    ['hello', /cannot be read/],
    ['*CC', /wildcard/],
    ['CCO ethanol', /space/],
    ['CC>>CO', /reaction/],
    ['[13CH4]', /isotope/],
    ['C(C)(C)(C)(C)C', /more bonds than it can hold/],
    ['CCO.CC', /mixture of 2 parts/],
    ['[Na+].CCCC', /mixture/],
    ['CCCC[N+](C)(C)C.[Cl-].CCC(=O)[O-].[Na+]', /mixture of 4 parts/],
    ['C'.repeat(500), /500 heavy atoms/],
    ['C'.repeat(5000), /longer than/],
    ['[H][H]', /hydrogen alone/],
  ])('%s', (smiles, says) => {
    refusal(() => readStructure(smiles), says);
  });
});

describe('salts', () => {
  it.each(['[Na+].CCCCCCCCCCCC(=O)[O-]', 'CCCCCCCCCCCC(=O)O[Na]'])('%s is sodium laurate', (smiles) => {
    const reading = readStructure(smiles);
    expect(reading.charge).toBe('anionic');
    expect(reading.groups).toEqual({ 'carboxylate-na': 1, carbon: 11 });
    expect(reading.formula).toBe('C12H23NaO2');
  });

  it('two surfactant ions side by side are a mixture; two soaps of one metal are one salt', () => {
    const soap = 'CCCCCCCCCCCCCCCCCC(=O)[O-]';
    refusal(() => readStructure(`${soap}.CCCCCCCCCCCCCCCC[N+](C)(C)C`), /mixture/);
    expect(readStructure(`[Mg+2].${soap}.${soap}`).withoutNumber.join()).toContain('soap of Mg');
  });

  it('an ion without its counter-ion asks for it', () => {
    expect(readStructure('CCCCCCCCCCCC(=O)[O-]').withoutNumber.join()).toContain('[Na+]');
  });
});

describe('parts that Davies cannot count are named, and every atom is counted once', () => {
  it.each([
    [smilesOfPick('c12', 'ether-sulfate-na', 2), /ether-sulfate/],
    [smilesOfPick('c18', 'soap-tea', null), /amine soap/],
    [smilesOfPick('c16', 'trimethyl-ammonium', null), /quaternary/],
    ['CCCCCCCCCCCC[N+](C)(C)CC(=O)[O-]', /betaine/],
    ['CCCCCCCCCCCC(=O)NCCO', /amide/],
    ['CCCCCCCCCCCCOP(=O)(O)O', /phosphate/],
    ['C[Si](C)(C)O[Si](C)(C)C', /Si in the molecule/],
    ['CCCCCCCCc1ccncc1', /aromatic ring other than benzene/],
    ['CCCCCCCCCC(=O)C', /ketone/],
  ])('%s', (smiles, says) => {
    expect(readStructure(smiles).withoutNumber.join()).toMatch(says);
  });

  it('counts rings, polyethers and amines by the table', () => {
    expect(readStructure('CCCCCCCCCCCCc1ccc(cc1)S(=O)(=O)[O-].[Na+]').groups).toEqual({
      'sulfonate-na': 1,
      'benzene-ring': 1,
      carbon: 12,
    });
    expect(readStructure('CCCCCCCCCCCCOCC(C)OCC(C)O').groups).toEqual({
      oxypropylene: 2,
      carbon: 12,
      hydroxyl: 1,
    });
    expect(readStructure('CCN(CC)CCCCCCCC').groups).toEqual({ 'tertiary-amine': 1, carbon: 12 });
    expect(readStructure('FC(F)(F)C(F)(F)CCO').groups).toEqual({ fluorocarbon: 2, carbon: 2, hydroxyl: 1 });
  });

  it('weighs oxyethylene and polyol apart', () => {
    const polysorbate = readStructure(smilesOfPick('c18', 'polysorbate', 20));
    expect(polysorbate.oxyethyleneUnits).toBe(20);
    // Sorbitan C6H12O5 is 164.16 g/mol.
    expect((polysorbate.polyolPercent * polysorbate.molarMass.value) / 100).toBeCloseTo(164.157, 3);
  });
});

describe('molar mass of what is not organic', () => {
  it.each([
    ['[Al]', 26.982],
    ['[Zn+2].[O-2]', 81.379],
    ['[NH4+].[Cl-]', 53.492],
    ['[O-]S(=O)(=O)[O-].[Na+].[Na+].O.O.O.O.O.O.O.O.O.O', 322.186],
  ])('%s weighs %s', (smiles, mass) => {
    expect(molarMassOfSmiles(smiles).value).toBeCloseTo(mass, 2);
  });
});

describe('molar mass of compounds that are no single emulsifier', () => {
  // Sums of IUPAC weights and nuclide masses, by hand.
  it.each([
    ['[Na+].[K+].[O-]S(=O)(=O)[O-]', 158.144],
    ['[K+].[Al+3].[O-]S(=O)(=O)[O-].[O-]S(=O)(=O)[O-].O.O.O.O.O.O.O.O.O.O.O.O', 474.372],
    ['CN(C)CCO.Cl', 125.596],
    ['[2H]O[2H]', 20.0272],
    ['[13CH4]', 17.0354],
    ['[2H]C([2H])([2H])O', 35.0603],
    ['[H][H]', 2.016],
    ['[H+].[Cl-]', 36.458],
  ])('%s weighs %s', (smiles, mass) => {
    expect(molarMassOfSmiles(smiles).value).toBeCloseTo(mass, 2);
  });

  it.each([
    ['CCO.CC', /mixture of 2 parts/],
    ['CCO.Cl', /mixture of 2 parts/],
    ['[Na+].[Cl-].[K+].[Br-]', /mixture of 4 parts/],
    ['[Na+].[Na+].[Cl-]', /mixture of 3 parts/],
    ['[99C]', /No mass is known for \[99C\]/],
  ])('%s is refused', (smiles, says) => {
    refusal(() => molarMassOfSmiles(smiles), says);
  });

  it('an HLB of a labelled atom or a double salt stays refused', () => {
    refusal(() => readStructure('[2H]OCC'), /isotope/);
    refusal(() => readStructure('[Na+].[K+].[O-]S(=O)(=O)[O-]'), /mixture of 3 parts/);
  });
});

describe('picks', () => {
  it('refuse a broken or absent number of units', () => {
    refusal(() => smilesOfPick('c18', 'peg-ether', null), /not a number/);
    refusal(() => smilesOfPick('c18', 'peg-ether', 2.5), /whole number/);
    refusal(() => smilesOfPick('c18', 'peg-ether', 101), /between 1 and 100/);
    refusal(() => smilesOfPick('c18', 'polyglyceryl', 1), /between 2 and 20/);
  });
});

describe('a written formula', () => {
  it.each([
    ['C18H36O2', 284.484],
    ['Al2(SO4)3', 342.132],
    ['CuSO4·5H2O', 249.677],
    ['CuSO4.5H2O', 249.677],
    ['CuSO₄•5H₂O', 249.677],
    ['CaSO4.0.5H2O', 145.1415],
    ['CaSO4·½H2O', 145.1415],
    ['[Cu(NH3)4]SO4', 227.726],
    ['C17.5H35', 245.4725],
    ['C2H7N.HCl', 81.543],
    ['SO4^2-', 96.056],
    ['Na+', 22.99],
  ])('%s weighs %s', (formula, mass) => {
    expect(molarMassOfFormula(formula).value).toBeCloseTo(mass, 3);
  });

  it.each([
    ['', /empty/],
    ['Xy2', /“Xy” is not an element/],
    ['h2o', /“h” is not an element/],
    ['Al2(SO4', /missing/],
    ['C()', /bracket is empty/],
    ['Ca2+', /charge/],
    ['C6H12O6)', /not an element/],
    ['C'.repeat(600), /longer/],
    ['H2O·', /names no element/],
  ])('%s is refused', (formula, says) => {
    refusal(() => countAtoms(formula), says);
  });

  it('and a structure agree', () => {
    expect(molarMassOfSmiles('[H]O[H]').value).toBe(molarMassOfFormula('H2O').value);
  });
});
