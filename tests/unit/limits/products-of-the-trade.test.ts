import { isBroken } from '@core/limits/judged';
import {
  KIND_FACTS,
  type Dispenser,
  type MarketRegion,
  type ProductKind,
  type User,
} from '@core/products/product-kinds';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { judged, situation } from './law';

interface Said {
  as?: Material['functions'];
  region?: MarketRegion;
  dispenser?: Dispenser;
  users?: User[];
  ph?: number;
  onDay?: string;
}

/** Whether a product with one substance keeps every example limit that is in force. */
function lawful(inci: string, kind: ProductKind, percent: number, said: Said = {}): boolean {
  const { as = [], region = 'EU', dispenser = null, users = [], ph, onDay = '2026-11-28' } = said;
  const at = situation(
    { region, use: KIND_FACTS[kind].use, onDay, ph: ph === undefined ? null : { low: ph, high: ph } },
    { kind, dispenser, users },
  );
  const found = judged([[make(inci, inci, { functions: as }), percent]], at);
  return found.filter(({ time }) => time === 'in force').every((one) => !isBroken(one));
}

const keeps: Said = { as: ['preservative'] };
const screens: Said = { as: ['uv filter'] };
const colours: Said = { as: ['colorant'] };
const professional: Said = { users: ['professional use'] };

type Row = [inci: string, kind: ProductKind, most: number, said?: Said];

/** Lawful at the share, and not at a hundredth more; of what may not be there at all, not at one ppm. */
function isMost(inci: string, kind: ProductKind, most: number, said: Said = {}): void {
  if (most > 0) expect(lawful(inci, kind, most, said), `${inci} at ${most} %`).toBe(true);
  const more = Math.max(most * 1.01, most + 0.0001);
  expect(lawful(inci, kind, more, said), `${inci} at ${more} %`).toBe(false);
}

