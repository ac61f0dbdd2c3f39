import { contentOf, type TakingIn } from '@core/imports/content-of';
import type { Values } from '@core/imports/row';
import { blankMaterial, type MaterialContent } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figure, range } from '../checks/build';

const TAKING: TakingIn = { source: 'taken in from shelf.xlsx', today: '2026-11-29', currency: 'EUR' };
const KG = 1_000_000;
const wax = (parts: Partial<MaterialContent> = {}): MaterialContent => ({
  ...blankMaterial('Larkspur Wax', 'Cera Alba'),
  ...parts,
});
const taken = (values: Values, before: MaterialContent | null = wax(), taking = TAKING): MaterialContent =>
  contentOf(before, values, taking);
const offersOf = (values: Values, before: Offer[] = [], taking = TAKING): Offer[] =>
  taken(values, wax({ offers: before }), taking).offers;
const euro = (amount: number) => ({ amount, currency: null });

const SACK: Offer = {
  ...{ supplier: 'Harrow Supplies', itemCode: 'HS-1', packMg: 25 * KG },
  ...{ priceMinor: 46_000, currency: 'EUR', date: '2026-03-01' },
};
const ROW_OF_SACK: Values = {
  'offer.supplier': 'Harrow Supplies',
  'offer.itemCode': 'HS-1',
  'offer.pack': 25 * KG,
  'offer.price': euro(460),
};

describe('the price in a row', () => {
  it('is that of its pack, in the smallest coin: 5 kg at 46.35 are 4635 cents', () => {
    expect(offersOf({ 'offer.price': euro(46.35), 'offer.pack': 5 * KG })).toEqual([
      { supplier: '', itemCode: '', packMg: 5 * KG, priceMinor: 4635, currency: 'EUR', date: '2026-11-29' },
    ]);
  });

  it('per kilogram is that of a kilogram, or of the pack that the row names: 18.40 × 25 = 460.00', () => {
    expect(offersOf({ 'offer.pricePerKg': euro(18.4) })).toMatchObject([{ packMg: KG, priceMinor: 1840 }]);
    expect(offersOf({ 'offer.pricePerKg': euro(18.4), 'offer.pack': 25 * KG })).toMatchObject([
      { packMg: 25 * KG, priceMinor: 46_000 },
    ]);
    // 250 g at 120.00 a kilogram are 30.00.
    expect(offersOf({ 'offer.pricePerKg': euro(120), 'offer.pack': KG / 4 })).toMatchObject([
      { packMg: KG / 4, priceMinor: 3000 },
    ]);
  });

  it('of the pack goes before one per kilogram, which is rounded in most tables', () => {
    const both = { 'offer.price': euro(100), 'offer.pricePerKg': euro(33.33), 'offer.pack': 3 * KG };
    expect(offersOf(both)).toMatchObject([{ packMg: 3 * KG, priceMinor: 10_000 }]);
  });

  it('keeps no dust of binary fractions: 19.99 and 1.15 are whole cents', () => {
    for (const [amount, cents] of [
      [19.99, 1999],
      [1.15, 115],
      [0.29, 29],
    ] as const)
      expect(offersOf({ 'offer.price': euro(amount), 'offer.pack': KG })).toMatchObject([
        { priceMinor: cents },
      ]);
  });

  it('in yen has no smaller coin (ISO 4217)', () => {
    const price = { amount: 1500, currency: 'JPY' };
    expect(offersOf({ 'offer.price': price, 'offer.pack': KG })).toMatchObject([
      { priceMinor: 1500, currency: 'JPY' },
    ]);
  });

  it('is in the currency of its column, else of its sign, else the usual one', () => {
    const price = { amount: 10, currency: 'USD' };
    const pack = { 'offer.pack': KG };
    const currency = (values: Values): string | undefined => offersOf({ ...pack, ...values })[0]?.currency;
    expect(currency({ 'offer.price': price, 'offer.currency': 'GBP' })).toBe('GBP');
    expect(currency({ 'offer.price': price })).toBe('USD');
    expect(currency({ 'offer.pricePerKg': price })).toBe('USD');
    expect(currency({ 'offer.price': euro(10) })).toBe('EUR');
    expect(offersOf({ ...pack, 'offer.price': euro(10) }, [], { ...TAKING, currency: 'CHF' })).toMatchObject([
      { currency: 'CHF' },
    ]);
  });

  it('without a pack stays without one, for the form to ask', () => {
    expect(offersOf({ 'offer.price': euro(10) })).toMatchObject([{ packMg: null, priceMinor: 1000 }]);
  });

  it('is none where the row has but a date, a pack or a currency', () => {
    expect(offersOf({ 'offer.date': '2026-03-01' })).toEqual([]);
    expect(offersOf({ 'offer.currency': 'USD' })).toEqual([]);
    expect(offersOf({ tradeName: 'Larkspur Wax' })).toEqual([]);
    // A pack alone is how it is sold, though not yet for how much.
    expect(offersOf({ 'offer.pack': KG })).toMatchObject([{ packMg: KG, priceMinor: null }]);
  });
});

