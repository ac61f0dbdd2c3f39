import { z } from 'zod';
import { currency } from '../quantities/money';
import { sharePpm, WHOLE_PPM } from '../quantities/share';
import { lineText, longText, nameText } from '../quantities/text';
import { figures } from './figure';
import {
  ARCHITECTURES,
  BODY,
  CHARGES,
  CONSISTENCIES,
  DOCUMENT_KINDS,
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

export const id = z.uuid('This is not an identifier of ours.');
const isoDate = z.iso.date('Write the date as year-month-day, for example 2026-03-31.');
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'This attachment is not known.');

/** One INCI name of a composition with its share of the material; `lowPpm` = `highPpm` when exact. */
export const inciPart = z
  .object({ inci: nameText('the INCI name', 300), lowPpm: sharePpm, highPpm: sharePpm })
  .refine((part) => part.lowPpm <= part.highPpm, 'The lower end of the range is above the upper end.');
export type InciPart = z.infer<typeof inciPart>;

/**
 * What a composition is made of. Suppliers' ranges overlap by nature (60–90 % with 40–90 %), so only lower ends beyond
 * a whole are impossible and refused. Computing takes every midpoint as it is, also where the midpoints do not make
 * 100 %: spreading the difference would invent figures that nobody gave. The total is shown beside the composition,
 * and the ingredient list names such a material as approximate.
 */
export const composition = z
  .array(inciPart)
  .min(1, 'A raw material needs at least one INCI name.')
  .max(60, 'A raw material can hold 60 INCI names at most.')
  .refine(
    (parts) => parts.reduce((sum, part) => sum + part.lowPpm, 0) <= WHOLE_PPM,
    'The shares, each at its lowest, add up to more than 100 %. Lower one of them.',
  )
  .refine(
    (parts) => new Set(parts.map((part) => part.inci.toLowerCase())).size === parts.length,
    'The same INCI name stands twice. Keep it once, with the summed share.',
  );

/** How much of a formula a material is meant to make up, in ppm of the formula. */
export const usage = z
  .object({
    minPpm: sharePpm.nullable(),
    typicalPpm: sharePpm.nullable(),
    maxPpm: sharePpm.nullable(),
    provenance: z.enum(PROVENANCES),
    source: lineText(500),
  })
  .refine((range) => {
    const ends = [range.minPpm, range.typicalPpm, range.maxPpm].filter((end) => end !== null);
    return ends.every((end, index) => index === 0 || (ends[index - 1] ?? 0) <= end);
  }, 'Usage must rise from lowest to typical to highest.');

/** A supplier's offer: one pack size at one price on one date; who supplies it may be known before the price. */
export const offer = z
  .object({
    supplier: nameText('the supplier'),
    itemCode: lineText(60),
    packMg: z
      .int('A pack is weighed to the milligram at most.')
      .positive('The pack must weigh something.')
      .max(1e12, 'That pack is larger than a tanker.')
      .nullable(),
    priceMinor: z
      .int('This price has more decimals than its currency.')
      .min(0, 'A price cannot be negative.')
      .max(1e12, 'That price is too large.')
      .nullable(),
    currency,
    date: isoDate,
  })
  .refine(({ packMg, priceMinor }) => priceMinor === null || packMg !== null, {
    path: ['packMg'],
    message: 'A price needs the size of its pack.',
  });
export type Offer = z.infer<typeof offer>;

export const materialDocument = z.object({
  kind: z.enum(DOCUMENT_KINDS),
  title: nameText('the document’s title'),
  sha256,
  mediaType: z.enum(['application/pdf', 'image/png', 'image/jpeg', 'image/webp']),
  bytes: z.int('A size is a whole number of bytes.').positive('This file is empty.'),
});
export type MaterialDocument = z.infer<typeof materialDocument>;

const temperature = z
  .number('Write the temperature as a number.')
  .min(-80, 'Too cold to be true.')
  .max(200, 'Too hot to be true.')
  .nullable();
const months = z
  .int('Write whole months, without decimals.')
  .min(0, 'Months cannot be negative.')
  .max(600, 'Fifty years at most.')
  .nullable();

const storedStorage = z.object({
  minC: temperature,
  maxC: temperature,
  keepFrom: z.array(z.enum(KEEP_FROM)).max(KEEP_FROM.length),
  shelfLifeMonths: months,
  afterOpeningMonths: months,
});

