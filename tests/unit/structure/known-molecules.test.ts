import { countAtoms } from '@core/structure/chemical-formula';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

/**
 * Molecules of the trade with their formulas and molar masses, CRC Handbook of Chemistry and Physics (from memory): what
 * a SMILES leaves unsaid, the hydrogens, must come out as a chemist writes it.
 */
const KNOWN: readonly (readonly [name: string, smiles: string, formula: string, mass: number])[] = [
  ['glycerol', 'OCC(O)CO', 'C3H8O3', 92.09],
  ['propylene glycol', 'CC(O)CO', 'C3H8O2', 76.1],
  ['sorbitol', 'OCC(O)C(O)C(O)C(O)CO', 'C6H14O6', 182.17],
  ['urea', 'NC(=O)N', 'CH4N2O', 60.06],
  ['allantoin', 'NC(=O)NC1NC(=O)NC1=O', 'C4H6N4O3', 158.12],
  ['niacinamide', 'NC(=O)c1cccnc1', 'C6H6N2O', 122.13],
  ['panthenol', 'OCCCNC(=O)C(O)C(C)(C)CO', 'C9H19NO4', 205.25],
  ['ascorbic acid', 'OCC(O)C1OC(=O)C(O)=C1O', 'C6H8O6', 176.12],
  ['salicylic acid', 'OC(=O)c1ccccc1O', 'C7H6O3', 138.12],
  ['benzoic acid', 'OC(=O)c1ccccc1', 'C7H6O2', 122.12],
  ['sorbic acid', 'CC=CC=CC(=O)O', 'C6H8O2', 112.13],
  ['dehydroacetic acid', 'CC(=O)C1C(=O)C=C(C)OC1=O', 'C8H8O4', 168.15],
  ['phenoxyethanol', 'OCCOc1ccccc1', 'C8H10O2', 138.16],
  ['benzyl alcohol', 'OCc1ccccc1', 'C7H8O', 108.14],
  ['methylparaben', 'COC(=O)c1ccc(O)cc1', 'C8H8O3', 152.15],
  ['vanillin', 'COc1cc(C=O)ccc1O', 'C8H8O3', 152.15],
  ['limonene', 'CC(=C)C1CCC(C)=CC1', 'C10H16', 136.23],
  ['linalool', 'CC(C)=CCCC(C)(O)C=C', 'C10H18O', 154.25],
  ['squalane', 'CC(C)CCCC(C)CCCC(C)CCCCC(C)CCCC(C)CCCC(C)C', 'C30H62', 422.82],
  ['cetyl alcohol', 'CCCCCCCCCCCCCCCCO', 'C16H34O', 242.44],
  ['isopropyl myristate', 'CCCCCCCCCCCCCC(=O)OC(C)C', 'C17H34O2', 270.45],
  ['caffeine', 'Cn1cnc2c1c(=O)n(C)c(=O)n2C', 'C8H10N4O2', 194.19],
  ['zinc oxide', '[Zn]=O', 'ZnO', 81.38],
  ['sodium benzoate', '[Na+].[O-]C(=O)c1ccccc1', 'C7H5NaO2', 144.1],
  ['sodium lauryl sulfate', '[Na+].CCCCCCCCCCCCOS(=O)(=O)[O-]', 'C12H25NaO4S', 288.38],
  ['disodium EDTA', '[Na+].[Na+].OC(=O)CN(CCN(CC(=O)O)CC(=O)[O-])CC(=O)[O-]', 'C10H14N2Na2O8', 336.21],
  ['triethanolamine', 'OCCN(CCO)CCO', 'C6H15NO3', 149.19],
];

describe('a molecule of the trade', () => {
  it.each(KNOWN)(
    '%s weighs the same by its structure and by its formula, as the handbook has it',
    (_, smiles, formula, mass) => {
      const drawn = molarMassOfSmiles(smiles).value;
      expect(drawn).toBeCloseTo(molarMassOfFormula(formula).value, 6);
      expect(Math.abs(drawn - mass)).toBeLessThan(0.02);
    },
  );

  const emulsifiers = KNOWN.filter(([name]) =>
    ['cetyl alcohol', 'sodium lauryl sulfate', 'isopropyl myristate'].includes(name),
  );
  it.each(emulsifiers)('%s is read with its formula', (_, smiles, formula) => {
    const read = readStructure(smiles);
    const [own, written] = [countAtoms(read.formula), countAtoms(formula)];
    expect(Object.fromEntries(own)).toEqual(Object.fromEntries(written));
    expect(read.molarMass.value).toBeCloseTo(molarMassOfFormula(formula).value, 6);
  });

  it('is the same in another spelling: Kekulé’s rings, other ring numbers, branches turned about', () => {
    for (const [one, other] of [
      ['OC(=O)c1ccccc1', 'C1=CC=CC=C1C(=O)O'],
      ['COc1cc(C=O)ccc1O', 'O=Cc9ccc(O)c(OC)c9'],
      ['CC(=C)C1CCC(C)=CC1', 'C=C(C)C%11CC=C(C)CC%11'],
    ])
      expect(molarMassOfSmiles(one!).value).toBeCloseTo(molarMassOfSmiles(other!).value, 9);
  });
});
