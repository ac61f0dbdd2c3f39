import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../limits/law';
import { ask, over, raw, shareOf, type Facts } from './small-shelf';

const water = raw('Pump water', 'Aqua', ['solvent'], { cost: 0 });
const preservative = (name: string, inci: string | string[], facts: Facts = {}): Material =>
  raw(name, inci, ['preservative'], { use: [0, 2], ...facts });
const other = preservative('Sorbate', 'Potassium Sorbate');

/** What goes when one name is to be left out. */
async function goes(material: Material, name: string): Promise<boolean> {
  const result = await ask(
    over(water, [[material, 0.8]]),
    [water, material, other],
    { withoutSubstances: [name], phWithin: null },
    { ...EXAMPLES, limits: [] },
  );
  if (result.status !== 'found') throw new Error(result.conflict.join('; '));
  expect(shareOf(result.best, other) > 0).toBe(shareOf(result.best, material) === 0);
  return result.best.go.includes(material.id);
}

describe('leaving a substance out', () => {
  it.each([
    ['its own name, in any case', 'Phenoxyethanol', 'PHENOXYETHANOL'],
    ['another name of the table', 'Phenoxyethanol', '2-Phenoxyethanol'],
    [
      'a name that a supplier wrote into one with another',
      'Phenoxyethanol (and) Ethylhexylglycerin',
      'Phenoxyethanol',
    ],
    ['the second of such a name', 'Phenoxyethanol (and) Ethylhexylglycerin', 'Ethylhexylglycerin'],
    [
      'a name that the table does not know, spelled otherwise',
      'Lonicera Japonica (Honeysuckle) Flower Extract',
      'lonicera japonica flower extract',
    ],
    [
      'such a name with a bracket when the record has none',
      'Lonicera Japonica Flower Extract',
      'Lonicera Japonica (Honeysuckle) Flower Extract',
    ],
  ])('knows %s', async (_, inci, name) => {
    expect(await goes(preservative('Kept', inci), name)).toBe(true);
  });

  it('knows an allergen that a material declares beside its names', async () => {
    const rose = preservative('Rose', 'Rosa Damascena Flower Oil', {
      parts: { allergens: [{ inci: 'Citronellol', ppm: 250_000 }] },
    });
    expect(await goes(rose, 'Citronellol')).toBe(true);
    expect(await goes(rose, 'Geraniol')).toBe(false);
  });

  it.each([
    ['Ethylhexylglycerin', 'Glycerin'],
    ['Sodium Benzoate', 'Benzoic Acid'],
    ['Phenoxyisopropanol', 'Phenoxyethanol'],
  ])('leaves %s where %s is to go', async (inci, name) => {
    expect(await goes(preservative('Kept', inci), name)).toBe(false);
  });

  it('brings nothing in that holds it either', async () => {
    const going = preservative('Going', 'Phenoxyethanol');
    const blend = preservative('Blend', ['Benzyl Alcohol', 'Phenoxyethanol']);
    const result = await ask(over(water, [[going, 0.8]]), [water, going, blend], {
      withoutSubstances: ['Phenoxyethanol'],
    });
    expect(result.status).toBe('none');
  });
});

describe('leaving a supplier out', () => {
  it('lets what others sell too stay, and what nobody else sells go', async () => {
    const alone = preservative('Alone', 'Phenoxyethanol', { cost: 900, supplier: 'Lowmoor' });
    const result = await ask(over(water, [[alone, 0.8]]), [water, alone, other], {
      withoutSuppliers: ['Lowmoor'],
    });
    if (result.status !== 'found') throw new Error(result.conflict.join('; '));
    expect(result.best.go).toEqual([alone.id]);
    expect(result.best.come).toEqual([other.id]);
    const both = preservative('Both', 'Phenoxyethanol', {
      parts: {
        offers: ['Lowmoor', 'Fenwick'].map((supplier) => ({
          ...{ supplier, itemCode: '', packMg: 1_000_000, priceMinor: 900 },
          ...{ currency: 'EUR' as const, date: '2026-01-01' },
        })),
      },
    });
    const stays = await ask(over(water, [[both, 0.8]]), [water, both, other], {
      withoutSuppliers: ['Lowmoor'],
    });
    if (stays.status !== 'found') throw new Error(stays.conflict.join('; '));
    expect(stays.best.distance).toBe(0);
  });

  it('knows a supplier however the case or the spaces are written', async () => {
    const alone = preservative('Alone', 'Phenoxyethanol', { cost: 900, supplier: 'Lowmoor Extracts' });
    const result = await ask(over(water, [[alone, 0.8]]), [water, alone, other], {
      withoutSuppliers: ['lowmoor  extracts'],
    });
    if (result.status !== 'found') throw new Error(result.conflict.join('; '));
    expect(result.best.go).toEqual([alone.id]);
  });
});
