import { formatDate } from '../locale/dates';
import { formatMass } from '../locale/mass';
import { formatMoney } from '../locale/money';
import { formatNumber, formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { FIGURE_KINDS } from '../materials/figure';
import type { Figure, FigureKind } from '../materials/figure';
import type { Material, MaterialContent, Offer } from '../materials/material';
import { isPriced, pricePerKgMinor, type PricedOffer } from '../costing/offers';
import { capital, joined } from './words';

/** A figure as it is read: "9.8 (9.0–10.5)", "52–58 °C", "from 4.0". */
export function figureWords(kind: FigureKind, figure: Figure | undefined, region: Region): string {
  if (!figure) return '';
  const { digits, unit } = FIGURE_KINDS[kind];
  const show = (value: number): string => formatNumber(value, region, digits);
  const { low, value, high } = figure;
  const range =
    low !== null && high !== null
      ? low === high
        ? show(low)
        : `${show(low)}–${show(high)}`
      : low !== null
        ? `from ${show(low)}`
        : high !== null
          ? `up to ${show(high)}`
          : '';
  const shown = value === null ? range : range ? `${show(value)} (${range})` : show(value);
  return unit ? `${shown} ${unit}` : shown;
}

/** A usage range: "2–8 %, typically 5 %", or an empty text when nothing is known. */
export function usageWords(usage: Material['usage'], region: Region): string {
  if (!usage) return '';
  const show = (ppm: number): string => formatPercent(ppm, region, ppm % 10_000 === 0 ? 0 : 2);
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
export function inciWords(material: Pick<Material, 'composition'>, most = Infinity): string {
  const middle = (part: Material['composition'][number]): number => part.lowPpm + part.highPpm;
  const names = [...material.composition].sort((a, b) => middle(b) - middle(a)).map((part) => part.inci);
  const named = names.slice(0, most).join(' (and) ');
  return names.length > most ? `${named} and ${names.length - most} more` : named;
}

/** How a material is kept: temperature, what to keep it from, how long. */
export function storageWords(storage: Material['storage'], region: Region): string {
  const show = (value: number): string => `${formatNumber(value, region, { min: 0, max: 1 })} °C`;
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

/** What a material is best for, in a line, from its recorded functions, emulsion type, body and usage. */
export function bestUse(material: MaterialContent, region: Region): string {
  const { functions, emulsionType, body, needsNeutralising, coldProcessable, phaseOfUse } = material;
  const serves =
    emulsionType === 'both' ? 'o/w and w/o emulsions' : emulsionType ? `${emulsionType} emulsions` : '';
  const what = joined(functions) || (phaseOfUse && phaseOfUse !== 'any' ? `${phaseOfUse} phase` : '');
  return capital(
    [
      serves ? `${what || 'emulsifier'} for ${serves}` : what,
      body === 'strong'
        ? 'builds body'
        : body === 'some'
          ? 'some body'
          : body === 'none'
            ? 'for fluid textures'
            : '',
      needsNeutralising ? 'needs neutralising' : '',
      coldProcessable ? 'cold-processable' : '',
      usageWords(material.usage, region),
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
