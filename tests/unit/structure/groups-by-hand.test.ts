import { daviesHlb } from '@core/emulsions/davies';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

/** Numbers of Davies 1957 and of the later additions for benzene and fluorocarbons (from memory). */
const BY_HAND: [name: string, smiles: string, groups: Record<string, number>, hlb: number][] = [
  [
    'nonoxynol-9: 7 − 1.662 + 9 × 0.33 + 1.9 − 9 × 0.475',
    `CCCCCCCCCc1ccc(${'OCC'.repeat(9)}O)cc1`,
    { 'benzene-ring': 1, oxyethylene: 9, hydroxyl: 1, carbon: 9 },
    5.933,
  ],
  [
    'diethylhexyl sodium sulfosuccinate: 7 + 11 + 2 × 2.4 − 18 × 0.475',
    'CCCCC(CC)COC(=O)CC(C(=O)OCC(CC)CCCC)S(=O)(=O)[O-].[Na+]',
    { 'sulfonate-na': 1, ester: 2, carbon: 18 },
    14.25,
  ],
  [
    'sodium dodecylbenzenesulfonate: 7 + 11 − 1.662 − 12 × 0.475',
    'CCCCCCCCCCCCc1ccc(S(=O)(=O)[O-])cc1.[Na+]',
    { 'sulfonate-na': 1, 'benzene-ring': 1, carbon: 12 },
    10.638,
  ],
  [
    'bis-hydroxypropyl ether: one link is oxypropylene, the other three carbons stand alone',
    'OCCCOCCCO',
    { oxypropylene: 1, hydroxyl: 2, carbon: 3 },
    7 - 0.15 + 2 * 1.9 - 3 * 0.475,
  ],
  ['dicaprylyl ether: 7 + 1.3 − 16 × 0.475', 'CCCCCCCCOCCCCCCCC', { ether: 1, carbon: 16 }, 0.7],
  [
    'perfluorohexane: 7 − 6 × 0.87',
    'FC(F)(F)C(F)(F)C(F)(F)C(F)(F)C(F)(F)C(F)(F)F',
    { fluorocarbon: 6 },
    1.78,
  ],
  [
    'glyceryl dilaurate: 7 + 2 × 2.4 + 1.9 − 25 × 0.475',
    'CCCCCCCCCCCC(=O)OCC(O)COC(=O)CCCCCCCCCCC',
    { ester: 2, hydroxyl: 1, carbon: 25 },
    1.825,
  ],
];

describe('Davies’ groups by hand', () => {
  it.each(BY_HAND)('%s', (_, smiles, groups, hlb) => {
    const read = readStructure(smiles);
    expect(read.groups).toEqual(groups);
    expect(read.withoutNumber).toEqual([]);
    expect(daviesHlb(read.groups).value).toBeCloseTo(hlb, 9);
  });
});

