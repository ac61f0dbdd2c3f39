import { KEPT_ROLES, roleOf, WATER } from '@core/reformulate/roles';
import { reformulateWish, type ReformulateWish } from '@core/reformulate/wish';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';

const role = (inci: string, functions: Material['functions'], parts: Partial<Material> = {}) =>
  roleOf({ ...make('M', inci), functions, ...parts });

/** What stays present in about its amount; common practice, no source. */
describe('what a material is in a formula for', () => {
  it.each<[string, Material['functions'], Partial<Material>, string]>([
    ['Aqua', ['solvent'], {}, WATER],
    ['Aqua', [], {}, WATER],
    ['Rosa Damascena Flower Water', ['fragrance'], {}, 'fragrance'],
    ['Steareth-21', ['emulsifier'], {}, 'emulsifiers'],
    ['Glyceryl Stearate', ['co-emulsifier', 'emulsifier'], {}, 'emulsifiers'],
    ['Phenoxyethanol', ['preservative'], {}, 'preservatives'],
    ['Sodium Laureth Sulfate', ['surfactant'], {}, 'surfactants'],
    ['Citric Acid', ['acid'], {}, 'pH aids'],
    ['Sodium Hydroxide', ['base'], {}, 'pH aids'],
    ['Disodium EDTA', ['chelator'], {}, 'chelators'],
    ['Niacinamide', ['active'], {}, 'actives'],
    ['Glycerin', ['humectant', 'solvent'], {}, 'humectants'],
    ['Xanthan Gum', ['thickener'], {}, 'thickeners'],
    ['Titanium Dioxide', ['colorant'], {}, 'colorants'],
    ['Titanium Dioxide', ['uv filter', 'colorant'], {}, 'UV filters'],
    [
      'Ethylhexyl Salicylate',
      ['uv filter', 'emollient'],
      { phaseOfUse: 'oil', consistency: 'oily' },
      'UV filters',
    ],
    ['Helianthus Annuus Seed Oil', ['emollient'], { phaseOfUse: 'oil' }, 'oils'],
    ['Ethanol', ['solvent'], {}, 'others'],
    ['Silica', [], {}, 'others'],
  ])('%s, recorded as %j', (inci, functions, parts, is) => {
    expect(role(inci, functions, parts)).toBe(is);
  });

  it('does not hang on the order in which its functions were written', () => {
    const functions: Material['functions'] = ['humectant', 'preservative', 'active'];
    expect(role('Pentylene Glycol', functions)).toBe(role('Pentylene Glycol', [...functions].reverse()));
  });

  it('what the product is made for stays, what only carries it may be exchanged', () => {
    for (const kept of ['actives', 'pH aids', 'fragrance', 'colorants', 'UV filters', 'others'])
      expect(KEPT_ROLES.has(kept), kept).toBe(true);
    for (const free of [WATER, 'oils', 'emulsifiers', 'humectants', 'preservatives', 'thickeners'])
      expect(KEPT_ROLES.has(free), free).toBe(false);
  });
});

describe('what is asked of a formula', () => {
  const asked = (parts: Record<string, unknown>) => reformulateWish.safeParse(parts);
  it('is little where nothing is said, and nothing is left out or locked', () => {
    expect(reformulateWish.parse({})).toMatchObject({
      costAtMost: null,
      originAtLeast: null,
      withoutSubstances: [],
      withoutSuppliers: [],
      locked: [],
      keepRanges: true,
      keepLaw: true,
    });
  });
  it.each<[Partial<Record<keyof ReformulateWish, unknown>>, string]>([
    [{ costAtMost: 0 }, 'A cost is above zero.'],
    [{ costAtMost: -5 }, 'A cost is above zero.'],
    [{ costAtMost: '5' }, 'Write the cost as a number.'],
    [{ originAtLeast: -1 }, 'The natural origin cannot be negative.'],
    [{ originAtLeast: 101 }, 'The natural origin is 100 at most.'],
    [{ originAtLeast: 'all' }, 'The natural origin must be a number.'],
    [{ hlbWithin: 21 }, 'The HLB band is 20 at most.'],
    [{ hlbWithin: -1 }, 'The HLB band cannot be negative.'],
    [{ phWithin: -0.1 }, 'The acid and base band cannot be negative.'],
    [{ groupsWithin: 101 }, 'The groups’ room is 100 at most.'],
    [{ groupsWithin: null }, 'The groups’ room must be a number.'],
  ])('%j is refused: %s', (parts, message) => {
    expect(asked(parts).error?.issues[0]?.message).toBe(message);
  });
  it.each<Partial<Record<keyof ReformulateWish, unknown>>>([
    { costAtMost: 0.01 },
    { costAtMost: null },
    { originAtLeast: 0 },
    { originAtLeast: 100 },
    { hlbWithin: 0 },
    { hlbWithin: null },
    { phWithin: null },
    { groupsWithin: 0 },
    { groupsWithin: 100 },
    { alternatives: 0 },
    { alternatives: 10 },
  ])('%j is taken', (parts) => {
    expect(asked(parts).success).toBe(true);
  });
  it.each([
    { alternatives: 11 },
    { alternatives: 1.5 },
    { locked: ['F-1'] },
    { withoutSubstances: Array.from({ length: 51 }, () => 'Talc') },
  ])('%j is too much, or none', (parts) => {
    expect(asked(parts).success).toBe(false);
  });
});
