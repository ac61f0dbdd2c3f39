import { figureValue, type Figure, type FigureKind } from '../materials/figure';
import { MATERIAL_FIELDS } from '../materials/fields';
import { blankMaterial, type MaterialContent } from '../materials/material';
import type { Offer } from '../materials/offer';
import { MG_PER_KG } from '../quantities/mass';
import { minorDigits, type Currency } from '../quantities/money';
import { ppmFromPercent } from '../quantities/share';
import { blankContent, type Fields } from '../record/field';
import { MATERIAL_TARGETS } from './material-targets';
import type { Values } from './row';

/** What a table does not say by itself. */
export interface TakingIn {
  /** Where the figures come from, such as “taken in from shelf.xlsx”. */
  source: string;
  /** The day of prices without one, ISO 8601. */
  today: string;
  currency: Currency;
}

interface Ends {
  low: number | null;
  value: number | null;
  high: number | null;
}
interface Money {
  amount: number;
  currency: Currency | null;
}

type Parts = Record<string, unknown>;

/** Where a value goes: a field of its own, or a part of one. */
type Place = readonly [field: string, part: string | null];
const placeIn = (key: string): Place => {
  const [field = '', part = null] = key.split('.');
  return [field, part];
};
/** Each key is taken apart once: a table asks for them at every cell. */
const PLACES: ReadonlyMap<string, Place> = new Map(MATERIAL_TARGETS.map(({ key }) => [key, placeIn(key)]));

/** A group of which nothing is known yet. */
function blankGroup(key: string): Parts {
  const { shape } = (MATERIAL_FIELDS as Fields)[key]!;
  return shape.kind === 'group' ? blankContent(shape.fields) : {};
}

/** The ends of a range written in one cell, as the parts of their group. */
function rangeParts(group: string, { low, value, high }: Ends): Parts {
  const known = (parts: Record<string, number | null>): Parts =>
    Object.fromEntries(Object.entries(parts).filter(([, one]) => one !== null));
  if (group === 'storage') return known({ minC: low, maxC: high ?? value });
  const ppm = (percent: number | null): number | null => (percent === null ? null : ppmFromPercent(percent));
  return known({ minPpm: ppm(low), typicalPpm: ppm(value), maxPpm: ppm(high) });
}

/** Puts a part, or the ends of a range, into its group; one of which nothing was known begins blank. */
function putPart(held: Parts, group: string, [part, value]: [string, unknown], { source }: TakingIn): void {
  const was = held[group] as Parts | null;
  const begun = group === 'usage' && was === null && source !== '' ? { source } : {};
  const parts = part === 'range' ? rangeParts(group, value as Ends) : { [part]: value };
  held[group] = { ...(was ?? { ...blankGroup(group), ...begun }), ...parts };
}

/** A figure that says what is there already keeps where that came from. */
function figureFrom(before: Figure | undefined, ends: Ends, source: string): Figure {
  const says = (figure: Figure): boolean =>
    (figure.low === ends.low && figure.value === ends.value && figure.high === ends.high) ||
    (ends.value !== null && ends.value === figureValue(figure) && figure.value !== null);
  if (before && says(before)) return before;
  const { low, value, high } = ends;
  return { low, value, high, provenance: 'supplier', source };
}

const minorOf = (amount: number, currency: Currency): number =>
  Number((amount * 10 ** minorDigits(currency)).toPrecision(12));

/** The offer that a row makes; null for one without a supplier, a price or a pack. */
function offerOf(values: Values, { today, currency: usual }: TakingIn): Partial<Offer> | null {
  const price = values['offer.price'] as Money | undefined;
  const perKg = values['offer.pricePerKg'] as Money | undefined;
  const pack = values['offer.pack'] as number | undefined;
  const supplier = values['offer.supplier'] as string | undefined;
  const itemCode = values['offer.itemCode'] as string | undefined;
  if ([price, perKg, pack, supplier, itemCode].every((one) => one === undefined)) return null;
  const told = (values['offer.currency'] as Currency | undefined) ?? price?.currency ?? perKg?.currency;
  const currency = told ?? usual;
  const packMg = pack ?? (perKg ? MG_PER_KG : null);
  const amount = price ? price.amount : perKg && packMg !== null ? (perKg.amount * packMg) / MG_PER_KG : null;
  return {
    ...(supplier !== undefined && { supplier }),
    ...(itemCode !== undefined && { itemCode }),
    packMg,
    priceMinor: amount === null ? null : minorOf(amount, currency),
    currency,
    date: (values['offer.date'] as string | undefined) ?? today,
  };
}

/** The offers with the row's: one that says the same but for its day is there already. */
function withOffer(offers: readonly Offer[], values: Values, taking: TakingIn): Offer[] {
  const row = offerOf(values, taking);
  if (!row) return [...offers];
  const last = offers[offers.length - 1];
  const made = { supplier: '', itemCode: '', ...row } as Offer;
  if (row.supplier === undefined && last) made.supplier = last.supplier;
  const says = (one: Offer): boolean =>
    one.supplier === made.supplier &&
    (row.itemCode === undefined || one.itemCode === made.itemCode) &&
    (made.priceMinor === null ||
      (one.packMg === made.packMg && one.priceMinor === made.priceMinor && one.currency === made.currency)) &&
    (values['offer.pack'] === undefined || one.packMg === made.packMg) &&
    (values['offer.date'] === undefined || one.date === made.date);
  return offers.some(says) ? [...offers] : [...offers, made];
}

/** What a row alone says of a new material: all else is blank. */
const begun = (values: Values): MaterialContent => ({
  ...blankMaterial(String(values.tradeName ?? ''), ''),
  composition: [],
});

/**
 * A material as it is once a row is taken in: what the row says stands, all else stays as it was.
 * @param before the material that the row is known to be; null makes a new one
 */
export function contentOf(before: MaterialContent | null, values: Values, taking: TakingIn): MaterialContent {
  const content = { ...(before ?? begun(values)) };
  const held = content as unknown as Parts;
  const figures: Partial<Record<FigureKind, Figure>> = { ...content.figures };
  for (const key in values) {
    const [name, part] = PLACES.get(key) ?? placeIn(key);
    if (name === 'offers' || name === 'offer') continue;
    const value = values[key];
    if (part === null) held[name] = value;
    else if (name === 'figures')
      figures[part as FigureKind] = figureFrom(figures[part as FigureKind], value as Ends, taking.source);
    else putPart(held, name, [part, value], taking);
  }
  content.figures = figures;
  // The row's own, and those of its further rows.
  for (const one of [values, ...((values.offers as Values[] | undefined) ?? [])])
    content.offers = withOffer(content.offers, one, taking);
  return content;
}
