import fc from 'fast-check';
import {
  holdsMaterials,
  isItsOwnSubstance,
  refuseCircular,
  tradeNameKey,
  wholeComposition,
  type Composed,
} from '@core/materials/nested';
import type { InciPart } from '@core/materials/composition';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

type Written = readonly (readonly [inci: string, low: number, high?: number])[];
/** A material by name, its parts in % of it. */
const blend = (tradeName: string, parts: Written): Composed => ({
  tradeName,
  composition: parts.map(([inci, low, high = low]) => ({
    inci,
    lowPpm: Math.round(low * 10_000),
    highPpm: Math.round(high * 10_000),
  })),
});
const shelf =
  (...all: Composed[]) =>
  (name: string): Composed | undefined =>
    all.find(({ tradeName }) => tradeNameKey(tradeName) === tradeNameKey(name));
const percents = (parts: readonly InciPart[]): Record<string, number | [number, number]> =>
  Object.fromEntries(
    parts.map(({ inci, lowPpm, highPpm }) => [
      inci,
      lowPpm === highPpm ? lowPpm / 10_000 : [lowPpm / 10_000, highPpm / 10_000],
    ]),
  );

const GUARD = blend('Invented Guard', [
  ['Phenoxyethanol', 90],
  ['Ethylhexylglycerin', 10],
]);
const EXTRACT = blend('Invented Leaf Extract', [
  ['Camellia Sinensis Leaf Extract', 2],
  ['Glycerin', 50],
  ['Aqua', 47],
  ['Invented Guard', 1],
]);

describe('a blend of blends', () => {
  it('holds the substances of all of them, shares multiplied: 1 % of a preservative of 90 % is 0.9 %', () => {
    const base = blend('Invented Base', [
      ['Invented Leaf Extract', 20],
      ['Aqua', 80],
    ]);
    expect(percents(wholeComposition(base, shelf(GUARD, EXTRACT)))).toEqual({
      'Camellia Sinensis Leaf Extract': 0.4,
      Glycerin: 10,
      Aqua: 89.4,
      Phenoxyethanol: 0.18,
      Ethylhexylglycerin: 0.02,
    });
  });

  it('multiplies both ends of suppliers’ ranges', () => {
    const inner = blend('Inner', [
      ['Urea', 10, 20],
      ['Aqua', 80, 90],
    ]);
    const outer = blend('Outer', [
      ['Inner', 50, 60],
      ['Glycerin', 40, 50],
    ]);
    expect(percents(wholeComposition(outer, shelf(inner)))).toEqual({
      Urea: [5, 12],
      Aqua: [40, 54],
      Glycerin: [40, 50],
    });
  });

  it('is found whatever the case, accents and spaces of the name', () => {
    const base = blend('Base', [['  invented GUARD ', 100]]);
    expect(Object.keys(percents(wholeComposition(base, shelf(GUARD))))).toEqual([
      'Phenoxyethanol',
      'Ethylhexylglycerin',
    ]);
  });

  it('is as it is written where it names no material', () => {
    const find = shelf();
    expect(wholeComposition(EXTRACT, find)).toBe(EXTRACT.composition);
    expect(holdsMaterials(EXTRACT, find)).toBe(false);
    expect(holdsMaterials(EXTRACT, shelf(GUARD))).toBe(true);
  });

  it('a material that is its own substance is none to look into', () => {
    const glycerin = blend('Glycerin', [['Glycerin', 99.5]]);
    expect(isItsOwnSubstance(glycerin)).toBe(true);
    expect(isItsOwnSubstance(GUARD)).toBe(false);
    expect(wholeComposition(EXTRACT, shelf(glycerin))).toBe(EXTRACT.composition);
    expect(wholeComposition(glycerin, shelf(glycerin))).toBe(glycerin.composition);
  });

  it('keeps its mass to the ppm, whatever its exact shares are', () => {
    const part = fc.integer({ min: 1, max: 999_999 });
    fc.assert(
      fc.property(part, part, part, (a, b, c) => {
        const inner: Composed = {
          tradeName: 'Inner',
          composition: [
            { inci: 'Urea', lowPpm: a, highPpm: a },
            { inci: 'Aqua', lowPpm: 1_000_000 - a, highPpm: 1_000_000 - a },
          ],
        };
        const outer: Composed = {
          tradeName: 'Outer',
          composition: [
            { inci: 'Inner', lowPpm: b, highPpm: b },
            { inci: 'Aqua', lowPpm: 1_000_000 - b, highPpm: 1_000_000 - b },
          ],
        };
        const most: Composed = {
          tradeName: 'Most',
          composition: [
            { inci: 'Outer', lowPpm: c, highPpm: c },
            { inci: 'Inner', lowPpm: 1_000_000 - c, highPpm: 1_000_000 - c },
          ],
        };
        const whole = wholeComposition(most, shelf(inner, outer));
        expect(whole.reduce((sum, one) => sum + one.lowPpm, 0)).toBe(1_000_000);
        for (const one of whole) expect(Number.isInteger(one.lowPpm)).toBe(true);
        const urea = (a * (b * c + 1_000_000 * (1_000_000 - c))) / 1e12;
        expect(Math.abs((whole.find(({ inci }) => inci === 'Urea')?.lowPpm ?? 0) - urea)).toBeLessThanOrEqual(
          1,
        );
      }),
    );
  });

  it('of ranges is never narrower than what it holds', () => {
    const end = fc.integer({ min: 0, max: 1_000_000 });
    fc.assert(
      fc.property(end, end, end, end, (a, b, c, d) => {
        const inner = { inci: 'Urea', lowPpm: Math.min(a, b), highPpm: Math.max(a, b) };
        const outer = { inci: 'Inner', lowPpm: Math.min(c, d), highPpm: Math.max(c, d) };
        const whole = wholeComposition(
          { tradeName: 'Outer', composition: [outer] },
          shelf({ tradeName: 'Inner', composition: [inner] }),
        );
        const [urea] = whole;
        const exact = [(inner.lowPpm * outer.lowPpm) / 1e6, (inner.highPpm * outer.highPpm) / 1e6] as const;
        const slack = exact[1] - exact[0] < 1e-6 ? 1 : 1e-5;
        expect(urea!.lowPpm).toBeLessThanOrEqual(exact[0] + slack);
        expect(urea!.highPpm).toBeGreaterThanOrEqual(exact[1] - slack);
        expect(urea!.highPpm).toBeLessThanOrEqual(1_000_000);
      }),
    );
  });
});

