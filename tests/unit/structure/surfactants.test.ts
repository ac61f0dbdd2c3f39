import { DAVIES_REFUSED } from '@core/emulsions/davies-groups';
import { hlbInputOf } from '@core/structure/hlb-of-structure';
import { readStructure } from '@core/structure/read-structure';
import { smilesOfPick } from '@core/structure/chain-and-head';
import { describe, expect, it } from 'vitest';

const chain = (carbons: number): string => 'C'.repeat(carbons);
const eo = (units: number): string => 'OCC'.repeat(units);

type Row = readonly [name: string, smiles: string, charge: string, formula: string, ions: readonly string[]];

/** Surfactants of the trade: charge and counter-ions as any textbook has them, formulas by hand. */
const SURFACTANTS: readonly Row[] = [
  ['sodium laureth-3 sulfate', `${chain(12)}${eo(3)}OS(=O)(=O)[O-].[Na+]`, 'anionic', 'C18H37NaO7S', ['Na']],
  ['ammonium lauryl sulfate', `${chain(12)}OS(=O)(=O)[O-].[NH4+]`, 'anionic', 'C12H29NO4S', ['NH4']],
  [
    'sodium cocoyl isethionate, of C12',
    `${chain(11)}C(=O)OCCS(=O)(=O)[O-].[Na+]`,
    'anionic',
    'C14H27NaO5S',
    ['Na'],
  ],
  [
    'sodium methyl cocoyl taurate, of C12',
    `${chain(11)}C(=O)N(C)CCS(=O)(=O)[O-].[Na+]`,
    'anionic',
    'C15H30NNaO4S',
    ['Na'],
  ],
  [
    'sodium lauroyl glutamate',
    `${chain(11)}C(=O)NC(CCC(=O)O)C(=O)[O-].[Na+]`,
    'anionic',
    'C17H30NNaO5',
    ['Na'],
  ],
  [
    'disodium laureth-3 sulfosuccinate',
    `${chain(12)}${eo(3)}OC(=O)CC(C(=O)[O-])S(=O)(=O)[O-].[Na+].[Na+]`,
    'anionic',
    'C22H40Na2O10S',
    ['Na', 'Na'],
  ],
  ['sodium C14 olefin sulfonate', `${chain(11)}C=CCS(=O)(=O)[O-].[Na+]`, 'anionic', 'C14H27NaO3S', ['Na']],
  ['sodium laureth-4 carboxylate', `${chain(12)}${eo(4)}OCC(=O)[O-].[Na+]`, 'anionic', 'C22H43NaO7', ['Na']],
  ['potassium cetyl phosphate', `${chain(16)}OP(=O)(O)[O-].[K+]`, 'anionic', 'C16H34KO4P', ['K']],
  [
    'sodium stearoyl lactylate',
    `${chain(17)}C(=O)OC(C)C(=O)OC(C)C(=O)[O-].[Na+]`,
    'anionic',
    'C24H43NaO6',
    ['Na'],
  ],
  [
    'behentrimonium methosulfate',
    `${chain(22)}[N+](C)(C)C.COS(=O)(=O)[O-]`,
    'cationic',
    'C26H57NO4S',
    ['organic'],
  ],
  ['distearyldimonium chloride', `${chain(18)}[N+](C)(C)${chain(18)}.[Cl-]`, 'cationic', 'C38H80ClN', ['Cl']],
  ['benzalkonium chloride, of C12', `${chain(12)}[N+](C)(C)Cc1ccccc1.[Cl-]`, 'cationic', 'C21H38ClN', ['Cl']],
  ['cetrimonium bromide', `${chain(16)}[N+](C)(C)C.[Br-]`, 'cationic', 'C19H42BrN', ['Br']],
  [
    'lauramidopropyl hydroxysultaine',
    `${chain(11)}C(=O)NCCC[N+](C)(C)CC(O)CS(=O)(=O)[O-]`,
    'amphoteric',
    'C20H42N2O5S',
    [],
  ],
  ['lauryl betaine', `${chain(12)}[N+](C)(C)CC(=O)[O-]`, 'amphoteric', 'C16H33NO2', []],
  [
    'phosphatidylcholine of two oleic acids',
    'CCCCCCCCC=CCCCCCCCC(=O)OCC(OC(=O)CCCCCCCC=CCCCCCCCC)COP(=O)([O-])OCC[N+](C)(C)C',
    'amphoteric',
    'C44H84NO8P',
    [],
  ],
  ['cocamide MEA, of C12', `${chain(11)}C(=O)NCCO`, 'non-ionic', 'C14H29NO2', []],
  ['stearamidopropyl dimethylamine', `${chain(17)}C(=O)NCCCN(C)C`, 'non-ionic', 'C23H48N2O', []],
  ['nonoxynol-9', `${chain(9)}c1ccc(${eo(9)}O)cc1`, 'non-ionic', 'C33H60O10', []],
  ['PPG-2 myristyl ether', `${chain(14)}OCC(C)OCC(C)O`, 'non-ionic', 'C20H42O3', []],
];

