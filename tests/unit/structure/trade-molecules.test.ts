import { daviesHlb } from '@core/emulsions/davies';
import { griffinMass } from '@core/emulsions/griffin';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

const chain = (carbons: number): string => 'C'.repeat(carbons);
const eo = (units: number): string => 'OCC'.repeat(units);
type Row = readonly [name: string, smiles: string, formula: string, molarMass: number];

/** Formulas and molar masses as handbooks and suppliers print them (The Merck Index, CRC Handbook), from memory. */
const MOLECULES: readonly Row[] = [
  ['water', 'O', 'H2O', 18.02],
  ['glycerin', 'OCC(O)CO', 'C3H8O3', 92.09],
  ['propylene glycol', 'CC(O)CO', 'C3H8O2', 76.09],
  ['butylene glycol', 'CC(O)CCO', 'C4H10O2', 90.12],
  ['pentylene glycol', 'CCCC(O)CO', 'C5H12O2', 104.15],
  ['caprylyl glycol', 'CCCCCCC(O)CO', 'C8H18O2', 146.23],
  ['sorbitol', 'OCC(O)C(O)C(O)C(O)CO', 'C6H14O6', 182.17],
  ['xylitol', 'OCC(O)C(O)C(O)CO', 'C5H12O5', 152.15],
  ['urea', 'NC(=O)N', 'CH4N2O', 60.06],
  ['betaine', 'C[N+](C)(C)CC(=O)[O-]', 'C5H11NO2', 117.15],
  ['lactic acid', 'CC(O)C(=O)O', 'C3H6O3', 90.08],
  ['glycolic acid', 'OCC(=O)O', 'C2H4O3', 76.05],
  ['citric acid', 'OC(=O)CC(O)(CC(=O)O)C(=O)O', 'C6H8O7', 192.12],
  ['citric acid monohydrate', 'OC(=O)CC(O)(CC(=O)O)C(=O)O.O', 'C6H10O8', 210.14],
  ['salicylic acid', 'OC(=O)c1ccccc1O', 'C7H6O3', 138.12],
  ['azelaic acid', 'OC(=O)CCCCCCCC(=O)O', 'C9H16O4', 188.22],
  ['ascorbic acid', 'OCC(O)C1OC(=O)C(O)=C1O', 'C6H8O6', 176.12],
  ['niacinamide', 'NC(=O)c1cccnc1', 'C6H6N2O', 122.12],
  ['panthenol', 'CC(C)(CO)C(O)C(=O)NCCCO', 'C9H19NO4', 205.25],
  ['allantoin', 'NC(=O)NC1NC(=O)NC1=O', 'C4H6N4O3', 158.12],
  ['caffeine', 'Cn1c(=O)c2c(ncn2C)n(C)c1=O', 'C8H10N4O2', 194.19],
  ['retinol', 'CC1=C(C(C)(C)CCC1)C=CC(C)=CC=CC(C)=CCO', 'C20H30O', 286.45],
  ['tocopherol', 'Cc1c(C)c2OC(C)(CCCC(C)CCCC(C)CCCC(C)C)CCc2c(C)c1O', 'C29H50O2', 430.71],
  ['bisabolol', 'CC(C)=CCCC(C)(O)C1CCC(C)=CC1', 'C15H26O', 222.37],
  ['phenoxyethanol', 'OCCOc1ccccc1', 'C8H10O2', 138.17],
  ['methylparaben', 'COC(=O)c1ccc(O)cc1', 'C8H8O3', 152.15],
  ['benzyl alcohol', 'OCc1ccccc1', 'C7H8O', 108.14],
  ['sodium benzoate', '[Na+].[O-]C(=O)c1ccccc1', 'C7H5NaO2', 144.11],
  ['potassium sorbate', '[K+].[O-]C(=O)C=CC=CC', 'C6H7KO2', 150.22],
  ['ethylhexylglycerin', 'CCCCC(CC)COCC(O)CO', 'C11H24O3', 204.31],
  ['disodium EDTA', '[Na+].[Na+].OC(=O)CN(CCN(CC(=O)O)CC(=O)[O-])CC(=O)[O-]', 'C10H14N2Na2O8', 336.21],
  ['triethanolamine', 'OCCN(CCO)CCO', 'C6H15NO3', 149.19],
  ['tromethamine', 'NC(CO)(CO)CO', 'C4H11NO3', 121.14],
  ['aminomethyl propanol', 'CC(C)(N)CO', 'C4H11NO', 89.14],
  ['isopropyl myristate', `${chain(13)}C(=O)OC(C)C`, 'C17H34O2', 270.45],
  ['isopropyl palmitate', `${chain(15)}C(=O)OC(C)C`, 'C19H38O2', 298.5],
  ['ethylhexyl palmitate', `${chain(15)}C(=O)OCC(CC)CCCC`, 'C24H48O2', 368.64],
  ['cetyl palmitate', `${chain(15)}C(=O)O${chain(16)}`, 'C32H64O2', 480.85],
  ['octyldodecanol', `${chain(10)}C(CO)${chain(8)}`, 'C20H42O', 298.55],
  ['cetyl alcohol', `${chain(16)}O`, 'C16H34O', 242.44],
  ['stearyl alcohol', `${chain(18)}O`, 'C18H38O', 270.49],
  ['stearic acid', `${chain(17)}C(=O)O`, 'C18H36O2', 284.48],
  ['palmitic acid', `${chain(15)}C(=O)O`, 'C16H32O2', 256.42],
  ['lauric acid', `${chain(11)}C(=O)O`, 'C12H24O2', 200.32],
  ['oleic acid', 'CCCCCCCCC=CCCCCCCCC(=O)O', 'C18H34O2', 282.46],
  ['linoleic acid', 'CCCCCC=CCC=CCCCCCCCC(=O)O', 'C18H32O2', 280.45],
  ['squalane', 'CC(C)CCCC(C)CCCC(C)CCCCC(C)CCCC(C)CCCC(C)C', 'C30H62', 422.81],
  ['cyclopentasiloxane', 'C[Si]1(C)O[Si](C)(C)O[Si](C)(C)O[Si](C)(C)O[Si](C)(C)O1', 'C10H30O5Si5', 370.77],
  ['glyceryl stearate', `${chain(17)}C(=O)OCC(O)CO`, 'C21H42O4', 358.56],
  [
    'glyceryl tristearate',
    `${chain(17)}C(=O)OCC(OC(=O)${chain(17)})COC(=O)${chain(17)}`,
    'C57H110O6',
    891.48,
  ],
  ['sorbitan laurate', `${chain(11)}C(=O)OCC(O)C1OCC(O)C1O`, 'C18H34O6', 346.46],
  ['sorbitan stearate', `${chain(17)}C(=O)OCC(O)C1OCC(O)C1O`, 'C24H46O6', 430.62],
  ['decyl glucoside', `${chain(10)}OC1OC(CO)C(O)C(O)C1O`, 'C16H32O6', 320.42],
  ['sodium lauryl sulfate', `${chain(12)}OS(=O)(=O)[O-].[Na+]`, 'C12H25NaO4S', 288.38],
  ['sodium laureth-2 sulfate', `${chain(12)}${eo(2)}OS(=O)(=O)[O-].[Na+]`, 'C16H33NaO6S', 376.48],
  ['sodium stearate', `${chain(17)}C(=O)[O-].[Na+]`, 'C18H35NaO2', 306.46],
  ['laureth-4', `${chain(12)}${eo(4)}O`, 'C20H42O5', 362.54],
  ['cetrimonium chloride', `${chain(16)}[N+](C)(C)C.[Cl-]`, 'C19H42ClN', 320],
  ['cocamidopropyl betaine, of its C12', `${chain(11)}C(=O)NCCC[N+](C)(C)CC(=O)[O-]`, 'C19H38N2O3', 342.52],
  ['lauramine oxide', `${chain(12)}[N+](C)(C)[O-]`, 'C14H31NO', 229.4],
  ['menthol', 'CC1CCC(C(C)C)C(O)C1', 'C10H20O', 156.27],
  ['limonene', 'CC1=CCC(CC1)C(C)=C', 'C10H16', 136.23],
  ['linalool', 'CC(C)=CCCC(C)(O)C=C', 'C10H18O', 154.25],
  ['coumarin', 'O=C1Oc2ccccc2C=C1', 'C9H6O2', 146.14],
  ['vanillin', 'COc1cc(C=O)ccc1O', 'C8H8O3', 152.15],
  ['avobenzone', 'COc1ccc(cc1)C(=O)CC(=O)c1ccc(cc1)C(C)(C)C', 'C20H22O3', 310.39],
  ['dihydroxyacetone', 'OCC(=O)CO', 'C3H6O3', 90.08],
];