// Regulation (EC) No 1223/2009, Annexes II to VI with their amendments up to 2025, from memory. Salts are worked out by
// hand from molar masses: 0.5 % of benzoic acid is 0.59 % of its sodium salt (144.11 / 122.12).
const PRESERVATIVES: readonly Row[] = [
  ['Benzoic Acid', 'face cream', 0.5, keeps],
  ['Benzoic Acid', 'shampoo', 2.5, keeps],
  ['Benzoic Acid', 'toothpaste', 1.7, keeps],
  ['Sodium Benzoate', 'body lotion', 0.59, keeps],
  ['Sodium Benzoate', 'shower gel', 2.95, keeps],
  // An entry of its own, 0.5 % as the acid, rinsed off too: 160.21 / 122.12.
  ['Potassium Benzoate', 'shampoo', 0.655, keeps],
  ['Sorbic Acid', 'face cream', 0.6, keeps],
  // 0.6 × 150.22 / 112.13
  ['Potassium Sorbate', 'shampoo', 0.803, keeps],
  ['Salicylic Acid', 'face cream', 0.5, keeps],
  ['Dehydroacetic Acid', 'hand cream', 0.6, keeps],
  ['Dehydroacetic Acid', 'deodorant spray', 0, keeps],
  ['Propionic Acid', 'face cream', 2, keeps],
  ['Formic Acid', 'shampoo', 0.5, keeps],
  ['Undecylenic Acid', 'body lotion', 0.2, keeps],
  ['o-Phenylphenol', 'shampoo', 0.2, keeps],
  ['o-Phenylphenol', 'face cream', 0.15, keeps],
  ['Phenoxyethanol', 'sunscreen product', 1, keeps],
  ['Phenoxyisopropanol', 'shower gel', 1, keeps],
  ['Phenoxyisopropanol', 'face cream', 0, keeps],
  ['Benzyl Alcohol', 'face cream', 1, keeps],
  ['5-Bromo-5-Nitro-1,3-Dioxane', 'shampoo', 0.1, keeps],
  ['5-Bromo-5-Nitro-1,3-Dioxane', 'face cream', 0, keeps],
  ['2-Bromo-2-Nitropropane-1,3-Diol', 'face cream', 0.1, keeps],
  ['Imidazolidinyl Urea', 'face cream', 0.6, keeps],
  ['Diazolidinyl Urea', 'shampoo', 0.5, keeps],
  ['DMDM Hydantoin', 'shampoo', 0.6, keeps],
  ['Sodium Hydroxymethylglycinate', 'shampoo', 0.5, keeps],
  ['Piroctone Olamine', 'shampoo', 1, keeps],
  ['Piroctone Olamine', 'leave-on hair care', 0.5, keeps],
  ['o-Cymen-5-ol', 'face cream', 0.1, keeps],
  ['Methylisothiazolinone', 'shampoo', 0.0015, keeps],
  ['Methylisothiazolinone', 'body lotion', 0, keeps],
  ['Methylchloroisothiazolinone', 'hair conditioner', 0.0015, keeps],
  ['Methylchloroisothiazolinone', 'hand cream', 0, keeps],
  ['Chlorhexidine', 'mouthwash', 0.3, keeps],
  // 0.3 × 897.76 / 505.45
  ['Chlorhexidine Digluconate', 'mouthwash', 0.532, keeps],
  ['Hexamidine', 'face cream', 0.1, keeps],
  ['Chlorphenesin', 'face cream', 0.3, keeps],
  ['Benzalkonium Chloride', 'face cream', 0.1, keeps],
  ['Iodopropynyl Butylcarbamate', 'shampoo', 0.02, keeps],
  ['Iodopropynyl Butylcarbamate', 'face cream', 0.01, keeps],
  ['Iodopropynyl Butylcarbamate', 'roll-on deodorant', 0.0075, keeps],
  ['Iodopropynyl Butylcarbamate', 'lip product', 0, keeps],
  ['Iodopropynyl Butylcarbamate', 'toothpaste', 0, keeps],
  ['Ethyl Lauroyl Arginate HCl', 'face cream', 0.4, keeps],
  ['Ethyl Lauroyl Arginate HCl', 'lip product', 0, keeps],
  ['Triclosan', 'toothpaste', 0.3, keeps],
  ['Triclosan', 'mouthwash', 0.2, keeps],
  ['Triclocarban', 'shower gel', 0.2, keeps],
  ['Triclocarban', 'mouthwash', 0, keeps],
  ['Triclosan', 'body lotion', 0, keeps],
  // 0.4 × 152.15 / 138.12, and 0.14 × 180.20 / 138.12.
  ['Methylparaben', 'face cream', 0.4406, keeps],
  ['Propylparaben', 'face cream', 0.1826, keeps],
  ['Isopropylparaben', 'shampoo', 0, keeps],
  ['Benzylparaben', 'face cream', 0, keeps],
];

const UV_FILTERS: readonly Row[] = [
  ['Homosalate', 'face cream', 7.34, screens],
  ['Homosalate', 'body lotion', 0, screens],
  ['Benzophenone-3', 'face cream', 6, screens],
  ['Benzophenone-3', 'body lotion', 2.2, screens],
  // On the face and the body: the stricter of both.
  ['Benzophenone-3', 'sunscreen product', 2.2, screens],
  ['Octocrylene', 'sunscreen product', 10, screens],
  ['Octocrylene', 'sunscreen product', 9, { ...screens, dispenser: 'propellant spray' }],
  ['Butyl Methoxydibenzoylmethane', 'sunscreen product', 5, screens],
  ['Ethylhexyl Methoxycinnamate', 'sunscreen product', 10, screens],
  ['Ethylhexyl Salicylate', 'sunscreen product', 5, screens],
  ['Ethylhexyl Triazone', 'sunscreen product', 5, screens],
  ['Phenylbenzimidazole Sulfonic Acid', 'sunscreen product', 8, screens],
  ['Drometrizole Trisiloxane', 'sunscreen product', 15, screens],
  ['Diethylamino Hydroxybenzoyl Hexyl Benzoate', 'sunscreen product', 10, screens],
  ['Bis-Ethylhexyloxyphenol Methoxyphenyl Triazine', 'sunscreen product', 10, screens],
  ['Titanium Dioxide', 'sunscreen product', 25, screens],
  ['Zinc Oxide', 'sunscreen product', 25, screens],
  ['Zinc Oxide (nano)', 'sunscreen product', 0, { ...screens, dispenser: 'pump spray' }],
  ['4-Methylbenzylidene Camphor', 'sunscreen product', 0, screens],
  // Great Britain kept the text of the end of 2020.
  ['Homosalate', 'body lotion', 10, { ...screens, region: 'Great Britain' }],
  ['4-Methylbenzylidene Camphor', 'sunscreen product', 4, { ...screens, region: 'Great Britain' }],
  ['Benzophenone-3', 'body lotion', 6, { ...screens, region: 'Great Britain' }],
  // The United States’ order on sunscreens (formerly 21 CFR 352.10), from memory.
  ['Butyl Methoxydibenzoylmethane', 'sunscreen product', 3, { ...screens, region: 'US' }],
  ['Homosalate', 'sunscreen product', 15, { ...screens, region: 'US' }],
  ['Ethylhexyl Methoxycinnamate', 'sunscreen product', 7.5, { ...screens, region: 'US' }],
  ['Octocrylene', 'sunscreen product', 10, { ...screens, region: 'US' }],
  ['TEA-Salicylate', 'sunscreen product', 12, { ...screens, region: 'US' }],
];

