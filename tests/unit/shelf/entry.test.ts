import { describe, expect, it } from 'vitest';
import { blankMaterial, material, type Material } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import { shelfEntry } from '@core/shelf/entry';

const offer = (known: Partial<Offer>): Offer => ({
  supplier: 'Marsh & Vale',
  itemCode: '',
  packMg: 5_000_000,
  priceMinor: 6_250,
  currency: 'EUR',
  date: '2026-01-10',
  ...known,
});

const aMaterial = (known: Partial<Material>): Material =>
  material.parse({
    ...blankMaterial('Lindenwax C', 'Cetearyl Alcohol'),
    id: '018f0000-0000-7000-8000-000000000001',
    revision: 1,
    createdAt: '2026-01-01T00:00:00.000Z',
    updatedAt: '2026-01-02T00:00:00.000Z',
    ...known,
  });

describe('a material in the list', () => {
  it('names its INCI names with the largest share first, a range by its middle', () => {
    const blend = aMaterial({
      composition: [
        { inci: 'Ceteareth-20', lowPpm: 200_000, highPpm: 300_000 },
        { inci: 'Cetearyl Alcohol', lowPpm: 700_000, highPpm: 800_000 },
      ],
    });
    expect(shelfEntry(blend).inci).toBe('Cetearyl Alcohol, Ceteareth-20');
  });

  it('shows the newest offer’s supplier and price per kg, and keeps all suppliers for searching', () => {
    const entry = shelfEntry(
      aMaterial({
        offers: [
          offer({ date: '2026-03-01', packMg: 25_000_000, priceMinor: 20_000, supplier: 'Ölhaus' }),
          offer({}),
          offer({ date: '2025-06-01' }),
        ],
      }),
    );
    expect(entry).toMatchObject({ supplier: 'Ölhaus', pricePerKg: 800, currency: 'EUR' });
    expect(entry.suppliers).toEqual(['Ölhaus', 'Marsh & Vale']);
  });

  it('leaves the price open when nobody has offered it', () => {
    expect(shelfEntry(aMaterial({}))).toMatchObject({ supplier: '', pricePerKg: null, currency: null });
  });

  it('names the newest supplier, priced or not, and the newest price that is known', () => {
    const unpriced = offer({ date: '2026-04-01', supplier: 'Fernmill', packMg: null, priceMinor: null });
    const entry = shelfEntry(aMaterial({ offers: [unpriced, offer({})] }));
    expect(entry).toMatchObject({ supplier: 'Fernmill', pricePerKg: 1_250, currency: 'EUR' });
  });

  it('refuses a price without the size of its pack', () => {
    const { error } = material.shape.offers.safeParse([offer({ packMg: null })]);
    expect(error?.issues[0]?.message).toBe('A price needs the size of its pack.');
  });

  it('takes the middle of a figure’s range when no value is stated, and null when nothing is known', () => {
    const entry = shelfEntry(
      aMaterial({
        figures: { meltingPoint: { low: 50, value: null, high: 54, provenance: 'supplier', source: '' } },
      }),
    );
    expect(entry.meltingPoint).toBe(52);
    expect(entry.hlb).toBeNull();
  });
});