describe('a part for which Davies has no number is named', () => {
  const LAURATE = 'CCCCCCCCCCCC(=O)[O-]';

  it.each([
    ['magnesium laurate', `${LAURATE}.[Mg+2].${LAURATE}`, /^a soap of Mg: /],
    ['the same, its magnesium last', `${LAURATE}.${LAURATE}.[Mg+2]`, /^a soap of Mg: /],
    ['zinc stearate', `[Zn+2].${'C'.repeat(17)}C(=O)[O-].${'C'.repeat(17)}C(=O)[O-]`, /^a soap of Zn: /],
    ['ammonium laurate', `${LAURATE}.[NH4+]`, /^an amine soap: /],
    ['aminomethyl propanol laurate', `${LAURATE}.CC(C)(CO)[NH3+]`, /^an amine soap: /],
    ['a soap without its metal', LAURATE, /^a soap without its counter-ion: write it beside/],
    ['TEA lauryl sulfate', 'CCCCCCCCCCCCOS(=O)(=O)[O-].OCC[NH+](CCO)CCO', /^a sulfate of an amine: /],
    [
      'magnesium lauryl sulfate',
      'CCCCCCCCCCCCOS(=O)(=O)[O-].CCCCCCCCCCCCOS(=O)(=O)[O-].[Mg+2]',
      /^a sulfate of Mg: /,
    ],
    ['laurylamine oxide', 'CCCCCCCCCCCC[N+](C)(C)[O-]', /^an amine oxide or nitro: /],
    ['heptanoic anhydride', 'CCCCCCC(=O)OC(=O)CCCCCC', /^an anhydride or mixed ester: /],
    ['dicaprylyl carbonate', 'CCCCCCCCOC(=O)OCCCCCCCC', /^a carbonate or other carbonyl: /],
    ['hexanal', 'CCCCCC=O', /^an aldehyde or ketone: /],
    [
      'laurylbenzenesulfonic acid',
      'CCCCCCCCCCCCc1ccc(S(=O)(=O)O)cc1',
      /^a sulfur group that is not a salt: /,
    ],
    ['fluorohexane', 'CCCCCCF', /^a carbon with a single fluorine: /],
    ['hexamethyldisiloxane', 'C[Si](C)(C)O[Si](C)(C)C', /^Si in the molecule: /],
    ['cetyl phosphate', `${'C'.repeat(16)}OP(=O)(O)O`, /^a phosphate head: /],
    ['laurylamine', 'CCCCCCCCCCCCN', /^a nitrogen group other than a tertiary amine: /],
    ['naphthalene', 'c1ccc2ccccc2c1', /^an aromatic ring other than benzene: /],
  ] as const)('%s', (_, smiles, says) => {
    const { withoutNumber } = readStructure(smiles);
    expect(
      withoutNumber.some((one) => says.test(one)),
      withoutNumber.join(' | '),
    ).toBe(true);
    expect(
      withoutNumber.every((one) => /number for it|has one|describe|write it beside|found on/.test(one)),
    ).toBe(true);
  });

  it('a betaine is balanced within itself, and amphoteric', () => {
    const { withoutNumber, charge, counterIons } = readStructure('CCCCCCCCCCCC[N+](C)(C)CC(=O)[O-]');
    expect(withoutNumber.join(' ')).toContain('a soap balanced within the molecule (a betaine)');
    expect([charge, counterIons]).toEqual(['amphoteric', []]);
  });

  it('an amidoamine that acid has protonated is a cationic with two such parts', () => {
    const { withoutNumber, charge, counterIons } = readStructure(
      `${'C'.repeat(17)}C(=O)NCCC[NH+](C)C.CC(O)C(=O)[O-]`,
    );
    expect(withoutNumber.map((one) => one.split(':')[0])).toEqual(['an amide', 'a protonated amine']);
    expect([charge, counterIons]).toEqual(['cationic', ['organic']]);
  });
});

describe('what was counted by an assumption is said', () => {
  const cautions = (smiles: string): string => readStructure(smiles).cautions.join(' ');

  it.each([
    ['a phenol', 'CCCCCCCCCc1ccc(O)cc1', /A phenol was counted as a free hydroxyl/],
    ['a sugar', 'CCCCCCCCCCOC1OC(CO)C(O)C(O)C1O', /Hydroxyls on a sugar ring were counted as free/],
    ['a carbon without hydrogen', 'CC(C)(C)CO', /A carbon without hydrogen was counted like CH2/],
    ['crystal water', 'OC(=O)CC(O)(C(=O)O)CC(=O)O.O', /molar mass includes the crystal water/],
  ] as const)('%s', (_, smiles, says) => expect(cautions(smiles)).toMatch(says));

  it('of cetyl alcohol nothing is assumed', () => expect(cautions('C'.repeat(16) + 'O')).toBe(''));
});

describe('the charge and the formula of a structure', () => {
  it.each([
    ['sodium laurate', 'CCCCCCCCCCCC(=O)[O-].[Na+]', 'anionic', 'C12H23NaO2', ['Na']],
    ['cetrimonium chloride', 'CCCCCCCCCCCCCCCC[N+](C)(C)C.[Cl-]', 'cationic', 'C19H42ClN', ['Cl']],
    ['lauramine oxide', 'CCCCCCCCCCCC[N+](C)(C)[O-]', 'non-ionic', 'C14H31NO', []],
    ['nitrobenzene', 'c1ccccc1[N+](=O)[O-]', 'non-ionic', 'C6H5NO2', []],
    ['water', 'O', 'non-ionic', 'H2O', []],
    ['citric acid monohydrate', 'OC(=O)CC(O)(C(=O)O)CC(=O)O.O', 'non-ionic', 'C6H10O8', []],
    ['sodium laurate, its sodium drawn as a bond', 'CCCCCCCCCCCC(=O)O[Na]', 'anionic', 'C12H23NaO2', ['Na']],
  ] as const)('of %s', (_, smiles, charge, formula, ions) => {
    const read = readStructure(smiles);
    expect([read.charge, read.formula, read.counterIons]).toEqual([charge, formula, [...ions]]);
  });
});
