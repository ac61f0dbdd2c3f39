import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costOfShares, type PricePerKg } from '@core/costing/cost-of-shares';
import { formulaCost } from '@core/costing/formula-cost';
import { newestPrice, pricePerKgMinor, type PriceRecord } from '@core/costing/offers';
import type { Currency } from '@core/quantities/money';
import { content, make, phase } from '../checks/build';

const price = (pricePerKg: number | null, currency: string | null = 'EUR'): PricePerKg => ({
  pricePerKg,
  currency,
});
const priced = fc.record({
  ppm: fc.integer({ min: 0, max: 1_000_000 }),
  price: fc.record({
    pricePerKg: fc.option(fc.integer({ min: 0, max: 1_000_000 })),
    currency: fc.option(fc.constantFrom('EUR', 'USD', 'GBP')),
  }),
});

describe('the cost of shares', () => {
  it('worked by hand: 60 % at 12.00, 30 % at 5.50, and a tenth without a price', () => {
    expect(
      costOfShares([
        { ppm: 600_000, price: price(1_200) },
        { ppm: 300_000, price: price(550) },
        { ppm: 100_000, price: price(null) },
      ]),
    ).toEqual({ costPerKg: 885, currency: 'EUR', pricedPpm: 900_000 });
  });

  it('is that of the currency in which most is priced, summed anew, and never converts', () => {
    fc.assert(
      fc.property(fc.array(priced, { maxLength: 12 }), (shares) => {
        const got = costOfShares(shares);
        const counted = (currency: string) =>
          shares.filter(
            (one) => one.price.currency === currency && one.price.pricePerKg !== null && one.ppm > 0,
          );
        const ppmOf = (currency: string): number => counted(currency).reduce((sum, one) => sum + one.ppm, 0);
        const most = Math.max(...['EUR', 'USD', 'GBP'].map(ppmOf));
        if (!got) {
          expect(most).toBe(0);
          return;
        }
        expect(got.pricedPpm).toBe(most);
        expect(got.pricedPpm).toBe(ppmOf(got.currency));
        // Whole numbers until the last division, so that nothing of the product's own sum is repeated.
        const sum = counted(got.currency).reduce(
          (all, one) => all + one.ppm * (one.price.pricePerKg ?? 0),
          0,
        );
        expect(Math.abs(got.costPerKg - sum / 1e6)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });

  it('does not hang on the order of the shares, nor on how one is split', () => {
    fc.assert(
      fc.property(fc.array(priced, { minLength: 1, maxLength: 8 }), (shares) => {
        const euros = shares.map((one) => ({ ...one, price: { ...one.price, currency: 'EUR' } }));
        const whole = costOfShares(euros);
        const split = euros.flatMap((one) => [
          { ...one, ppm: Math.floor(one.ppm / 2) },
          { ...one, ppm: Math.ceil(one.ppm / 2) },
        ]);
        expect(costOfShares([...euros].reverse())?.pricedPpm).toBe(whole?.pricedPpm);
        expect(costOfShares(split)?.pricedPpm).toBe(whole?.pricedPpm);
        expect(Math.abs((costOfShares(split)?.costPerKg ?? 0) - (whole?.costPerKg ?? 0))).toBeLessThanOrEqual(
          1,
        );
      }),
    );
  });

  it('is null where nothing has a price, and zero where what is priced is free', () => {
    expect(costOfShares([])).toBeNull();
    expect(costOfShares([{ ppm: 1_000_000, price: undefined }])).toBeNull();
    expect(costOfShares([{ ppm: 1_000_000, price: price(100, null) }])).toBeNull();
    expect(costOfShares([{ ppm: 0, price: price(100) }])).toBeNull();
    expect(costOfShares([{ ppm: 500_000, price: price(0) }])).toMatchObject({
      costPerKg: 0,
      pricedPpm: 500_000,
    });
  });
});

const day = fc
  .integer({ min: 0, max: 400 })
  .map((n) => new Date(Date.UTC(2025, 0, 1 + n)).toISOString().slice(0, 10));
const offer = fc.record({
  packMg: fc.option(fc.integer({ min: 1, max: 1_000_000_000 }), { freq: 4 }),
  priceMinor: fc.option(fc.integer({ min: 0, max: 10_000_000 }), { freq: 4 }),
  currency: fc.constantFrom<Currency>('EUR', 'USD', 'JPY'),
  date: day,
});

describe('offers', () => {
  it('the newest price is of no earlier day than any other that counts', () => {
    fc.assert(
      fc.property(fc.array(offer, { maxLength: 10 }), (offers: PriceRecord[]) => {
        const best = newestPrice(offers, 'EUR');
        const counting = offers.filter(
          (one) => one.currency === 'EUR' && one.packMg !== null && one.priceMinor !== null,
        );
        expect(best === null).toBe(counting.length === 0);
        if (!best) return;
        expect(counting).toContain(best);
        expect(best.date).toBe(
          counting
            .map(({ date }) => date)
            .sort()
            .at(-1),
        );
      }),
    );
  });

  it.each([
    [1_000_000, 1_250, 1_250],
    [250_000, 1_900, 7_600],
    [25_000_000, 6_250, 250],
    [1, 1, 1_000_000],
    [5_000_000, 0, 0],
  ])('%i mg for %i makes %i a kg', (packMg, priceMinor, perKg) => {
    expect(pricePerKgMinor({ packMg, priceMinor })).toBeCloseTo(perKg, 9);
  });
});

describe('the cost of a formula', () => {
  const bought = (name: string, minor: number, currency: Currency) =>
    make(name, 'Squalane', {
      offers: [
        {
          supplier: 'Oakbarrow Supply',
          itemCode: '',
          packMg: 1_000_000,
          priceMinor: minor,
          currency,
          date: '2026-01-01',
        },
      ],
    });

  it('is a mean of its materials’ prices by share, between the cheapest and the dearest', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 50_000 })), {
          minLength: 1,
          maxLength: 6,
        }),
        (rows) => {
          const whole = rows.reduce((sum, [weight]) => sum + weight, 0);
          const materials = rows.map(([, minor], at) => bought(`M${at}`, minor, 'EUR'));
          const lines = rows.map(
            ([weight], at) => [materials[at]!, (100 * weight) / whole] as [never, number],
          );
          const cost = formulaCost(
            content([phase(lines)]),
            Object.fromEntries(materials.map((one) => [one.id, one])),
            'EUR',
          );
          const prices = rows.map(([, minor]) => minor);
          expect(cost.perKgMinor).toBeGreaterThanOrEqual(Math.min(...prices) * 0.99999);
          expect(cost.perKgMinor).toBeLessThanOrEqual(Math.max(...prices) * 1.00001);
          expect(cost.worked.steps.slice(0, -1).reduce((sum, one) => sum + one.result, 0)).toBeCloseTo(
            cost.worked.value,
            9,
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it('counts yen as whole, without cents', () => {
    const oil = bought('Oil', 3_000, 'JPY');
    const cost = formulaCost(content([phase([[oil, 50]])]), { [oil.id]: oil }, 'JPY');
    expect(cost.worked).toMatchObject({ value: 1_500, unit: 'JPY/kg' });
    expect(formulaCost(content([phase([[oil, 50]])]), { [oil.id]: oil }, 'EUR')).toMatchObject({
      perKgMinor: 0,
      coveredPpm: 0,
      gaps: [{ reason: 'priced in another currency', ppm: 500_000 }],
    });
  });

  it('of no line is nothing, and a line that fills to 100 takes what the others leave, none if they are more', () => {
    expect(formulaCost(content([]), {}, 'EUR')).toMatchObject({ perKgMinor: 0, coveredPpm: 0, gaps: [] });
    const [oil, rest] = [bought('Oil', 1_000, 'EUR'), bought('Rest', 200, 'EUR')];
    const filled = (percent: number): number => {
      const one = phase([
        [oil, percent],
        [rest, 0],
      ]);
      one.lines[1]!.toHundred = true;
      return formulaCost(content([one]), { [oil.id]: oil, [rest.id]: rest }, 'EUR').perKgMinor;
    };
    expect(filled(40)).toBeCloseTo(520, 9);
    expect(filled(110)).toBeCloseTo(1_100, 9);
  });
});