const RESTRICTED: readonly Row[] = [
  ['Kojic Acid', 'face cream', 1],
  ['Kojic Acid', 'hand cream', 1],
  ['Kojic Acid', 'body lotion', 0],
  ['Alpha-Arbutin', 'face cream', 2],
  ['Alpha-Arbutin', 'body lotion', 0.5],
  ['Alpha-Arbutin', 'hand cream', 0],
  ['Arbutin', 'face cream', 7],
  ['Arbutin', 'body lotion', 0],
  ['Genistein', 'face cream', 0.007],
  ['Daidzein', 'face cream', 0.02],
  ['BHT', 'mouthwash', 0.001],
  ['BHT', 'toothpaste', 0.1],
  ['BHT', 'lip product', 0.8],
  ['Retinol', 'body lotion', 0.05],
  ['Retinol', 'face cream', 0.3],
  // 0.3 × 328.49 / 286.45
  ['Retinyl Acetate', 'hand cream', 0.344],
  // 1 × 136.29 / 65.38
  ['Zinc Chloride', 'mouthwash', 2.084],
  // 0.15 × 41.99 / 19.00
  ['Sodium Fluoride', 'toothpaste', 0.3315],
  ['Sodium Fluoride', 'face cream', 0],
  ['Hydrogen Peroxide', 'oxidative hair dye', 12],
  ['Hydrogen Peroxide', 'face cream', 4],
  ['Hydrogen Peroxide', 'toothpaste', 0.1],
  ['Hydrogen Peroxide', 'nail hardener', 2],
  ['Hydrogen Peroxide', 'nail product', 0],
  ['Hydrogen Peroxide', 'mascara', 2],
  ['Hydrogen Peroxide', 'lip product', 0],
  // 0.1 × 94.07 / 34.01
  ['Urea Peroxide', 'mouthwash', 0.2765],
  ['Sodium Hydroxide', 'cuticle remover', 5],
  ['Sodium Hydroxide', 'hair straightener', 2],
  ['Sodium Hydroxide', 'hair straightener', 4.5, professional],
  // 2 × 56.11 / 40.00
  ['Potassium Hydroxide', 'hair straightener', 2.805],
  ['Thioglycolic Acid', 'hair waving product', 8, { ph: 9 }],
  ['Thioglycolic Acid', 'hair waving product', 11, { ...professional, ph: 9 }],
  ['Thioglycolic Acid', 'depilatory', 5, { ph: 12.5 }],
  ['Thioglycolic Acid', 'hair styling product', 0, { ph: 8 }],
  ['Thioglycolic Acid', 'face cream', 0, { ph: 8 }],
  ['Ammonia', 'oxidative hair dye', 6],
  ['Oxalic Acid', 'shampoo', 5, professional],
  ['Oxalic Acid', 'shampoo', 0],
  ['Oxalic Acid', 'face cream', 0, professional],
  ['Resorcinol', 'oxidative hair dye', 1.25],
  ['Resorcinol', 'shampoo', 0.5],
  ['Resorcinol', 'face cream', 0],
  ['Selenium Sulfide', 'shampoo', 1],
  ['Selenium Sulfide', 'hair conditioner', 0],
  ['Quinine', 'shampoo', 0.5],
  ['Quinine', 'leave-on hair care', 0.2],
  ['Quinine', 'face cream', 0],
  ['Triethanolamine', 'face cream', 2.5],
  ['Isoeugenol', 'face cream', 0.02],
  ['Hydroxycitronellal', 'body lotion', 1],
  ['Butylphenyl Methylpropional', 'shampoo', 0],
  ['Zinc Pyrithione', 'shampoo', 0],
  ['Trimethylbenzoyl Diphenylphosphine Oxide', 'nail product', 0],
  ['CI 10006', 'face cream', 0, colours],
  ['CI 45350', 'body lotion', 6, colours],
  ['CI 45396', 'lip product', 1, colours],
  ['CI 74260', 'mascara', 0, colours],
];

