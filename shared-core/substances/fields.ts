import { z } from 'zod';
import { countAtoms } from '../structure/chemical-formula';
import { Problem } from '../problems/problem';
import { lineText } from '../quantities/text';
import { CMR_CLASSES } from './cmr-classes';
import { line, name, number, rows, text, wordOrNone } from '../record/field';

/** The parts of a substance's form and sheet, in their order. */
export const SUBSTANCE_SECTIONS = {
  identity: 'What it is',
  names: 'Other names and groups',
  chemistry: 'What it is counted as',
  fragrance: 'Fragrance allergen',
  safety: 'For the safety assessment',
  solubility: 'Solubility',
} as const;

/** Which list of declarable fragrance allergens it stands on. */
export const ALLERGEN_LISTS = ['older 26', 'added 2023'] as const;

const BY_HAND = { form: 'by hand', sheet: 'by hand', compare: 'no' } as const;
const inRow = { section: '' };

/** A chemical formula that can be read, or none. */
export const formulaText = lineText(200).superRefine((written, context) => {
  if (written === '') return;
  try {
    countAtoms(written);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    context.addIssue({ code: 'custom', message: `${error.message} ${error.advice}` });
  }
});

const positive = (what: string, max: number) =>
  z
    .number(`Write ${what} as a number.`)
    .positive(`${what} must be above zero.`)
    .max(max, `${what} cannot be above ${max}.`)
    .nullable();
const percent = (what: string) =>
  z
    .number(`Write ${what} as a number.`)
    .min(0, `${what} cannot be negative.`)
    .max(100, `${what} cannot be above 100 %.`)
    .nullable();

const named = z.object({ name: lineText(300) });
export const NAME_ROW = { name: name('the name', { label: 'Name', ...inRow, max: 300 }) };

const equivalent = z.object({
  countedAs: lineText(300),
  perMole: z
    .number('Write the count as a number.')
    .positive('The count must be above zero.')
    .max(100, 'That is more than any molecule holds.'),
});
export const EQUIVALENT_ROW = {
  countedAs: name('what it is counted as', { label: 'Counted as', ...inRow, max: 300 }),
  perMole: number(equivalent.shape.perMole, { label: 'Of it, per molecule', ...inRow, min: 0, max: 100 }),
};

const distinctNames = z
  .array(named)
  .max(200, 'A substance can have 200 other names at most.')
  .refine(
    (list) => new Set(list.map((one) => one.name.toLowerCase())).size === list.length,
    'The same name is there twice. Keep it once.',
  );

const hansenPart = (label: string, column: string) =>
  number(
    z
      .number(`Write ${label} as a number.`)
      .min(0, `${label} cannot be negative.`)
      .max(100, `${label} cannot be above 100.`)
      .nullable(),
    { label, section: 'solubility', column, unit: 'MPa½', digits: 2, min: 0, max: 100 },
  );