export const storage = storedStorage.refine(
  ({ minC, maxC }) => minC === null || maxC === null || minC <= maxC,
  {
    message: '“Not colder than” must not be above “not warmer than”.',
    path: ['minC'],
  },
);

const storedAllergens = z
  .array(z.object({ inci: nameText('the allergen', 200), ppm: sharePpm }))
  .max(120, 'A raw material can hold 120 allergens at most.');
const allergens = storedAllergens.refine(
  (list) => new Set(list.map((one) => one.inci.toLowerCase())).size === list.length,
  'The same allergen stands twice. Keep it once, with the summed share.',
);

/** All that a library holds about a raw material; what it took in before a rule was made stays readable. */
export const storedContent = z.object({
  code: lineText(40),
  tradeName: lineText(200),
  status: z.enum(STATUSES),
  composition,
  functions: z.array(z.enum(FUNCTIONS)).max(FUNCTIONS.length),
  phaseOfUse: z.enum(PHASES_OF_USE).nullable(),
  usage: usage.nullable(),
  form: z.enum(FORMS).nullable(),
  consistency: z.enum(CONSISTENCIES).nullable(),
  appearance: lineText(300),
  /** Null for a material that carries no charge to speak of, such as an oil. */
  charge: z.enum(CHARGES).nullable(),
  architecture: z.enum(ARCHITECTURES).nullable(),
  emulsionType: z.enum(EMULSION_TYPES).nullable(),
  body: z.enum(BODY).nullable(),
  electrolyteTolerance: z.enum(TOLERANCES).nullable(),
  /** An acid emulsifier or polymer that works only once a base has neutralised it. */
  needsNeutralising: z.boolean(),
  coldProcessable: z.boolean().nullable(),
  solubleIn: z.array(z.enum(SOLUBILITIES)).max(SOLUBILITIES.length),
  origin: z.enum(ORIGINS).nullable(),
  certifiedOrganic: z.boolean(),
  figures,
  storage: storedStorage,
  hazards: z.array(z.enum(HAZARDS)).max(HAZARDS.length),
  handling: longText(4000),
  /** A legal limit as the maker recorded it, in ppm of the ready product; always with its text and date. */
  legalLimit: z
    .object({ ppm: sharePpm, note: lineText(300), source: nameText('the source of the limit', 300) })
    .nullable(),
  allergens: storedAllergens,
  offers: z.array(offer).max(60, 'A raw material can hold 60 offers at most.'),
  documents: z.array(materialDocument).max(60, 'A raw material can hold 60 documents at most.'),
  photo: sha256.nullable(),
  notes: longText(),
});

/** All that a maker can enter about a raw material. */
export const materialContent = storedContent.extend({
  tradeName: nameText('the trade name'),
  storage,
  allergens,
});
export type MaterialContent = z.infer<typeof materialContent>;

/** A raw material in the library. `revision` counts its edits, so that two windows cannot overwrite each other. */
export const material = storedContent.extend({
  id,
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});
export type Material = z.infer<typeof material>;

/** A material with nothing known but its name and INCI name: where adding one starts. */
export function blankMaterial(tradeName: string, inci: string): MaterialContent {
  return {
    code: '',
    tradeName,
    status: 'in use',
    composition: [{ inci, lowPpm: WHOLE_PPM, highPpm: WHOLE_PPM }],
    functions: [],
    phaseOfUse: null,
    usage: null,
    form: null,
    consistency: null,
    appearance: '',
    charge: null,
    architecture: null,
    emulsionType: null,
    body: null,
    electrolyteTolerance: null,
    needsNeutralising: false,
    coldProcessable: null,
    solubleIn: [],
    origin: null,
    certifiedOrganic: false,
    figures: {},
    storage: { minC: null, maxC: null, keepFrom: [], shelfLifeMonths: null, afterOpeningMonths: null },
    hazards: [],
    handling: '',
    legalLimit: null,
    allergens: [],
    offers: [],
    documents: [],
    photo: null,
    notes: '',
  };
}

/** The share of one INCI name used in computing: the exact one, or the midpoint of the supplier's range. */
export function partPpm(part: InciPart): number {
  return (part.lowPpm + part.highPpm) / 2;
}