describe('a price list that is taken in again', () => {
  it('adds nothing where supplier, code, pack and price are those that are there: a price keeps its first day', () => {
    expect(offersOf(ROW_OF_SACK, [SACK])).toEqual([SACK]);
  });

  it.each<[string, Values]>([
    ['another price', { 'offer.price': euro(470) }],
    ['another pack', { 'offer.pack': 20 * KG }],
    ['another supplier', { 'offer.supplier': 'Marlow & Daughters' }],
    ['another item code', { 'offer.itemCode': 'HS-2' }],
    ['another currency', { 'offer.currency': 'GBP' }],
    ['a day of its own', { 'offer.date': '2026-06-01' }],
  ])('adds one for %s, and the earlier one stays', (_, part) => {
    const offers = offersOf({ ...ROW_OF_SACK, ...part }, [SACK]);
    expect(offers).toHaveLength(2);
    expect(offers[0]).toEqual(SACK);
  });

  it('without a supplier’s name means the last one that is known', () => {
    const row = { 'offer.price': euro(500), 'offer.pack': 25 * KG };
    expect(offersOf(row, [SACK])[1]).toMatchObject({ supplier: 'Harrow Supplies', priceMinor: 50_000 });
    expect(offersOf(row)[0]).toMatchObject({ supplier: '' });
  });

  it('naming only who supplies it adds nothing where that one has offered already', () => {
    expect(offersOf({ 'offer.supplier': 'Harrow Supplies' }, [SACK])).toEqual([SACK]);
    expect(offersOf({ 'offer.supplier': 'Marlow & Daughters' }, [SACK])[1]).toMatchObject({
      ...{ supplier: 'Marlow & Daughters', packMg: null, priceMinor: null },
    });
  });

  it('with further rows adds each of them once', () => {
    const further = [{ ...ROW_OF_SACK, 'offer.pack': KG, 'offer.price': euro(30) }, ROW_OF_SACK];
    expect(offersOf({ ...ROW_OF_SACK, offers: further }).map(({ packMg }) => packMg)).toEqual([25 * KG, KG]);
  });
});

describe('a figure in a row', () => {
  const ends = (low: number | null, value: number | null, high: number | null) => ({ low, value, high });
  it('says that it comes from the supplier’s table', () => {
    expect(taken({ 'figures.hlb': ends(null, 5.8, null) }).figures.hlb).toEqual({
      ...{ low: null, value: 5.8, high: null, provenance: 'supplier', source: 'taken in from shelf.xlsx' },
    });
  });

  it('that says what is known keeps where that came from, a measurement of one’s own too', () => {
    const measured = { ...figure(5.8, 5.5, 6.1), provenance: 'measured' as const, source: 'own bench' };
    const before = wax({ figures: { hlb: measured } });
    expect(taken({ 'figures.hlb': ends(null, 5.8, null) }, before).figures.hlb).toEqual(measured);
    expect(taken({ 'figures.hlb': ends(5.5, 5.8, 6.1) }, before).figures.hlb).toEqual(measured);
    expect(taken({ 'figures.hlb': ends(null, 6, null) }, before).figures.hlb).toMatchObject({
      ...{ low: null, value: 6, high: null, provenance: 'supplier' },
    });
  });

  it('as a range is not taken for its middle: 60 to 64 °C becomes known as 62 where a row says so', () => {
    const before = wax({ figures: { meltingPoint: range(60, 64) } });
    expect(taken({ 'figures.meltingPoint': ends(60, null, 64) }, before).figures.meltingPoint?.source).toBe(
      'invented for this test',
    );
    expect(
      taken({ 'figures.meltingPoint': ends(null, 62, null) }, before).figures.meltingPoint,
    ).toMatchObject({
      ...{ low: null, value: 62, high: null, source: 'taken in from shelf.xlsx' },
    });
  });

  it('leaves the others as they were', () => {
    const before = wax({ figures: { density: figure(0.95) } });
    expect(Object.keys(taken({ 'figures.hlb': ends(null, 5, null) }, before).figures).sort()).toEqual([
      ...['density', 'hlb'],
    ]);
    expect(before.figures).toEqual({ density: figure(0.95) });
  });
});

