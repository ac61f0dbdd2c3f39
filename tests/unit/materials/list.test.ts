import { blankMaterial, type Material, type MaterialContent } from '@core/materials/material';
import type { MaterialRow } from '@core/materials/list';
import type { ListPage } from '@core/lists/query';
import { material } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';

const offer = (known: Partial<Offer>): Offer => ({
  supplier: 'Marsh & Vale',
  itemCode: '',
  packMg: 5_000_000,
  priceMinor: 6_250,
  currency: 'EUR',
  date: '2026-01-10',
  ...known,
});

/** The list of a library that holds one material of which this is known. */
async function listed(known: Partial<MaterialContent>) {
  const { ask } = await serviceWith();
  await ask<Material>('POST', '/materials', {
    ...blankMaterial('Lindenwax C', 'Cetearyl Alcohol'),
    ...known,
  });
  const { body } = await ask<ListPage<MaterialRow>>('GET', '/materials');
  return { ask, page: body, row: body.rows[0] };
}

describe('a material in the list', () => {
  it('names its INCI names with the largest share first, a range by its middle', async () => {
    const { row } = await listed({
      composition: [
        { inci: 'Ceteareth-20', lowPpm: 200_000, highPpm: 300_000 },
        { inci: 'Cetearyl Alcohol', lowPpm: 700_000, highPpm: 800_000 },
      ],
    });
    expect(row?.inci).toBe('Cetearyl Alcohol, Ceteareth-20');
  });

  it('shows the newest offer’s supplier and price per kg, and finds and counts all suppliers', async () => {
    const { ask, row, page } = await listed({
      offers: [
        offer({ date: '2026-03-01', packMg: 25_000_000, priceMinor: 20_000, supplier: 'Ölhaus' }),
        offer({}),
        offer({ date: '2025-06-01' }),
      ],
    });
    expect(row).toMatchObject({ supplier: 'Ölhaus', pricePerKg: 800, currency: 'EUR' });
    expect(page.counts.suppliers).toEqual({ 'Marsh & Vale': 1, Ölhaus: 1 });
    for (const asked of ['text=marsh', 'suppliers=Marsh+%26+Vale'])
      expect((await ask<ListPage<MaterialRow>>('GET', `/materials?${asked}`)).body.total).toBe(1);
    expect(row).not.toHaveProperty('suppliers');
    expect(row).not.toHaveProperty('notes');
  });

  it('is searched, filtered and sorted by its country of origin', async () => {
    const { ask, row, page } = await listed({ countryOfOrigin: 'Ghana' });
    expect([row?.countryOfOrigin, page.counts.countryOfOrigin]).toEqual(['Ghana', { Ghana: 1 }]);
    for (const asked of ['text=ghana', 'countryOfOrigin=Ghana&sortBy=countryOfOrigin'])
      expect((await ask<ListPage<MaterialRow>>('GET', `/materials?${asked}`)).body.total).toBe(1);
  });

  it('leaves the price open when nobody has offered it', async () => {
    expect((await listed({})).row).toMatchObject({ supplier: '', pricePerKg: null, currency: null });
  });

  it('names the newest supplier, priced or not, and the newest price that is known', async () => {
    const unpriced = offer({ date: '2026-04-01', supplier: 'Fernmill', packMg: null, priceMinor: null });
    const { row } = await listed({ offers: [unpriced, offer({})] });
    expect(row).toMatchObject({ supplier: 'Fernmill', pricePerKg: 1_250, currency: 'EUR' });
  });

  it('refuses a price without the size of its pack', () => {
    const { error } = material.shape.offers.safeParse([offer({ packMg: null })]);
    expect(error?.issues[0]?.message).toBe('A price needs the size of its pack.');
  });

  it('takes the middle of a figure’s range when no value is stated, and null when nothing is known', async () => {
    const { row } = await listed({
      figures: { meltingPoint: { low: 50, value: null, high: 54, provenance: 'supplier', source: '' } },
    });
    expect(row?.meltingPoint).toBe(52);
    expect(row?.hlb).toBeNull();
  });
});