describe('a molecule of the trade', () => {
  it.each(MOLECULES)(
    '%s is read as its formula and weighs what handbooks say',
    (_, smiles, formula, molarMass) => {
      const read = readStructure(smiles);
      expect(read.formula).toBe(formula);
      expect(Math.abs(read.molarMass.value - molarMass)).toBeLessThanOrEqual(0.03);
      // Nothing that counts as water-loving outweighs the whole.
      expect(read.hydrophilicMolarMass).toBeLessThanOrEqual(read.molarMass.value + 1e-9);
    },
  );
});

describe('its HLB by Griffin’s mass fraction', () => {
  it.each([
    // Griffin 1949, 1954: the hydrophile as its share of the molecule, by hand.
    ['laureth-4: 4 × 44.053 of 362.55', `${chain(12)}${eo(4)}O`, 20 * (176.212 / 362.55)],
    ['ceteth-20: 20 × 44.053 of 1123.5', `${chain(16)}${eo(20)}O`, 20 * (881.06 / 1123.505)],
    ['steareth-2: 2 × 44.053 of 358.6', `${chain(18)}${eo(2)}O`, 20 * (88.106 / 358.607)],
    ['glyceryl stearate: 92.094 of 358.563', `${chain(17)}C(=O)OCC(O)CO`, 20 * (92.094 / 358.563)],
    ['sorbitan laurate: 164.157 of 346.464', `${chain(11)}C(=O)OCC(O)C1OCC(O)C1O`, 20 * (164.157 / 346.464)],
    ['propylene glycol stearate: 76.095 of 342.564', `${chain(17)}C(=O)OCC(C)O`, 20 * (76.095 / 342.564)],
    [
      'glycol stearate, its one oxyethylene: 44.053 of 328.537',
      `${chain(17)}C(=O)OCCO`,
      20 * (44.053 / 328.537),
    ],
    ['hexadecane: none', chain(16), 0],
    ['cetyl alcohol: none', `${chain(16)}O`, 0],
    ['isopropyl myristate: none', `${chain(13)}C(=O)OC(C)C`, 0],
  ] as const)('%s', (_, smiles, hlb) => {
    const read = readStructure(smiles);
    expect(griffinMass(read.hydrophilicMolarMass, read.molarMass.value).value).toBeCloseTo(hlb, 1);
  });
});

