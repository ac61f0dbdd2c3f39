import { formulaCost } from '@core/costing/formula-cost';
import { newestOffer, newestPrice } from '@core/costing/offers';
import type { Offer } from '@core/materials/offer';
import { describe, expect, it } from 'vitest';
import { MATERIALS, sampleMaterial, WATER } from '../sheets/sample-materials';
import { CREAM, sampleLine } from '../sheets/samples';

const offer = (more: Partial<Offer>): Offer => ({
  supplier: 'Oakbarrow Supply',
  itemCode: '',
  packMg: 1_000_000,
  priceMinor: 1_000,
  currency: 'EUR',
  date: '2026-01-01',
  ...more,
});

describe('cost per kg', () => {
  it('adds share × price per kg of the newest offers', () => {
    const oil = sampleMaterial('Oil', [['Squalane', 100]], {
      offers: [
        offer({ date: '2026-02-01', packMg: 5_000_000, priceMinor: 10_000 }),
        offer({ priceMinor: 9_900 }),
      ],
    });
    const wax = sampleMaterial('Wax', [['Cera Alba', 100]], { offers: [offer({ priceMinor: 1_200 })] });
    const phases = [{ ...CREAM.phases[0]!, lines: [sampleLine(oil, 75), sampleLine(wax, 25)] }];
    const cost = formulaCost({ ...CREAM, phases }, { [oil.id]: oil, [wax.id]: wax }, 'EUR');
    // By hand: 0.75 × 20.00 + 0.25 × 12.00 = 18.00 EUR/kg.
    expect(cost.perKgMinor).toBeCloseTo(1_800, 9);
    expect(cost.worked.value).toBeCloseTo(18, 9);
    expect(cost.worked.steps[0]?.shows).toBe('75.00 % × €20.00/kg');
    expect(cost.coveredPpm).toBe(1_000_000);
    expect(cost.gaps).toEqual([]);
  });

  it('names what has no price, or a price in another currency, and the share that is covered', () => {
    const dollars = sampleMaterial('Dollar oil', [['Squalane', 100]], {
      offers: [offer({ currency: 'USD' })],
    });
    const priced = sampleMaterial('Wax', [['Cera Alba', 100]], { offers: [offer({})] });
    const lines = [
      sampleLine(WATER, 60),
      sampleLine(dollars, 25),
      sampleLine(priced, 10),
      sampleLine(dollars, 5),
    ];
    const materials = { [WATER.id]: WATER, [dollars.id]: dollars, [priced.id]: priced };
    const cost = formulaCost({ ...CREAM, phases: [{ ...CREAM.phases[0]!, lines }] }, materials, 'EUR');
    expect(cost.coveredPpm).toBe(100_000);
    expect(cost.gaps.map((gap) => gap.reason)).toEqual([
      'no price',
      'priced in another currency',
      'priced in another currency',
    ]);
    expect(cost.worked.cautions[0]).toBe(
      'Covers 10.00\u00a0% of the formula. Left out: Purified water (no price), Dollar oil (priced in another currency).',
    );
    expect(cost.worked.value).toBeCloseTo(1, 9);
  });

  it('keeps working when a material has left the library', () => {
    const cost = formulaCost(CREAM, { ...MATERIALS, [WATER.id]: undefined }, 'EUR');
    expect(cost.gaps).toContainEqual(expect.objectContaining({ reason: 'material missing', tradeName: '' }));
    expect(Number.isFinite(cost.worked.value)).toBe(true);
  });

  it('takes the later of two offers of one day', () => {
    const two = [offer({ itemCode: 'a' }), offer({ itemCode: 'b' })];
    expect(newestOffer(two)?.itemCode).toBe('b');
    expect(newestPrice(two, 'EUR')?.itemCode).toBe('b');
    expect(newestPrice(two, 'USD')).toBeNull();
    expect(newestOffer([])).toBeNull();
  });

  it('passes over a newer offer whose price is not known, and says so of a material that has no other', () => {
    const asked = offer({ supplier: 'Fernmill', packMg: null, priceMinor: null, date: '2026-05-01' });
    expect(newestOffer([offer({}), asked])?.supplier).toBe('Fernmill');
    expect(newestPrice([offer({}), asked], 'EUR')?.supplier).toBe('Oakbarrow Supply');
    const wax = sampleMaterial('Wax', [['Cera Alba', 100]], { offers: [asked] });
    const phases = [{ ...CREAM.phases[0]!, lines: [sampleLine(wax, 100)] }];
    const cost = formulaCost({ ...CREAM, phases }, { [wax.id]: wax }, 'EUR');
    expect(cost.gaps.map((gap) => gap.reason)).toEqual(['no price']);
  });
});
