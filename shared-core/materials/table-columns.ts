import { minorDigits } from '../quantities/money';
import { MG_PER_KG } from '../quantities/mass';
import { percentFromPpm } from '../quantities/share';
import type { TableColumn } from '../record/table-column';
import { sureNumber } from '../tables/sure-number';
import type { Cell } from '../tables/table';
import type { InciPart } from './composition';
import type { MaterialDocument } from './document';
import { FIGURE_KINDS, FIGURE_NAMES, type Figures } from './figure';
import type { LegalLimit } from './legal-limit';
import type { Offer } from './offer';
import type { Usage } from './usage';

const percent = (ppm: number): string => sureNumber(percentFromPpm(ppm));
const share = (ppm: number | null | undefined): Cell =>
  typeof ppm === 'number' ? percentFromPpm(ppm) : null;
const text = (written: string | undefined): Cell => (written ? written : null);
const day = (date: string | undefined): Cell => (date ? { date } : null);

function partWords({ inci, lowPpm, highPpm }: InciPart): string {
  const ends = lowPpm === highPpm ? percent(lowPpm) : `${percent(lowPpm)}–${percent(highPpm)}`;
  return `${inci} (${ends} %)`;
}

/** All INCI names with their shares, in the way in which a table is taken in: `Cetearyl Alcohol (60–90 %); Aqua (10 %)`. */
export const COMPOSITION_COLUMNS: readonly TableColumn<InciPart[]>[] = [
  { heading: 'INCI name', cell: (parts) => text(parts.map(partWords).join('; ')) },
];

export const ALLERGEN_COLUMNS: readonly TableColumn<{ inci: string; ppm: number }[]>[] = [
  {
    heading: 'Fragrance allergens',
    cell: (list) => text(list.map(({ inci, ppm }) => `${inci} (${percent(ppm)} %)`).join('; ')),
  },
];

export const USAGE_COLUMNS: readonly TableColumn<Usage | null>[] = [
  { heading: 'Usage, lowest (%)', cell: (usage) => share(usage?.minPpm) },
  { heading: 'Usage, typical (%)', cell: (usage) => share(usage?.typicalPpm) },
  { heading: 'Usage, highest (%)', cell: (usage) => share(usage?.maxPpm) },
  { heading: 'How the usage is known', cell: (usage) => usage?.provenance ?? null },
  { heading: 'Source of the usage range', cell: (usage) => text(usage?.source) },
];

export const LEGAL_LIMIT_COLUMNS: readonly TableColumn<LegalLimit | null>[] = [
  { heading: 'Legal limit in the finished product (%)', cell: (limit) => share(limit?.ppm) },
  { heading: 'Legal limit: applies to', cell: (limit) => text(limit?.note) },
  { heading: 'Legal limit: text and date', cell: (limit) => text(limit?.source) },
];

/** One value is a number; a range or a bound is written as it is taken in: `52–58`, `> 4`, `< 25`. */
function figureCell(held: Figures[keyof Figures] | undefined): Cell {
  if (!held) return null;
  const { low, value, high } = held;
  if (value !== null) return value;
  if (low !== null && high !== null)
    return low === high ? low : `${sureNumber(low)}${low < 0 || high < 0 ? ' to ' : '–'}${sureNumber(high)}`;
  return low !== null ? `> ${sureNumber(low)}` : high !== null ? `< ${sureNumber(high)}` : null;
}

/** The figures, each with the ends of its spread, where it comes from in words, and its source. */
export const FIGURE_COLUMNS: readonly TableColumn<Figures>[] = FIGURE_NAMES.flatMap((kind) => {
  const { label, unit } = FIGURE_KINDS[kind];
  const unitWords = unit === '' ? '' : ` (${unit})`;
  const spread = (held: Figures): boolean => typeof held[kind]?.value === 'number';
  return [
    { heading: `${label}${unitWords}`, cell: (held: Figures) => figureCell(held[kind]) },
    {
      heading: `Spread of ${label}, from${unitWords}`,
      cell: (held: Figures) => (spread(held) ? (held[kind]?.low ?? null) : null),
    },
    {
      heading: `Spread of ${label}, to${unitWords}`,
      cell: (held: Figures) => (spread(held) ? (held[kind]?.high ?? null) : null),
    },
    { heading: `How ${label} is known`, cell: (held: Figures) => held[kind]?.provenance ?? null },
    { heading: `Source of ${label}`, cell: (held: Figures) => text(held[kind]?.source) },
  ];
});

/** The newest offer: a table holds one a row. */
const newest = (offers: readonly Offer[]): Offer | undefined =>
  offers.reduce<Offer | undefined>((last, one) => (last && last.date > one.date ? last : one), undefined);

function ofNewest(heading: string, cell: (offer: Offer) => Cell): TableColumn<Offer[]> {
  return {
    heading,
    cell: (offers) => {
      const offer = newest(offers);
      return offer ? cell(offer) : null;
    },
  };
}

export const OFFER_COLUMNS: readonly TableColumn<Offer[]>[] = [
  ofNewest('Supplier', ({ supplier }) => text(supplier)),
  ofNewest('Supplier’s item code', ({ itemCode }) => text(itemCode)),
  ofNewest('Pack (kg)', ({ packMg }) => (packMg === null ? null : packMg / MG_PER_KG)),
  ofNewest('Price of the pack', ({ priceMinor, currency }) =>
    priceMinor === null ? null : priceMinor / 10 ** minorDigits(currency),
  ),
  ofNewest('Currency', ({ currency, priceMinor }) => (priceMinor === null ? null : currency)),
  ofNewest('Date of the price', ({ date }) => day(date)),
];

export const DOCUMENT_COLUMNS: readonly TableColumn<MaterialDocument[]>[] = [
  {
    heading: 'Documents',
    cell: (documents) =>
      text(
        documents
          .map(({ kind, title, validUntil }) =>
            [`${kind}: ${title}`, validUntil && `valid until ${validUntil}`].filter(Boolean).join(', '),
          )
          .join('; '),
      ),
  },
];
