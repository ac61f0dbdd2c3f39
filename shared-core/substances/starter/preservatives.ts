import type { StarterSubstance } from './entry';

const BENZOATES = 'Benzoates';
const OTHER_BENZOATES = 'Other benzoate salts and esters';
const SORBATES = 'Sorbic acid and sorbates';
const SALICYLATES = 'Salicylic acid and salts';
const PARABENS = 'Parabens';
const SHORT = 'Methyl- and ethylparaben';
const LONG = 'Propyl- and butylparaben';
const BANNED = 'Prohibited parabens';
const RELEASERS = 'Formaldehyde releasers';

const benzoate = (
  name: string,
  formula: string,
  perMole = 1,
  groups = [OTHER_BENZOATES],
): StarterSubstance => ({
  name,
  formula,
  as: [['Benzoic Acid', perMole]],
  groups: [BENZOATES, ...groups],
});
const paraben = (name: string, formula: string, group: string): StarterSubstance => ({
  name,
  formula,
  as: [['4-Hydroxybenzoic Acid', 1]],
  groups: [group, ...(group === BANNED ? [] : [PARABENS])],
});
const salt = (
  name: string,
  formula: string,
  acid: string,
  perMole: number,
  group: string,
): StarterSubstance => ({
  name,
  formula,
  as: [[acid, perMole]],
  groups: [group],
});

