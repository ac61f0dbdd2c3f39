import type { StarterSubstance } from './entry';

const ZINC = 'Water-soluble zinc salts';
const AHA = 'Alpha-hydroxy acids, their salts and esters';
const RETINOIDS = 'Retinol and its esters';
const FLUORIDES = 'Fluoride compounds';
const TRIALKANOLAMINES = 'Trialkylamines and trialkanolamines';

const zinc = (name: string, formula: string): StarterSubstance => ({
  name,
  formula,
  as: [['Zinc', 1]],
  groups: [ZINC],
});

/** Other substances that limits name, and what they are counted as. */
export const STARTER_RESTRICTED: readonly StarterSubstance[] = [
  { name: 'Zinc', formula: 'Zn' },
  zinc('Zinc Sulfate', 'ZnSO4'),
  { ...zinc('Zinc Sulfate Heptahydrate', 'ZnSO4·7H2O') },
  zinc('Zinc Chloride', 'ZnCl2'),
  zinc('Zinc Gluconate', 'C12H22O14Zn'),
  zinc('Zinc PCA', 'C10H12N2O6Zn'),
  zinc('Zinc Acetate', 'C4H6O4Zn'),
  { name: 'Zinc Pyrithione', usName: 'Pyrithione Zinc', formula: 'C10H8N2O2S2Zn' },
  { name: 'Retinol', cas: '68-26-8', formula: 'C20H30O', also: ['Vitamin A'], groups: [RETINOIDS] },
  {
    name: 'Retinyl Palmitate',
    cas: '79-81-2',
    formula: 'C36H60O2',
    as: [['Retinol', 1]],
    groups: [RETINOIDS],
  },
  {
    name: 'Retinyl Acetate',
    cas: '127-47-9',
    formula: 'C22H32O2',
    as: [['Retinol', 1]],
    groups: [RETINOIDS],
  },
  { name: 'Kojic Acid', formula: 'C6H6O4' },
  { name: 'Arbutin', formula: 'C12H16O7', also: ['Beta-Arbutin'] },
  { name: 'Alpha-Arbutin', formula: 'C12H16O7' },
  { name: 'Genistein', formula: 'C15H10O5' },
  { name: 'Daidzein', formula: 'C15H10O4' },
  { name: 'BHT', formula: 'C15H24O', also: ['Butylated Hydroxytoluene'] },
  { name: 'Hydrogen Peroxide', formula: 'H2O2', groups: ['Hydrogen peroxide and what releases it'] },
  {
    name: 'Urea Peroxide',
    formula: 'CH6N2O3',
    as: [['Hydrogen Peroxide', 1]],
    groups: ['Hydrogen peroxide and what releases it'],
  },
  {
    name: 'Sodium Hydroxide',
    cas: '1310-73-2',
    formula: 'NaOH',
    also: ['Lye', 'Caustic Soda'],
    groups: ['Alkali hydroxides'],
  },
  {
    name: 'Potassium Hydroxide',
    cas: '1310-58-3',
    formula: 'KOH',
    as: [['Sodium Hydroxide', 1]],
    groups: ['Alkali hydroxides'],
  },
  {
    name: 'Triethanolamine',
    cas: '102-71-6',
    formula: 'C6H15NO3',
    also: ['TEA', 'Trolamine'],
    groups: [TRIALKANOLAMINES],
  },
  { name: 'Triisopropanolamine', formula: 'C9H21NO3', groups: [TRIALKANOLAMINES] },
  { name: 'Ammonia', formula: 'NH3', groups: ['Ammonia and its solution'] },
  { name: 'Ammonium Hydroxide', formula: 'NH5O', as: [['Ammonia', 1]], groups: ['Ammonia and its solution'] },
  { name: 'Thioglycolic Acid', formula: 'C2H4O2S', groups: ['Thioglycolic acid and salts'] },
  ...(
    [
      ['Ammonium Thioglycolate', 'C2H7NO2S'],
      ['Potassium Thioglycolate', 'C2H3KO2S'],
      ['Sodium Thioglycolate', 'C2H3NaO2S'],
    ] as const
  ).map(([name, formula]): StarterSubstance => ({
    name,
    formula,
    as: [['Thioglycolic Acid', 1]],
    groups: ['Thioglycolic acid and salts'],
  })),
  {
    name: 'Calcium Thioglycolate',
    formula: 'C2H2CaO2S',
    as: [['Thioglycolic Acid', 1]],
    groups: ['Thioglycolic acid and salts'],
  },
  { name: 'Oxalic Acid', formula: 'C2H2O4', groups: ['Oxalic acid, esters and salts'] },
  {
    name: 'Sodium Oxalate',
    formula: 'C2Na2O4',
    as: [['Oxalic Acid', 1]],
    groups: ['Oxalic acid, esters and salts'],
  },
  { name: 'Resorcinol', formula: 'C6H6O2' },
  { name: 'Quinine', formula: 'C20H24N2O2', groups: ['Quinine and salts'] },
  {
    name: 'Quinine Hydrochloride',
    formula: 'C20H25ClN2O2',
    as: [['Quinine', 1]],
    groups: ['Quinine and salts'],
  },
  { name: 'Selenium Sulfide', also: ['Selenium Disulfide'], formula: 'SeS2' },
  { name: 'Methanol', also: ['Methyl Alcohol'], formula: 'CH4O' },
  { name: 'Talc', formula: 'Mg3Si4O12H2' },
  { name: 'Fluorine', formula: 'F' },
  ...(
    [
      ['Sodium Fluoride', 'NaF', 1],
      ['Sodium Monofluorophosphate', 'Na2PO3F', 1],
      ['Stannous Fluoride', 'SnF2', 2],
      ['Potassium Fluoride', 'KF', 1],
      ['Ammonium Fluoride', 'NH4F', 1],
    ] as const
  ).map(([name, formula, perMole]): StarterSubstance => ({
    name,
    formula,
    as: [['Fluorine', perMole]],
    groups: [FLUORIDES],
  })),
  { name: 'Glycolic Acid', formula: 'C2H4O3', groups: [AHA, 'Glycolic acid and salts'] },
  {
    name: 'Sodium Glycolate',
    formula: 'C2H3NaO3',
    as: [['Glycolic Acid', 1]],
    groups: [AHA, 'Glycolic acid and salts'],
  },
  { name: 'Lactic Acid', cas: '50-21-5', formula: 'C3H6O3', groups: [AHA, 'Lactic acid and salts'] },
  {
    name: 'Sodium Lactate',
    formula: 'C3H5NaO3',
    as: [['Lactic Acid', 1]],
    groups: [AHA, 'Lactic acid and salts'],
  },
  { name: 'Cyclotetrasiloxane', formula: 'C8H24O4Si4', also: ['D4'], groups: ['D4 and D5', 'D4, D5 and D6'] },
  {
    name: 'Cyclopentasiloxane',
    cas: '541-02-6',
    formula: 'C10H30O5Si5',
    also: ['D5'],
    groups: ['D4 and D5', 'D4, D5 and D6'],
  },
  { name: 'Cyclohexasiloxane', formula: 'C12H36O6Si6', also: ['D6'], groups: ['D4, D5 and D6'] },
  { name: 'Trimethylbenzoyl Diphenylphosphine Oxide', also: ['TPO'], formula: 'C22H21O2P' },
  { name: 'Acrylamide', formula: 'C3H5NO', also: ['residual acrylamide'] },
  { name: 'Benzoyl Peroxide', formula: 'C14H10O4' },
  { name: 'Sulfur', formula: 'S' },
  { name: 'Hydrocortisone', formula: 'C21H30O5' },
];