describe('what a row says of usage and storage', () => {
  const ends = (low: number | null, value: number | null, high: number | null) => ({ low, value, high });
  it('as a range are its ends: 2 to 5 % of the formula, from the table', () => {
    expect(taken({ 'usage.range': ends(2, null, 5) }).usage).toEqual({
      ...{ minPpm: 20_000, typicalPpm: null, maxPpm: 50_000 },
      ...{ provenance: 'supplier', source: 'taken in from shelf.xlsx' },
    });
    expect(taken({ 'usage.range': ends(null, 3, null) }).usage).toMatchObject({ typicalPpm: 30_000 });
    expect(taken({ 'usage.range': ends(null, null, 0.5) }).usage).toMatchObject({
      minPpm: null,
      maxPpm: 5_000,
    });
  });

  it('in a column of its own changes that end only, and no source that was written', () => {
    const usage = {
      ...{ minPpm: 10_000, typicalPpm: 20_000, maxPpm: 30_000 },
      ...{ provenance: 'measured' as const, source: 'own bench' },
    };
    expect(taken({ 'usage.maxPpm': 40_000 }, wax({ usage })).usage).toEqual({ ...usage, maxPpm: 40_000 });
  });

  it('“< 25 °C” is the most and says nothing of the least', () => {
    const before = taken({ 'storage.minC': 5 });
    expect(taken({ 'storage.range': ends(null, null, 25) }, before).storage).toMatchObject({
      minC: 5,
      maxC: 25,
    });
    expect(taken({ 'storage.range': ends(-5, null, 10) }, before).storage).toMatchObject({
      minC: -5,
      maxC: 10,
    });
  });
});

describe('a row as a whole', () => {
  it('of a new material leaves all else blank, and makes up no INCI name', () => {
    const made = taken({ tradeName: 'Harrow Balm Base', code: 'H-7' }, null);
    expect(made).toEqual({ ...blankMaterial('Harrow Balm Base', ''), code: 'H-7', composition: [] });
  });

  const values = fc.record(
    {
      code: fc.constantFrom('A-1', 'B-2'),
      charge: fc.constantFrom('anionic', 'non-ionic'),
      'figures.hlb': fc.record({
        ...{ low: fc.constant(null), value: fc.integer({ min: 1, max: 40 }), high: fc.constant(null) },
      }),
      'usage.maxPpm': fc.integer({ min: 1, max: 1_000_000 }),
      'storage.maxC': fc.integer({ min: 0, max: 60 }),
      'offer.price': fc.integer({ min: 0, max: 9999 }).map(euro),
      'offer.pack': fc.integer({ min: 1, max: 200 }).map((kg) => kg * KG),
      'offer.supplier': fc.constantFrom('Harrow Supplies', 'Marlow & Daughters'),
      'offer.date': fc.constantFrom('2026-01-31', '2026-02-28'),
    },
    { requiredKeys: [] },
  );
  const before = wax({ offers: [SACK], figures: { density: figure(0.95) }, notes: 'kept' });

  it('taken in twice is taken in once, though the second time is another day', () => {
    fc.assert(
      fc.property(values, (row) => {
        const once = taken(row, before);
        expect(taken(row, once, { ...TAKING, today: '2027-01-01' })).toEqual(once);
      }),
      { numRuns: 60 },
    );
  });

  it('loses no offer and changes nothing that it does not name', () => {
    fc.assert(
      fc.property(values, (row) => {
        const after = taken(row, before);
        expect(after.offers[0]).toEqual(SACK);
        const named = new Set(Object.keys(row).map((key) => key.split('.')[0]!.replace(/^offer$/, 'offers')));
        for (const [key, value] of Object.entries(before))
          if (!named.has(key)) expect(after[key as keyof MaterialContent], key).toEqual(value);
        expect(after.figures.density).toEqual(figure(0.95));
      }),
      { numRuns: 60 },
    );
  });
});