describe('an example limit, held against products of the trade', () => {
  it.each(PRESERVATIVES)('preservative: %s in a %s at most %d %%', isMost);
  it.each(UV_FILTERS)('UV filter: %s in a %s at most %d %%', isMost);
  it.each(RESTRICTED)('%s in a %s at most %d %%', isMost);
});

describe('what is lawful beside those', () => {
  it.each([
    // Free of a limit where it is rinsed off, or another thing than the law names.
    ['Triethanolamine', 'shampoo', 5, {}],
    ['Benzyl Alcohol', 'face cream', 5, { as: ['fragrance'] }],
    ['CI 10006', 'shampoo', 0.1, colours],
    ['CI 74260', 'lip product', 0.1, colours],
    ['Zinc Oxide', 'face cream', 40, {}],
    ['Glycerin', 'face cream', 60, {}],
    ['Salicylic Acid', 'shampoo', 3, {}],
    // Annex III, entry 98: 2 % in other products for other purposes than keeping.
    ['Salicylic Acid', 'face cream', 2, {}],
    // In the United States none of the European lists counts.
    ['Kojic Acid', 'body lotion', 2, { region: 'US' }],
    ['Isopropylparaben', 'face cream', 0.2, { region: 'US' }],
  ] as readonly [string, ProductKind, number, Said][])('%s in a %s at %d %%', (inci, kind, percent, said) => {
    expect(lawful(inci, kind, percent, said)).toBe(true);
  });

  it('what began on a day was lawful the day before: 4-methylbenzylidene camphor, lilial, D6', () => {
    const on = (inci: string, kind: ProductKind, onDay: string): boolean => lawful(inci, kind, 1, { onDay });
    expect([
      on('4-Methylbenzylidene Camphor', 'body lotion', '2025-04-30'),
      on('4-Methylbenzylidene Camphor', 'body lotion', '2025-05-01'),
    ]).toEqual([true, false]);
    expect([
      on('Butylphenyl Methylpropional', 'body lotion', '2022-02-28'),
      on('Butylphenyl Methylpropional', 'body lotion', '2022-03-01'),
    ]).toEqual([true, false]);
    expect([
      on('Cyclohexasiloxane', 'shampoo', '2026-06-06'),
      on('Cyclohexasiloxane', 'shampoo', '2026-06-07'),
    ]).toEqual([true, false]);
  });

  it('a depilatory outside its pH is not lawful at any share: 7 to 12.7', () => {
    const at = (ph: number): boolean => lawful('Thioglycolic Acid', 'depilatory', 1, { ph });
    expect([6.9, 7, 12.7, 12.8].map(at)).toEqual([false, true, true, false]);
  });

  it('what children under three must not use is not lawful for them at any share', () => {
    for (const inci of ['Salicylic Acid', 'Iodopropynyl Butylcarbamate'])
      for (const [users, is] of [
        [[], true],
        [['children over 3 years'], true],
        [['children under 3 years'], false],
      ] as const)
        expect(lawful(inci, 'face cream', 0.001, { ...keeps, users: [...users] }), inci).toBe(is);
  });
});
