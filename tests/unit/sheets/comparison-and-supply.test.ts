import type { Material } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import { comparisonRows, SUPPLY } from '@core/sheets/comparison-rows';
import { comparisonSheet, SIDE_BY_SIDE } from '@core/sheets/comparison-sheet';
import { describe, expect, it } from 'vitest';
import { figure, range } from '../checks/build';
import { AT, sampleMaterial } from './sample-materials';
import { MAKER } from './samples';
import { rowsUnder, wordsOf } from './sheet-words';

const offer = (part: Partial<Offer> = {}): Offer => ({
  ...{ supplier: 'Oakbarrow Supply', itemCode: '', packMg: 5_000_000, priceMinor: 4600 },
  ...{ currency: 'EUR', date: '2026-01-12' },
  ...part,
});
const wax = (name: string, part: Partial<Material> = {}): Material => ({
  ...sampleMaterial(name, [['Cera Alba', 100]]),
  ...part,
});
const row = (label: string, ...materials: Material[]) =>
  comparisonRows(materials, 'en-GB', SUPPLY).find((one) => one.label === label);

describe('who sells materials and for how much, side by side', () => {
  it('is the price of a kilogram, so that packs of two sizes can be compared: 46.00 for 5 kg, 200.00 for 25', () => {
    const found = row(
      'Latest price per kg',
      wax('One', { offers: [offer()] }),
      wax('Two', { offers: [offer({ packMg: 25_000_000, priceMinor: 20_000 })] }),
    );
    expect(found?.values.map((one) => /9\.20|8\.00/.exec(one)?.[0])).toEqual(['9.20', '8.00']);
    expect(found?.outcome).toBe('differ');
  });

  it('is the newest, whichever stands first', () => {
    const [old, now] = [
      offer(),
      offer({ priceMinor: 5000, date: '2026-06-01', supplier: 'Pennywhistle & Sons' }),
    ];
    for (const offers of [
      [old, now],
      [now, old],
    ]) {
      expect(row('Supplier', wax('One', { offers }), wax('Two'))?.values).toEqual([
        'Pennywhistle & Sons',
        '',
      ]);
      expect(row('Latest price per kg', wax('One', { offers }), wax('Two'))?.values[0]).toContain('10.00');
    }
  });

  it('is open where one has no offer, and no row at all where none has', () => {
    expect(row('Supplier', wax('One', { offers: [offer()] }), wax('Two'))?.outcome).toBe('open');
    expect(row('Supplier', wax('One'), wax('Two'))).toBeUndefined();
  });

  it('knows a supplier without a price yet, and takes no price from it', () => {
    const first = offer({ date: '2026-01-01' });
    const unpriced = offer({
      supplier: 'Pennywhistle & Sons',
      priceMinor: null,
      packMg: null,
      date: '2026-06-01',
    });
    const one = wax('One', { offers: [first, unpriced] });
    expect(row('Supplier', one, one)?.values[0]).toBe('Pennywhistle & Sons');
    expect(row('Latest price per kg', one, one)?.values[0]).toContain('9.20');
  });
});

describe('figures side by side', () => {
  it('differ where their ranges do, though their middles are one', () => {
    const [narrow, wide] = [
      wax('One', { figures: { meltingPoint: range(61, 63) } }),
      wax('Two', { figures: { meltingPoint: range(58, 66) } }),
    ];
    expect(row('Melting or drop point', narrow, wide)).toMatchObject({
      ...{ outcome: 'differ', values: ['61–63 °C', '58–66 °C'] },
    });
  });

  it('are alike by what is shown of them, not by who measured', () => {
    const measured = { ...figure(12), provenance: 'measured' as const };
    expect(
      row('HLB', wax('One', { figures: { hlb: figure(12) } }), wax('Two', { figures: { hlb: measured } }))
        ?.outcome,
    ).toBe('alike');
  });
});

describe('the hand-out of a class', () => {
  const many = (count: number) =>
    Array.from({ length: count }, (_, at) => wax(`Wax ${at + 1}`, { offers: [offer()] }));

  it('has every material in one row once there are more than stand side by side, in their order', () => {
    const list = rowsUnder(
      comparisonSheet(many(SIDE_BY_SIDE + 3), MAKER, AT).content,
      'Raw material',
      'INCI',
    );
    expect(list.map(([name]) => name)).toEqual(many(SIDE_BY_SIDE + 3).map(({ tradeName }) => tradeName));
  });

  it('names no supplier and no price in either way of setting it, and counts its materials', () => {
    for (const count of [2, SIDE_BY_SIDE, SIDE_BY_SIDE + 1]) {
      const sheet = comparisonSheet(many(count), MAKER, AT);
      expect(wordsOf(sheet).join(' ')).not.toMatch(/Oakbarrow|9\.20|price/i);
      expect(sheet.info.title).toContain(`${count} raw materials`);
    }
  });
});