/** Every property of a substance, in the order in which its form shows them. */
export const SUBSTANCE_FIELDS = {
  name: name('the substance’s name', {
    label: 'INCI or EU common name',
    section: 'identity',
    max: 300,
    places: { sheet: 'by hand', list: { title: 'Substance', rem: 12, grow: 2 }, search: true },
  }),
  usName: line({
    label: 'US name, where it differs',
    section: 'identity',
    max: 300,
    hint: 'As a label in the United States writes it, such as Mineral Oil for Paraffinum Liquidum.',
    places: { list: { title: 'US name', rem: 8, grow: 1 }, search: true },
  }),
  colourIndex: line({
    label: 'CI number',
    section: 'identity',
    max: 30,
    placeholder: 'CI 77891',
    places: { list: { title: 'CI', rem: 6 }, search: true },
  }),
  cas: line({
    label: 'CAS numbers',
    section: 'identity',
    max: 200,
    places: { list: { title: 'CAS', rem: 7 }, search: true },
  }),
  synonyms: rows(NAME_ROW, distinctNames, {
    label: 'Other names',
    section: 'names',
    column: 'synonym',
    places: { ...BY_HAND, search: true },
    tell: (list) => list.map((one) => one.name).join('; '),
  }),
  groups: rows(NAME_ROW, distinctNames, {
    label: 'Groups that a limit may name',
    section: 'names',
    column: 'membership',
    places: { ...BY_HAND, search: true },
    tell: (list) => list.map((one) => one.name).join('; '),
  }),
  formula: line({
    label: 'Chemical formula',
    section: 'chemistry',
    max: 200,
    placeholder: 'C7H5NaO2',
    entered: formulaText,
    hint: 'Its molar mass is computed from this.',
  }),
  molarMass: number(positive('The molar mass', 10_000_000), {
    label: 'Molar mass, where it has no one formula',
    section: 'chemistry',
    column: 'molar_mass',
    unit: 'g/mol',
    min: 0,
    max: 10_000_000,
  }),
  equivalents: rows(EQUIVALENT_ROW, z.array(equivalent).max(20, 'Twenty are enough.'), {
    label: 'What limits count it as',
    section: 'chemistry',
    column: 'equivalent',
    places: BY_HAND,
    tell: (list) => list.map((one) => `${one.perMole} ${one.countedAs} per molecule`).join('; '),
  }),
  allergenList: wordOrNone(ALLERGEN_LISTS, 'none', {
    label: 'List of declarable allergens',
    section: 'fragrance',
    places: { list: { title: 'Allergen', rem: 6 }, filter: 'Fragrance allergen' },
  }),
  allergenLabel: line({
    label: 'Declared as',
    section: 'fragrance',
    max: 300,
    hint: 'Substances that share a name on the label are counted together: alpha- and beta-pinene as Pinene.',
    places: { search: true },
  }),
  cmrClass: wordOrNone(CMR_CLASSES, 'not said', {
    label: 'Classed as CMR, category',
    section: 'safety',
    column: 'cmr_class',
    hint: 'Carcinogenic, mutagenic or toxic to reproduction, by Regulation (EC) No 1272/2008, Annex VI. Classes change: check the text in force.',
    places: { list: { title: 'CMR', rem: 5 }, filter: 'Classed as CMR' },
  }),
  pod: number(positive('The point of departure', 1_000_000), {
    label: 'Point of departure',
    section: 'safety',
    unit: 'mg/kg body weight per day',
    min: 0,
    max: 1_000_000,
  }),
  podKind: line({
    label: 'What study and effect it is of',
    section: 'safety',
    max: 300,
    placeholder: 'NOAEL, 90 days, rat, oral',
  }),
  oralBioavailability: number(percent('The oral bioavailability'), {
    label: 'Oral bioavailability',
    section: 'safety',
    unit: '%',
    min: 0,
    max: 100,
    hint: 'Empty for a point of departure that is systemic already.',
  }),
  dermalAbsorption: number(percent('The dermal absorption'), {
    label: 'Dermal absorption',
    section: 'safety',
    unit: '% of the dose',
    min: 0,
    max: 100,
  }),
  absorbedPerArea: number(positive('The amount absorbed', 1_000_000), {
    label: 'or absorbed at the tested strength',
    section: 'safety',
    unit: 'µg/cm²',
    digits: 4,
    min: 0,
    max: 1_000_000,
  }),
  safetySource: line({
    label: 'Source of these figures',
    section: 'safety',
    max: 500,
    placeholder: 'Opinion or dossier, with its date',
  }),
  hansenD: hansenPart('Hansen parameter, dispersion', 'hansen_d'),
  hansenP: hansenPart('Hansen parameter, polar', 'hansen_p'),
  hansenH: hansenPart('Hansen parameter, hydrogen bonds', 'hansen_h'),
  hansenRadius: number(positive('The radius', 100), {
    label: 'Radius of its sphere, where one is known',
    section: 'solubility',
    column: 'hansen_radius',
    unit: 'MPa½',
    digits: 2,
    min: 0,
    max: 100,
  }),
  hansenSource: line({
    label: 'Source of the parameters',
    section: 'solubility',
    column: 'hansen_source',
    max: 500,
    hint: 'All three are needed before a check goes by them.',
  }),
  notes: text({ label: 'Notes', section: 'identity', places: { search: true } }),
};
