import { isBroken, type Judged } from '@core/limits/judged';
import { allowanceWords, productsWords, subjectWords } from '@core/limits/words';
import { labelPhrases } from '@core/labelling/phrases';
import type { Material } from '@core/materials/material';
import { KIND_FACTS, SITES, type ProductKind, type Site } from '@core/products/product-kinds';
import type { Market } from '@core/products/market';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { EXAMPLES, judged, situation } from './law';

function found(
  inci: string,
  percent: number,
  kind: ProductKind,
  market: Partial<Market> = {},
  functions: Material['functions'] = [],
): Judged[] {
  const at = situation({ use: KIND_FACTS[kind].use }, { kind, ...market });
  return judged([[make(inci, inci, { functions }), percent]], at);
}
const words = (...of: Parameters<typeof found>): string[] =>
  labelPhrases(found(...of)).map(({ text }) => text);

// Regulation (EC) No 1223/2009, Annexes III, V and VI, column of the label, from memory.
describe('the words that a label must carry', () => {
  it.each([
    ['Ammonia', 2, 'oxidative hair dye', []],
    ['Ammonia', 2.1, 'oxidative hair dye', ['Contains ammonia']],
    [
      'Hydrogen Peroxide',
      6,
      'oxidative hair dye',
      [
        'Contains hydrogen peroxide. Avoid contact with eyes. Rinse eyes immediately if product comes into contact with them',
      ],
    ],
    // In the mouth, up to 0.1 %, without words.
    ['Hydrogen Peroxide', 0.05, 'toothpaste', []],
    ['Sodium Fluoride', 0.3, 'toothpaste', ['Contains fluoride']],
    ['Resorcinol', 1, 'oxidative hair dye', ['Contains resorcinol. Rinse hair well after application']],
    ['Resorcinol', 0.3, 'shampoo', ['Contains resorcinol']],
    ['Retinol', 0.1, 'face cream', ['Contains Vitamin A. Consider your daily intake before use']],
    ['DMDM Hydantoin', 0.3, 'shampoo', ['Releases formaldehyde']],
    ['Phenoxyethanol', 1, 'face cream', []],
    ['Glycerin', 30, 'face cream', []],
  ] as [string, number, ProductKind, string[]][])(
    '%s at %d %% in a %s: %j',
    (inci, percent, kind, expected) => {
      expect(words(inci, percent, kind)).toEqual(expected);
    },
  );

  it.each([
    [0.4, []],
    [0.5, []],
    [0.51, ['Contains Benzophenone-3']],
  ] as [number, string[]][])('of benzophenone-3 from above 0.5 %%: at %d %% %j', (percent, expected) => {
    expect(words('Benzophenone-3', percent, 'face cream', {}, ['uv filter'])).toEqual(expected);
  });

  it('of salicylic acid stand once, though as a preservative and otherwise two entries ask for them', () => {
    const [phrase, ...others] = labelPhrases(
      found('Salicylic Acid', 0.4, 'face cream', {}, ['preservative']),
    );
    expect(others).toEqual([]);
    expect(phrase?.text).toBe('Not to be used for children under 3 years of age');
    expect(phrase?.regions).toContain('EU');
  });

  it('of an alkali differ for the public and for salons', () => {
    const at = (users: Market['users']): string[] =>
      words('Sodium Hydroxide', 1.5, 'hair straightener', { users });
    expect(at([]).join()).toMatch(/^Contains alkali\. .*Keep out of reach of children$/);
    expect(at(['professional use']).join()).toMatch(/^For professional use only\./);
  });
});

describe('where and how a product is used', () => {
  const broken = (...of: Parameters<typeof found>): boolean =>
    found(...of).some((one) => one.time === 'in force' && isBroken(one));

  it('propylparaben is not left on the nappy area, and may be elsewhere', () => {
    expect(broken('Propylparaben', 0.1, 'body lotion')).toBe(false);
    expect(broken('Propylparaben', 0.1, 'body lotion', { sites: ['nappy area'] })).toBe(true);
  });

  it('a site makes a product answer to the stricter words: a colour near the eyes, an acid on the lips', () => {
    const colour = (sites: Site[]): boolean => broken('CI 74260', 0.1, 'face cream', { sites }, ['colorant']);
    expect([colour([]), colour(['lips']), colour(['near the eyes'])]).toEqual([false, false, true]);
  });

  it('a dispenser whose mist is breathed in forbids what a cream allows', () => {
    for (const [inci, functions] of [
      ['Dehydroacetic Acid', ['preservative']],
      ['Titanium Dioxide (nano)', ['uv filter']],
    ] as [string, Material['functions']][]) {
      expect(broken(inci, 0.5, 'sunscreen product', {}, functions), inci).toBe(false);
      expect(broken(inci, 0.5, 'sunscreen product', { dispenser: 'propellant spray' }, functions), inci).toBe(
        true,
      );
    }
  });

  it('a site never makes anything lawful that was not', () => {
    for (const inci of ['Isopropylparaben', 'Butylphenyl Methylpropional', 'Methylisothiazolinone'])
      for (const site of SITES)
        expect(broken(inci, 0.1, 'body lotion', { sites: [site] }), `${inci} ${site}`).toBe(true);
  });
});

describe('an example limit in words', () => {
  it.each(EXAMPLES.limits.map((one) => [`${one.subject}, ${one.source}`, one] as const))(
    '%s can be read',
    (_, one) => {
      const allowed = allowanceWords(one);
      expect(allowed).toMatch(/^(at most|less than|not allowed|no share is set|[\d.]+\u00a0% to)/);
      // No noise of binary fractions, and no exponent.
      expect(allowed).not.toMatch(/\d{8}|\de-\d/);
      expect(productsWords(one)).toMatch(/^(leave-on|rinse-off|leave-on and rinse-off)(;|$)/);
    },
  );

  it('names the one substance of a group of which each counts by itself, else the group', () => {
    const one = found('Methylparaben', 0.2, 'face cream');
    expect(one.map(subjectWords).sort()).toEqual(['Methylparaben', 'Parabens']);
  });
});