describe('a surfactant of the trade', () => {
  it.each(SURFACTANTS)('%s has its charge, formula and counter-ions', (_, smiles, charge, formula, ions) => {
    const read = readStructure(smiles);
    expect([read.charge, read.formula, read.counterIons]).toEqual([charge, formula, [...ions]]);
  });

  it.each(SURFACTANTS)('%s is the same with its ions written the other way round', (_, smiles, charge) => {
    const turned = readStructure(smiles.split('.').reverse().join('.'));
    const { formula, groups, withoutNumber } = readStructure(smiles);
    expect([turned.charge, turned.formula, turned.groups]).toEqual([charge, formula, groups]);
    expect([...turned.withoutNumber].sort()).toEqual([...withoutNumber].sort());
  });

  it.each(SURFACTANTS)(
    '%s tells the HLB methods its charge, and all that they have no number for',
    (_, smiles) => {
      const read = readStructure(smiles);
      const input = hlbInputOf(read);
      expect(input.charge).toBe(read.charge);
      expect(input.withoutNumber).toEqual(read.withoutNumber);
      expect(input.molarMass).toBe(read.molarMass.value);
      expect(input.known).toBeNull();
    },
  );
});

describe('what Davies has no number for', () => {
  const named = (smiles: string): string[] => readStructure(smiles).withoutNumber;

  it.each([
    ['a phosphate', `${chain(16)}OP(=O)(O)[O-].[K+]`, 'phosphate'],
    ['an ether sulfate', smilesOfPick('c12', 'ether-sulfate-na', 1), 'ether-sulfate'],
    ['a quaternary', smilesOfPick('c16', 'trimethyl-ammonium', null), 'quaternary-ammonium'],
    ['an amine soap', smilesOfPick('c12', 'soap-tea', null), 'amine-soap'],
  ] as const)('%s is refused in the words of the table', (_, smiles, refused) => {
    expect(named(smiles)).toEqual([DAVIES_REFUSED[refused]]);
  });

  it('a sulfate is an ether sulfate from its first oxyethylene on, and an alkyl sulfate without', () => {
    expect(named(smilesOfPick('c12', 'sulfate-na', null))).toEqual([]);
    for (const units of [1, 2, 10])
      expect(named(smilesOfPick('c12', 'ether-sulfate-na', units)), String(units)).toHaveLength(1);
  });

  it.each([
    ['lithium', '[Li+]', 'a soap of Li'],
    ['calcium', '[Ca+2]', 'a soap of Ca'],
    ['aluminum', '[Al+3]', 'a soap of Al'],
  ])('a soap of %s is named by its metal', (_, ion, words) => {
    const count = Number(/\d/.exec(ion)?.[0] ?? 1);
    const soap = Array.from({ length: count }, () => `${chain(17)}C(=O)[O-]`).join('.');
    expect(named(`${soap}.${ion}`).join()).toContain(words);
  });

  it('two heads are both named, each once however often it stands there', () => {
    expect(named(`${chain(11)}C(=O)NCCC[N+](C)(C)C.[Cl-]`)).toHaveLength(2);
    // A gemini of two quaternary heads.
    expect(named(`${chain(12)}[N+](C)(C)CC[N+](C)(C)${chain(12)}.[Cl-].[Cl-]`)).toHaveLength(1);
  });

  it.each([
    ['a thiol', `${chain(12)}S`, /a sulfur group that is not a salt/],
    ['a sulfone', 'CS(=O)(=O)C', /a sulfur group that is not a salt/],
    ['a chloride', `${chain(12)}Cl`, /Cl in the molecule/],
    ['a silicone', 'C[Si](C)(C)O[Si](C)(C)O[Si](C)(C)C', /Si in the molecule/],
    ['a nitrile', `${chain(11)}C#N`, /a nitrogen group other than a tertiary amine/],
    ['a primary amine', `${chain(12)}N`, /a nitrogen group other than a tertiary amine/],
    ['a secondary amine', `${chain(12)}NC`, /a nitrogen group other than a tertiary amine/],
    ['urea', 'NC(N)=O', /an amide/],
    ['a ketone', 'CC(=O)CCCCCC', /an aldehyde or ketone/],
    ['a peroxide', 'CCOOCC', /O in an unusual place/],
    ['an indole', 'c1ccc2[nH]ccc2c1', /an aromatic ring other than benzene/],
  ])('%s', (_, smiles, words) => expect(named(smiles).join(' | ')).toMatch(words));
});

