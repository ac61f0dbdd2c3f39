import fc from 'fast-check';
import { contentsOf, amountOf } from '@core/limits/contents';
import { ingredientList } from '@core/labelling/ingredient-list';
import { blankMarket } from '@core/products/market';
import { WHOLE_PPM } from '@core/quantities/share';
import { substanceIndex } from '@core/substances/substance-index';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make, nextId } from '../unit/checks/build';
import { EXAMPLES } from '../unit/limits/law';

const NAMES = [
  'Aqua',
  'Glycerin',
  'Sodium Benzoate',
  'Phenoxyethanol',
  'Cetearyl Alcohol',
  'CI 77891',
  'Squalane',
  'Urea',
];
const index = substanceIndex(EXAMPLES.substances);

/** Blends of some names, each with a share that the names make up whole. */
const blend = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...NAMES), fc.integer({ min: 1, max: 50 })), {
    minLength: 1,
    maxLength: 5,
    selector: ([name]) => name,
  })
  .map((parts): Material => {
    const whole = parts.reduce((sum, [, weight]) => sum + weight, 0);
    const shares = parts.map(([, weight]) => Math.floor((weight * WHOLE_PPM) / whole));
    shares[0] = (shares[0] ?? 0) + WHOLE_PPM - shares.reduce((sum, one) => sum + one, 0);
    return make('Blend', 'Aqua', {
      composition: parts.map(([inci], at) => ({ inci, lowPpm: shares[at] ?? 0, highPpm: shares[at] ?? 0 })),
    });
  });
const lines = fc.array(fc.tuple(blend, fc.integer({ min: 0, max: 400_000 })), {
  minLength: 1,
  maxLength: 12,
});

describe('what a formula holds by substance', () => {
  it('comes to what its lines come to, however they are blended', () => {
    fc.assert(
      fc.property(lines, (rows) => {
        const dosed = rows.map(([material, ppm]) => ({ lineId: nextId(), material, ppm }));
        const { present, freeText } = contentsOf(dosed, index);
        const sum = [...present.values()].reduce((total, { parts }) => total + amountOf(parts).high, 0);
        expect(freeText).toEqual([]);
        expect(sum).toBeCloseTo(
          rows.reduce((total, [, ppm]) => total + ppm, 0),
          4,
        );
      }),
    );
  });

  it('is the same when a blend is written out as its own lines', () => {
    fc.assert(
      fc.property(lines, (rows) => {
        const as = (dosed: { lineId: string; material: Material; ppm: number }[]) =>
          [...contentsOf(dosed, index).present.values()]
            .map(({ substance, parts }) => [substance.name, Math.round(amountOf(parts).high * 100)] as const)
            .filter(([, amount]) => amount > 0)
            .sort(([a], [b]) => a.localeCompare(b));
        const whole = rows.map(([material, ppm]) => ({ lineId: nextId(), material, ppm }));
        const apart = rows.flatMap(([material, ppm]) =>
          material.composition.map(({ inci, highPpm }) => ({
            lineId: nextId(),
            material: make('Single', inci),
            ppm: (ppm * highPpm) / WHOLE_PPM,
          })),
        );
        for (const [at, [name, amount]] of as(apart).entries()) {
          const [other, of] = as(whole)[at] ?? ['', 0];
          expect(other).toBe(name);
          expect(Math.abs(of - amount)).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('the order of a label', () => {
  it('is that of a plain computation anew', () => {
    fc.assert(
      fc.property(lines, fc.constantFrom('EU' as const, 'US' as const), (rows, form) => {
        const content = {
          use: 'leave-on' as const,
          market: blankMarket(),
          phases: [
            {
              id: nextId(),
              title: '',
              temperatureC: null,
              lines: rows.map(([material, ppm]) => ({
                id: nextId(),
                materialId: material.id,
                ppm,
                toHundred: false,
                note: '',
              })),
            },
          ],
        };
        const materials = Object.fromEntries(rows.map(([material]) => [material.id, material]));
        const { ingredients } = ingredientList(content, materials, { form, law: EXAMPLES });
        // Plainly: sums by written name, by size; small ones after the others, the colorant last.
        const sums = new Map<string, number>();
        for (const [material, ppm] of rows)
          for (const { inci, highPpm } of material.composition)
            sums.set(inci, (sums.get(inci) ?? 0) + (ppm * highPpm) / WHOLE_PPM);
        const small = (ppm: number): number => Number(form === 'EU' ? ppm < 10_000 : ppm <= 10_000);
        const expected = [...sums]
          .filter(([, ppm]) => ppm > 0)
          .map(([name, ppm]) => ({ name, ppm, rank: name === 'CI 77891' ? 2 : small(ppm) }))
          .sort((a, b) => a.rank - b.rank || b.ppm - a.ppm);
        expect(ingredients.map(({ ppm }) => ppm)).toEqual(expected.map(({ ppm }) => ppm));
        expect(ingredients.map(({ group }) => ['by weight', 'any order', 'colorant'].indexOf(group))).toEqual(
          expected.map(({ rank }) => rank),
        );
      }),
    );
  });
});