describe('its HLB by Davies', () => {
  it.each([
    // Davies 1957, Table I, and by hand with its numbers.
    ['sodium lauryl sulfate', `${chain(12)}OS(=O)(=O)[O-].[Na+]`, 40],
    ['potassium oleate', 'CCCCCCCCC=CCCCCCCCC(=O)[O-].[K+]', 20.025],
    ['sodium oleate', 'CCCCCCCCC=CCCCCCCCC(=O)[O-].[Na+]', 18.025],
    ['cetyl alcohol', `${chain(16)}O`, 1.3],
    ['methanol', 'CO', 8.425],
    ['n-propanol', 'CCCO', 7.475],
    ['n-butanol', 'CCCCO', 7],
    ['glyceryl stearate', `${chain(17)}C(=O)OCC(O)CO`, 3.7],
    ['oleic acid', 'CCCCCCCCC=CCCCCCCCC(=O)O', 1.025],
    ['laureth-6', `${chain(12)}${eo(6)}O`, 5.18],
    ['dimethyl lauramine', `${chain(12)}N(C)C`, 9.75],
    ['hexadecane', chain(16), -0.6],
    ['glycerin', 'OCC(O)CO', 11.275],
    ['diethyl ether', 'CCOCC', 6.4],
  ] as const)('of %s is %#', (_, smiles, hlb) => {
    const read = readStructure(smiles);
    expect(read.withoutNumber).toEqual([]);
    expect(daviesHlb(read.groups).value).toBeCloseTo(hlb, 9);
  });
});

describe('its charge', () => {
  it.each([
    ['sodium lauryl sulfate', `${chain(12)}OS(=O)(=O)[O-].[Na+]`, 'anionic'],
    [
      'disodium laureth sulfosuccinate, a half ester',
      `${chain(12)}${eo(2)}OC(=O)CC(S(=O)(=O)[O-])C(=O)[O-].[Na+].[Na+]`,
      'anionic',
    ],
    ['sodium lauroyl sarcosinate', `${chain(11)}C(=O)N(C)CC(=O)[O-].[Na+]`, 'anionic'],
    ['behentrimonium chloride', `${chain(22)}[N+](C)(C)C.[Cl-]`, 'cationic'],
    ['cetylpyridinium chloride', `${chain(16)}[n+]1ccccc1.[Cl-]`, 'cationic'],
    ['cocamidopropyl betaine, of its C12', `${chain(11)}C(=O)NCCC[N+](C)(C)CC(=O)[O-]`, 'amphoteric'],
    ['lauramine oxide', `${chain(12)}[N+](C)(C)[O-]`, 'non-ionic'],
    ['laureth-4', `${chain(12)}${eo(4)}O`, 'non-ionic'],
    ['stearic acid', `${chain(17)}C(=O)O`, 'non-ionic'],
  ] as const)('%s is %#', (_, smiles, charge) => expect(readStructure(smiles).charge).toBe(charge));
});