describe('what Davies counts', () => {
  const groups = (smiles: string) => readStructure(smiles).groups;

  it.each([
    ['ethylhexyl stearate', `${chain(17)}C(=O)OCC(CC)CCCC`, { ester: 1, carbon: 25 }],
    ['isopropyl palmitate', `${chain(15)}C(=O)OC(C)C`, { ester: 1, carbon: 18 }],
    ['diisopropyl sebacate', 'CC(C)OC(=O)CCCCCCCCC(=O)OC(C)C', { ester: 2, carbon: 14 }],
    ['squalane', 'CC(C)CCCC(C)CCCC(C)CCCCC(C)CCCC(C)CCCC(C)C', { carbon: 30 }],
    ['behenyl alcohol', `${chain(22)}O`, { hydroxyl: 1, carbon: 22 }],
    [
      '12-hydroxystearic acid',
      `${chain(6)}C(O)${chain(10)}C(=O)O`,
      { 'carboxylic-acid': 1, hydroxyl: 1, carbon: 17 },
    ],
    ['PEG-4', `${eo(4)}O`, { oxyethylene: 3, hydroxyl: 2, carbon: 2 }],
    ['PPG-3', 'CC(O)COCC(C)OCC(C)O', { oxypropylene: 2, hydroxyl: 2, carbon: 3 }],
    ['lauryl dimethylamine', `${chain(12)}N(C)C`, { 'tertiary-amine': 1, carbon: 14 }],
    ['caprylyl glycol', `${chain(6)}C(O)CO`, { hydroxyl: 2, carbon: 8 }],
    ['batyl alcohol', `${chain(18)}OCC(O)CO`, { ether: 1, hydroxyl: 2, carbon: 21 }],
    ['azelaic acid', 'OC(=O)CCCCCCCC(=O)O', { 'carboxylic-acid': 2, carbon: 7 }],
  ])('%s', (_, smiles, expected) => {
    expect(groups(smiles)).toEqual(expected);
    expect(readStructure(smiles).withoutNumber).toEqual([]);
  });

  it('is silent of what it counted without a guess, and tells each guess once', () => {
    expect(readStructure(`${chain(17)}C(=O)OCC(O)CO`).cautions).toEqual([]);
    // Two phenols, one caution.
    expect(readStructure('Oc1ccc(O)cc1').cautions).toEqual([
      'A phenol was counted as a free hydroxyl; Davies’ table has no phenol.',
    ]);
    expect(readStructure('OCC(CO)(CO)CO').cautions.join()).toMatch(/A carbon without hydrogen/);
  });
});
