import { formatDate } from '../locale/dates';
import { formatMass } from '../locale/mass';
import { formatMoney } from '../locale/money';
import { formatNumber, formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { partPpm, type InciPart } from './composition';
import type { KindedPaper } from './document';
import { FIGURE_KINDS, FIGURE_NAMES } from './figure';
import type { Figure, FigureKind, Figures } from './figure';
import type { LegalLimit } from './legal-limit';
import type { Offer } from './offer';
import type { Storage } from './storage';
import type { Usage } from './usage';
import { isPriced, pricePerKgMinor, type PricedOffer } from '../costing/offers';
import { capital, joined } from '../locale/words';

/** A figure as it is read: "9.8 (9.0–10.5)", "52–58 °C", "from 4.0". */
export function figureWords(kind: FigureKind, figure: Figure | undefined, region: Region): string {
  if (!figure) return '';
  const { digits, unit } = FIGURE_KINDS[kind];
  const show = (value: number): string => formatNumber(value, region, digits).replace('-', '−');
  const { low, value, high } = figure;
  // A dash between two minus signs would not be read.
  const dash = low !== null && low < 0 ? ' to ' : '–';
  const range =
    low !== null && high !== null
      ? low === high
        ? show(low)
        : `${show(low)}${dash}${show(high)}`
      : low !== null
        ? `from ${show(low)}`
        : high !== null
          ? `up to ${show(high)}`
          : '';
  const shown = value === null ? range : range ? `${show(value)} (${range})` : show(value);
  return unit ? `${shown} ${unit}` : shown;
}

/** A usage range: "2–8 %, typically 5 %", or an empty text when nothing is known. */
export function usageWords(usage: Usage | null, region: Region): string {
  if (!usage) return '';
  const show = (ppm: number): string => formatPercent(ppm, region, ppm % 10_000 === 0 ? 0 : undefined);
  const { minPpm, typicalPpm, maxPpm } = usage;
  const range =
    minPpm !== null && maxPpm !== null
      ? `${show(minPpm)} to ${show(maxPpm)}`
      : maxPpm !== null
        ? `up to ${show(maxPpm)}`
        : minPpm !== null
          ? `from ${show(minPpm)}`
          : '';
  const typical = typicalPpm === null ? '' : `typically ${show(typicalPpm)}`;
  return [range, typical].filter(Boolean).join(', ');
}

/**
 * INCI names of a material, largest share first, joined as on a data sheet.
 * @param most how many are named before the rest is counted
 */
export function inciWords(material: { composition: readonly InciPart[] }, most = Infinity): string {
  const middle = (part: InciPart): number => part.lowPpm + part.highPpm;
  const names = [...material.composition].sort((a, b) => middle(b) - middle(a)).map((part) => part.inci);
  const named = names.slice(0, most).join(' (and) ');
  return names.length > most ? `${named} and ${names.length - most} more` : named;
}

/** How a material is kept: temperature, what to keep it from, how long. */
export function storageWords(storage: Storage, region: Region): string {
  const show = (value: number): string =>
    `${formatNumber(value, region, { min: 0, max: 1 }).replace('-', '−')} °C`;
  const { minC, maxC, keepFrom, shelfLifeMonths, afterOpeningMonths } = storage;
  const range =
    minC !== null && maxC !== null
      ? `at ${show(minC)} to ${show(maxC)}`
      : maxC !== null
        ? `below ${show(maxC)}`
        : minC !== null
          ? `above ${show(minC)}`
          : '';
  const months = (count: number): string => (count === 1 ? '1 month' : `${count} months`);
  return capital(
    [
      range,
      keepFrom.length > 0 ? `away from ${joined(keepFrom)}` : '',
      shelfLifeMonths === null ? '' : `unopened ${months(shelfLifeMonths)}`,
      afterOpeningMonths === null ? '' : `once opened ${months(afterOpeningMonths)}`,
    ]
      .filter(Boolean)
      .join('; '),
  );
}

/** An offer's price per kg, "€11.60". */
export function perKgWords(offer: PricedOffer, region: Region): string {
  return formatMoney(pricePerKgMinor(offer), offer.currency, region);
}

/** An offer in a line's worth of texts, for a table; a pack or a price that is not known stays empty. */
export function offerWords(offer: Offer, region: Region): [string, string, string, string, string, string] {
  return [
    offer.supplier,
    offer.itemCode,
    offer.packMg === null ? '' : formatMass(offer.packMg, region),
    offer.priceMinor === null ? '' : formatMoney(offer.priceMinor, offer.currency, region),
    isPriced(offer) ? perKgWords(offer, region) : '',
    formatDate(offer.date, region),
  ];
}

/** A composition, largest share first: "Cetearyl Alcohol 60 to 90 %, Aqua 10 %". */
export function compositionWords(parts: readonly InciPart[], region: Region): string {
  const share = (ppm: number): string => formatPercent(ppm, region);
  return [...parts]
    .sort((a, b) => partPpm(b) - partPpm(a))
    .map(({ inci, lowPpm, highPpm }) =>
      lowPpm === highPpm ? `${inci} ${share(lowPpm)}` : `${inci} ${share(lowPpm)} to ${share(highPpm)}`,
    )
    .join(', ');
}

/** Every figure with its name: "HLB 9.8; Density 0.92 g/mL". */
export function figuresWords(figures: Figures, region: Region): string {
  return FIGURE_NAMES.flatMap((kind) => {
    const held = figures[kind];
    return held ? [`${FIGURE_KINDS[kind].label} ${figureWords(kind, held, region)}`] : [];
  }).join('; ');
}

/** A recorded limit with what it covers and where it stands. */
export function legalLimitWords(limit: LegalLimit | null, region: Region): string {
  if (!limit) return '';
  const share = formatPercent(limit.ppm, region);
  return `${share} of the finished product; ${[limit.note, limit.source].filter(Boolean).join('; ')}`;
}

/** Declarable allergens with their share of the material. */
export function allergenWords(allergens: readonly { inci: string; ppm: number }[], region: Region): string {
  return allergens.map(({ inci, ppm }) => `${inci} ${formatPercent(ppm, region)}`).join(', ');
}

/** Offers, newest first, each in a phrase. */
export function offersWords(offers: readonly Offer[], region: Region): string {
  return [...offers]
    .sort((a, b) => b.date.localeCompare(a.date))
    .map((offer) => offerWords(offer, region).filter(Boolean).join(' '))
    .join('; ');
}

/** The days that a document bears, each in words, where they are known. */
export function dayWords(
  { dated, validUntil }: Pick<KindedPaper, 'dated' | 'validUntil'>,
  region: Region,
): string[] {
  return [
    dated === '' ? '' : formatDate(dated, region),
    validUntil === '' ? '' : `valid until ${formatDate(validUntil, region)}`,
  ].filter(Boolean);
}

/** What a document is and how long it holds: "certificate, 3 Mar 2026, valid until 2 Mar 2027". */
export function documentFacts(document: KindedPaper, region: Region): string {
  return [document.kind, ...dayWords(document, region)].join(', ');
}

/** Attached documents by title, with their kind and dates. */
export function documentWords(documents: readonly KindedPaper[], region: Region): string {
  return documents.map((one) => `${one.title} (${documentFacts(one, region)})`).join('; ');
}
