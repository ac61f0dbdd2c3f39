import { z } from 'zod';
import {
  attachment,
  figuresField,
  flag,
  group,
  line,
  name,
  number,
  rows,
  shareOrNone,
  text,
  word,
  wordOrNone,
  words,
  yesOrNo,
} from '../record/field';
import { allergens, storedAllergens } from './allergens';
import { composition } from './composition';
import { materialDocument, sha256 } from './document';
import { figures } from './figure';
import { legalLimit } from './legal-limit';
import { ALLERGEN_ROW, COMPOSITION_ROW, DOCUMENT_ROW, OFFER_ROW } from './row-fields';
import { offer } from './offer';
import {
  ALLERGEN_COLUMNS,
  COMPOSITION_COLUMNS,
  DOCUMENT_COLUMNS,
  FIGURE_COLUMNS,
  LEGAL_LIMIT_COLUMNS,
  OFFER_COLUMNS,
  USAGE_COLUMNS,
} from './table-columns';
import { months, storage, storedStorage, temperature } from './storage';
import { usage } from './usage';
import { WITHDRAWAL_FIELDS } from './withdrawal';
import {
  ARCHITECTURES,
  BODY,
  CHARGES,
  CONSISTENCIES,
  EMULSION_TYPES,
  FORMS,
  FUNCTIONS,
  HAZARDS,
  KEEP_FROM,
  ORIGINS,
  PHASES_OF_USE,
  PROVENANCES,
  SOLUBILITIES,
  STATUSES,
  TOLERANCES,
} from './vocabulary';
import {
  allergenWords,
  compositionWords,
  documentWords,
  figuresWords,
  legalLimitWords,
  offersWords,
  storageWords,
  usageWords,
} from './words';

export { MATERIAL_SECTIONS } from './sections';

const BY_HAND = { form: 'by hand', sheet: 'by hand', compare: 'no' } as const;
const degrees = (label: string) =>
  number(temperature, { label, section: 'storage', unit: '°C', digits: 1, min: -80, max: 200 });
const life = (label: string, column: string) =>
  number(months, { label, section: 'storage', column, unit: 'months', whole: true, min: 0, max: 600 });

