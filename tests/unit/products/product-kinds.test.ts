import { DAILY_USE } from '@core/exposure/tables';
import { limitKindsOf } from '@core/limits/situation';
import { microbialLimits } from '@core/microbiology/finished-product';
import { blankMarket, market, type Market } from '@core/products/market';
import {
  DISPENSERS,
  KIND_FACTS,
  LIMIT_KINDS,
  PRODUCT_KINDS,
  REGIONS,
  SITE_TRAIT,
  SITES,
  TRAITS,
  USERS,
  type ProductKind,
} from '@core/products/product-kinds';
import { USES } from '@core/products/use';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';

const twice = (words: readonly string[]) => words.filter((word, at) => words.indexOf(word) !== at);

describe('the words for products', () => {
  it('stand once in each list, and mean one thing to a limit, be they a kind or a trait', () => {
    for (const list of [PRODUCT_KINDS, TRAITS, LIMIT_KINDS, SITES, USERS, DISPENSERS, REGIONS, USES])
      expect(twice(list)).toEqual([]);
  });

  it('name traits that limits know, each kind with one at least', () => {
    for (const kind of PRODUCT_KINDS) {
      const traits: readonly string[] = KIND_FACTS[kind].traits;
      expect(traits.length, kind).toBeGreaterThan(0);
      for (const trait of traits) expect(TRAITS).toContain(trait);
    }
  });

  it('know every site and every way of dispensing as a limit knows it', () => {
    for (const site of SITES) {
      const trait = SITE_TRAIT[site];
      if (trait !== null) expect(TRAITS).toContain(trait);
    }
    for (const dispenser of DISPENSERS) expect(TRAITS).toContain(dispenser);
  });
});

describe('how a kind of product is used', () => {
  // SCCS Notes of Guidance, 12th revision, Table 3A: category of each product, as the published values hold it.
  const { products } = publishedValues(
    'exposure',
    z.object({ products: z.array(z.object({ product: z.string(), category: z.string() })) }),
  );
  const kinds = Object.entries(DAILY_USE) as [ProductKind, { product: string; retention: number }][];

  it.each(kinds)(
    '%s: washed off or left on as the committee’s table says',
    (kind, { product, retention }) => {
      const row = products.find((one) => one.product === product);
      const { use } = KIND_FACTS[kind];
      if (row && USES.some((one) => one === row.category)) expect(use).toBe(row.category);
      // Less than a tenth of what is washed off stays; nothing that is left on leaves so little.
      expect(retention <= 0.1 || use === 'leave-on').toBe(true);
    },
  );
});

describe('what a product answers to', () => {
  const of = (part: Partial<Market>) => limitKindsOf({ ...blankMarket(), ...part });

  it('is nothing while nothing is said', () => {
    expect([...of({})]).toEqual([]);
    expect(microbialLimits(blankMarket()).strict).toBe(false);
  });

  it('is its kind with all that the kind is, and what is said besides, in no order', () => {
    expect(of({ kind: 'sunscreen product' })).toEqual(
      new Set(['sunscreen product', 'face', 'body', 'sunscreen']),
    );
    const lotion = of({ kind: 'body lotion', sites: ['hands', 'near the eyes'], dispenser: 'pump spray' });
    expect(lotion).toEqual(new Set(['body lotion', 'body', 'hand', 'eye', 'pump spray']));
    expect(of({ kind: 'body lotion', sites: ['near the eyes', 'hands'], dispenser: 'pump spray' })).toEqual(
      lotion,
    );
  });

  it('has no word for the intimate area, which microbes still count', () => {
    expect([...of({ sites: ['intimate area'] })]).toEqual([]);
    expect(microbialLimits({ ...blankMarket(), sites: ['intimate area'] }).strict).toBe(true);
  });

  it.each(PRODUCT_KINDS)(
    'as a %s: microbes are held strictly at the eye, the lips and in the mouth only',
    (kind) => {
      // ISO 17516:2014, Table 1: children under three, the eye area, mucous membranes.
      const strict = [
        'eye make-up',
        'mascara',
        'eyeliner',
        'lip product',
        'toothpaste',
        'mouthwash',
      ].includes(kind);
      expect(microbialLimits({ ...blankMarket(), kind }).strict).toBe(strict);
    },
  );

  it('is strict for every site that is a mucous membrane or near the eyes, with the reason in words', () => {
    for (const [site, because] of [
      ['near the eyes', 'it is used near the eyes'],
      ['lips', 'it is used on: lips'],
      ['mouth', 'it is used on: mouth'],
      ['intimate area', 'it is used on: intimate area'],
    ] as const)
      expect(microbialLimits({ ...blankMarket(), kind: 'body lotion', sites: ['body', site] })).toEqual({
        strict: true,
        because,
        total: 100,
        outAbove: 200,
      });
    // A child's age goes before the site.
    expect(
      microbialLimits({ ...blankMarket(), sites: ['lips'], users: ['children under 3 years'] }).because,
    ).toContain('children under three');
  });
});

describe('a market as it is kept', () => {
  it('starts with nothing said, and comes back as it was written', () => {
    expect(market.parse(blankMarket())).toEqual(blankMarket());
    const full: Market = {
      kind: 'face cream',
      dispenser: 'pump spray',
      sites: ['face'],
      users: ['adults'],
      regions: ['EU', 'US'],
    };
    expect(market.parse(JSON.parse(JSON.stringify(full)))).toEqual(full);
  });

  it.each([
    ['kind', 'soup'],
    ['dispenser', 'spoon'],
    ['sites', ['elbow']],
    ['users', ['nobody']],
    ['regions', ['Atlantis']],
    ['sites', null],
    ['regions', Array.from({ length: REGIONS.length + 1 }, () => 'EU')],
  ])('refuses as %s what it does not know', (key, value) => {
    expect(market.safeParse({ ...blankMarket(), [key]: value }).success).toBe(false);
  });
});