describe('a composition that leads back to itself', () => {
  const one = blend('One', [
    ['Two', 50],
    ['Aqua', 50],
  ]);
  const two = blend('Two', [
    ['Three', 10],
    ['Glycerin', 90],
  ]);
  const three = blend('Three', [['One', 100]]);

  it('is refused with the way it takes', () => {
    const problem = refusal(() => refuseCircular(one, shelf(one, two, three)), /leads back to itself/);
    expect(problem.message).toContain('“one” holds “two” holds “three” holds “one”');
    expect(problem.advice).toMatch(/Name the substances instead/);
    expect(problem.fields.map(({ path }) => path)).toEqual(['composition']);
  });

  it('where it already stands in a library is read as it is written, and ends', () => {
    expect(percents(wholeComposition(one, shelf(one, two, three)))).toEqual({
      One: 5,
      Glycerin: 45,
      Aqua: 50,
    });
  });

  it('is not refused for naming one material twice on different ways', () => {
    const wide = blend('Wide', [
      ['Two', 40],
      ['Invented Guard', 60],
    ]);
    const find = shelf(GUARD, two, blend('Three', [['Invented Guard', 100]]));
    expect(() => refuseCircular(wide, find)).not.toThrow();
  });

  it('is no circle where it bears the name of its own substance', () => {
    const glycerin = blend('Glycerin', [['Glycerin', 100]]);
    expect(() => refuseCircular(glycerin, shelf(glycerin))).not.toThrow();
  });
});

describe('a blend of too many substances', () => {
  const many = (name: string, from: number, count: number): Composed =>
    blend(
      name,
      Array.from({ length: count }, (_, n) => [`Substance ${from + n}`, 100 / 64] as const),
    );

  it('is refused from 61 on, and taken with 60', () => {
    const outer = blend('Outer', [
      ['First', 50],
      ['Second', 50],
    ]);
    const first = many('First', 0, 30);
    expect(() => refuseCircular(outer, shelf(first, many('Second', 30, 30)))).not.toThrow();
    refusal(() => refuseCircular(outer, shelf(first, many('Second', 30, 31))), /more than 60 substances/);
  });
});