/** Every property of a raw material, in the order in which form, sheet and comparison show them. */
export const MATERIAL_FIELDS = {
  tradeName: name('the trade name', {
    label: 'Trade name',
    section: 'identity',
    places: { sheet: 'by hand', compare: 'by hand', list: { rem: 12, grow: 1.8 }, search: true },
  }),
  code: line({
    label: 'Code',
    section: 'identity',
    max: 40,
    places: { sheet: 'by hand', compare: 'no', list: { rem: 6 }, search: true },
  }),
  status: word(STATUSES, 'in use', {
    label: 'Status',
    section: 'identity',
    places: { sheet: 'by hand', compare: 'no', list: { rem: 6 }, filter: 'Status' },
  }),
  ...WITHDRAWAL_FIELDS,
  composition: rows(COMPOSITION_ROW, composition, {
    label: 'Composition',
    section: 'composition',
    column: 'inci',
    places: { ...BY_HAND, compare: 'by hand', search: true },
    tell: compositionWords,
    columns: COMPOSITION_COLUMNS,
  }),
  casNumbers: line({
    label: 'CAS numbers',
    section: 'identity',
    max: 300,
    places: { search: true },
  }),
  charge: wordOrNone(CHARGES, 'none', {
    label: 'Charge',
    section: 'behaviour',
    places: { list: { rem: 7.2 }, filter: 'Charge', search: true },
  }),
  architecture: wordOrNone(ARCHITECTURES, 'not an emulsifier', {
    label: 'Architecture',
    section: 'behaviour',
    places: { list: { rem: 7 }, filter: 'Architecture', search: true },
  }),
  emulsionType: wordOrNone(EMULSION_TYPES, 'not stated', {
    label: 'Emulsion type',
    section: 'behaviour',
    names: { both: 'o/w and w/o' },
    places: { list: { title: 'Serves', rem: 5 }, filter: 'Emulsion type it serves', search: true },
  }),
  functions: words(FUNCTIONS, {
    label: 'Functions',
    section: 'identity',
    column: 'function',
    places: { compare: 'no', list: { rem: 8, grow: 1 }, filter: 'Function', search: true },
  }),
  phaseOfUse: wordOrNone(PHASES_OF_USE, 'not stated', {
    label: 'Usual phase',
    section: 'identity',
    places: { compare: 'no', list: { title: 'Phase', rem: 6 }, filter: 'Usual phase' },
  }),
  form: wordOrNone(FORMS, 'not known', {
    label: 'Form',
    section: 'behaviour',
    places: { list: { rem: 7 }, filter: 'Form', search: true },
  }),
  consistency: wordOrNone(CONSISTENCIES, 'not known', {
    label: 'Consistency when cold',
    section: 'behaviour',
    places: { list: { title: 'Consistency', rem: 7 }, filter: 'Consistency when cold', search: true },
  }),
  appearance: line({ label: 'Appearance', section: 'behaviour', max: 300 }),
  body: wordOrNone(BODY, 'not stated', {
    label: 'Body it builds',
    section: 'behaviour',
  }),
  electrolyteTolerance: wordOrNone(TOLERANCES, 'not known', {
    label: 'Tolerance to electrolyte',
    section: 'behaviour',
  }),
  needsNeutralising: flag({
    label: 'Needs neutralising',
    section: 'behaviour',
    hint: 'It works only once a base has neutralised it.',
  }),
  coldProcessable: yesOrNo({ label: 'Works cold', section: 'behaviour' }),
  solubleIn: words(SOLUBILITIES, {
    label: 'Dissolves in',
    section: 'behaviour',
    column: 'soluble in',
    places: { compare: 'no' },
  }),
  origin: wordOrNone(ORIGINS, 'not known', {
    label: 'Origin',
    section: 'identity',
    places: { list: { rem: 8 }, filter: 'Origin', search: true },
  }),
  countryOfOrigin: line({
    label: 'Country of origin',
    section: 'identity',
    max: 100,
    places: { list: { rem: 8 }, filter: 'Country of origin', search: true },
  }),
  certifiedOrganic: flag({
    label: 'Certified organic',
    section: 'identity',
    places: { compare: 'no' },
  }),
  usage: group(
    {
      minPpm: shareOrNone({ label: 'Lowest', section: 'usage' }),
      typicalPpm: shareOrNone({ label: 'Typical', section: 'usage' }),
      maxPpm: shareOrNone({ label: 'Highest', section: 'usage' }),
      provenance: word(PROVENANCES, 'supplier', { label: 'How known', section: 'usage' }),
      source: line({ label: 'Source of the usage range', section: 'usage', max: 500 }),
    },
    usage.nullable(),
    null,
    {
      label: 'Usage, % of the formula',
      section: 'usage',
      places: { form: 'by hand' },
      tell: usageWords,
      columns: USAGE_COLUMNS,
    },
  ),
  figures: figuresField(figures, {
    label: 'Figures',
    section: 'figures',
    column: 'figure',
    places: { ...BY_HAND, compare: 'by hand' },
    tell: figuresWords,
    columns: FIGURE_COLUMNS,
  }),
  storage: group(
    {
      minC: degrees('Not colder than'),
      maxC: degrees('Not warmer than'),
      keepFrom: words(KEEP_FROM, {
        label: 'Keep from',
        section: 'storage',
        column: 'keep from',
        places: { filter: 'Keep from' },
      }),
      shelfLifeMonths: life('Shelf life', 'shelf_life_months'),
      afterOpeningMonths: life('After opening', 'after_opening_months'),
    },
    storedStorage,
    { minC: null, maxC: null, keepFrom: [], shelfLifeMonths: null, afterOpeningMonths: null },
    {
      label: 'Storage',
      section: 'storage',
      entered: storage,
      places: { sheet: 'by hand', compare: 'no' },
      tell: storageWords,
    },
  ),
  hazards: words(HAZARDS, {
    label: 'Hazards',
    section: 'safety',
    column: 'hazard',
    places: { form: 'by hand', sheet: 'by hand' },
  }),
  handling: text({
    label: 'Handling',
    section: 'safety',
    max: 4000,
    places: { form: 'by hand', sheet: 'by hand', compare: 'no' },
  }),
  legalLimit: group(
    {
      ppm: shareOrNone({ label: 'Legal limit in the finished product', section: 'safety' }),
      note: line({ label: 'Applies to', section: 'safety', max: 300 }),
      source: line({ label: 'Text and date of the limit', section: 'safety', max: 300 }),
    },
    legalLimit.nullable(),
    null,
    {
      label: 'Legal limit',
      section: 'safety',
      column: 'limit',
      places: BY_HAND,
      tell: legalLimitWords,
      columns: LEGAL_LIMIT_COLUMNS,
    },
  ),
  allergens: rows(ALLERGEN_ROW, storedAllergens, {
    label: 'Fragrance allergens',
    section: 'safety',
    column: 'allergen',
    entered: allergens,
    places: BY_HAND,
    tell: allergenWords,
    columns: ALLERGEN_COLUMNS,
  }),
  offers: rows(OFFER_ROW, z.array(offer).max(60, 'A raw material can hold 60 offers at most.'), {
    label: 'Suppliers and prices',
    section: 'supply',
    column: 'offer',
    places: { ...BY_HAND, search: true },
    tell: offersWords,
    columns: OFFER_COLUMNS,
  }),
  documents: rows(
    DOCUMENT_ROW,
    z.array(materialDocument).max(60, 'A raw material can hold 60 documents at most.'),
    {
      label: 'Documents',
      section: 'documents',
      column: 'document',
      places: BY_HAND,
      tell: documentWords,
      columns: DOCUMENT_COLUMNS,
    },
  ),
  photo: attachment(sha256.nullable(), {
    label: 'Photo',
    section: 'documents',
    places: { form: 'by hand', sheet: 'by hand', compare: 'by hand' },
    tell: (held) => (held === null ? '' : 'attached'),
    columns: [],
  }),
  notes: text({
    label: 'Notes',
    section: 'identity',
    places: { sheet: 'by hand', compare: 'no', search: true },
  }),
};