/** Preservatives with their acids and salts: formulas from any handbook, groups as the annexes name them. */
export const STARTER_PRESERVATIVES: readonly StarterSubstance[] = [
  { name: 'Benzoic Acid', cas: '65-85-0', formula: 'C7H6O2', groups: [BENZOATES] },
  { ...benzoate('Sodium Benzoate', 'C7H5NaO2', 1, []), cas: '532-32-1' },
  benzoate('Potassium Benzoate', 'C7H5KO2'),
  benzoate('Calcium Benzoate', 'C14H10CaO4', 2),
  benzoate('Magnesium Benzoate', 'C14H10MgO4', 2),
  benzoate('Ammonium Benzoate', 'C7H9NO2'),
  benzoate('MEA-Benzoate', 'C9H13NO3'),
  benzoate('Methyl Benzoate', 'C8H8O2'),
  benzoate('Ethyl Benzoate', 'C9H10O2'),
  benzoate('Propyl Benzoate', 'C10H12O2'),
  benzoate('Butyl Benzoate', 'C11H14O2'),
  benzoate('Phenyl Benzoate', 'C13H10O2'),
  { name: 'Sorbic Acid', cas: '110-44-1', formula: 'C6H8O2', groups: [SORBATES] },
  { ...salt('Potassium Sorbate', 'C6H7KO2', 'Sorbic Acid', 1, SORBATES), cas: '24634-61-5' },
  salt('Sodium Sorbate', 'C6H7NaO2', 'Sorbic Acid', 1, SORBATES),
  salt('Calcium Sorbate', 'C12H14CaO4', 'Sorbic Acid', 2, SORBATES),
  { name: 'Salicylic Acid', cas: '69-72-7', formula: 'C7H6O3', groups: [SALICYLATES] },
  salt('Sodium Salicylate', 'C7H5NaO3', 'Salicylic Acid', 1, SALICYLATES),
  salt('Potassium Salicylate', 'C7H5KO3', 'Salicylic Acid', 1, SALICYLATES),
  salt('Magnesium Salicylate', 'C14H10MgO6', 'Salicylic Acid', 2, SALICYLATES),
  salt('Calcium Salicylate', 'C14H10CaO6', 'Salicylic Acid', 2, SALICYLATES),
  salt('MEA-Salicylate', 'C9H13NO4', 'Salicylic Acid', 1, SALICYLATES),
  {
    ...salt('TEA-Salicylate', 'C13H21NO6', 'Salicylic Acid', 1, SALICYLATES),
    usName: 'Trolamine Salicylate',
  },
  { name: 'Propionic Acid', formula: 'C3H6O2', groups: ['Propionic acid and salts'] },
  salt('Sodium Propionate', 'C3H5NaO2', 'Propionic Acid', 1, 'Propionic acid and salts'),
  salt('Calcium Propionate', 'C6H10CaO4', 'Propionic Acid', 2, 'Propionic acid and salts'),
  {
    name: 'Dehydroacetic Acid',
    cas: '520-45-6',
    formula: 'C8H8O4',
    groups: ['Dehydroacetic acid and salts'],
  },
  {
    ...salt('Sodium Dehydroacetate', 'C8H7NaO4', 'Dehydroacetic Acid', 1, 'Dehydroacetic acid and salts'),
    cas: '4418-26-2',
    notes: 'Formula of the anhydrous salt.',
  },
  { name: 'Formic Acid', formula: 'CH2O2', groups: ['Formic acid and sodium formate'] },
  salt('Sodium Formate', 'CHNaO2', 'Formic Acid', 1, 'Formic acid and sodium formate'),
  { name: 'Undecylenic Acid', formula: 'C11H20O2', groups: ['Undecylenic acid and salts'] },
  salt('Sodium Undecylenate', 'C11H19NaO2', 'Undecylenic Acid', 1, 'Undecylenic acid and salts'),
  salt('Zinc Undecylenate', 'C22H38O4Zn', 'Undecylenic Acid', 2, 'Undecylenic acid and salts'),
  { name: '4-Hydroxybenzoic Acid', formula: 'C7H6O3', groups: [SHORT, PARABENS] },
  {
    ...paraben('Methylparaben', 'C8H8O3', SHORT),
    cas: '99-76-3',
    pod: 1000,
    podKind: 'NOAEL, oral, parabens',
    dermalAbsorption: 50,
    safetySource:
      'example: paraben safety assessment of an industry expert panel, as its worked example prints it',
  },
  paraben('Ethylparaben', 'C9H10O3', SHORT),
  paraben('Sodium Methylparaben', 'C8H7NaO3', SHORT),
  paraben('Sodium Ethylparaben', 'C9H9NaO3', SHORT),
  paraben('Potassium Methylparaben', 'C8H7KO3', SHORT),
  { ...paraben('Propylparaben', 'C10H12O3', LONG), cas: '94-13-3' },
  { ...paraben('Butylparaben', 'C11H14O3', LONG), cas: '94-26-8' },
  paraben('Sodium Propylparaben', 'C10H11NaO3', LONG),
  paraben('Sodium Butylparaben', 'C11H13NaO3', LONG),
  paraben('Potassium Propylparaben', 'C10H11KO3', LONG),
  paraben('Potassium Butylparaben', 'C11H13KO3', LONG),
  paraben('Isopropylparaben', 'C10H12O3', BANNED),
  paraben('Isobutylparaben', 'C11H14O3', BANNED),
  paraben('Phenylparaben', 'C13H10O3', BANNED),
  paraben('Benzylparaben', 'C14H12O3', BANNED),
  paraben('Pentylparaben', 'C12H16O3', BANNED),
  { name: 'Phenoxyethanol', cas: '122-99-6', formula: 'C8H10O2', also: ['2-Phenoxyethanol'] },
  { name: 'Phenoxyisopropanol', formula: 'C9H12O2', also: ['1-Phenoxypropan-2-ol'] },
  { name: 'o-Phenylphenol', formula: 'C12H10O', groups: ['o-Phenylphenol and salts'] },
  {
    name: 'Sodium o-Phenylphenate',
    formula: 'C12H9NaO',
    as: [['o-Phenylphenol', 1]],
    groups: ['o-Phenylphenol and salts'],
  },
  { name: '5-Bromo-5-Nitro-1,3-Dioxane', formula: 'C4H6BrNO4' },
  { name: '2-Bromo-2-Nitropropane-1,3-Diol', formula: 'C3H6BrNO4', also: ['Bronopol'], groups: [RELEASERS] },
  { name: 'Imidazolidinyl Urea', formula: 'C11H16N8O8', groups: [RELEASERS] },
  { name: 'Diazolidinyl Urea', formula: 'C8H14N4O7', groups: [RELEASERS] },
  { name: 'DMDM Hydantoin', formula: 'C7H12N2O4', groups: [RELEASERS] },
  { name: 'Quaternium-15', groups: [RELEASERS] },
  { name: 'Sodium Hydroxymethylglycinate', formula: 'C3H6NNaO3', groups: [RELEASERS] },
  { name: 'Piroctone Olamine', formula: 'C16H30N2O3' },
  { name: 'o-Cymen-5-ol', formula: 'C10H14O' },
  {
    name: 'Methylchloroisothiazolinone',
    formula: 'C4H4ClNOS',
    also: ['MCI', 'CMIT'],
    groups: ['Methylchloroisothiazolinone with methylisothiazolinone'],
  },
  {
    name: 'Methylisothiazolinone',
    formula: 'C4H5NOS',
    also: ['MI', 'MIT'],
    groups: ['Methylchloroisothiazolinone with methylisothiazolinone'],
  },
  { name: 'Chlorhexidine', formula: 'C22H30Cl2N10', groups: ['Chlorhexidine and salts'] },
  salt('Chlorhexidine Digluconate', 'C34H54Cl2N10O14', 'Chlorhexidine', 1, 'Chlorhexidine and salts'),
  salt('Chlorhexidine Diacetate', 'C26H38Cl2N10O4', 'Chlorhexidine', 1, 'Chlorhexidine and salts'),
  salt('Chlorhexidine Dihydrochloride', 'C22H32Cl4N10', 'Chlorhexidine', 1, 'Chlorhexidine and salts'),
  { name: 'Hexamidine', formula: 'C20H26N4O2', groups: ['Hexamidine and salts'] },
  { name: 'Hexamidine Diisethionate', formula: 'C24H38N4O10S2', groups: ['Hexamidine and salts'] },
  { name: 'Chlorphenesin', formula: 'C9H11ClO3' },
  {
    name: 'Benzalkonium Chloride',
    groups: ['Benzalkonium salts'],
    notes: 'A mixture of chain lengths: no one formula.',
  },
  { name: 'Benzalkonium Bromide', groups: ['Benzalkonium salts'] },
  { name: 'Benzalkonium Saccharinate', groups: ['Benzalkonium salts'] },
  { name: 'Iodopropynyl Butylcarbamate', formula: 'C8H12INO2', also: ['IPBC'] },
  { name: 'Ethyl Lauroyl Arginate HCl', formula: 'C20H41ClN4O3' },
  { name: 'Triclosan', formula: 'C12H7Cl3O2' },
  { name: 'Triclocarban', formula: 'C13H9Cl3N2O' },
  { name: 'Polyaminopropyl Biguanide' },
  { name: 'Caprylyl Glycol', formula: 'C8H18O2' },
  { name: 'Ethylhexylglycerin', formula: 'C11H24O3' },
];
