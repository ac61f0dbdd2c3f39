import fc from 'fast-check';
import { composition } from '@core/materials/composition';
import { refuseCircular, tradeNameKey, wholeComposition, type Composed } from '@core/materials/nested';
import { Problem } from '@core/problems/problem';
import { WHOLE_PPM } from '@core/quantities/share';
import { describe, expect, it } from 'vitest';

const SUBSTANCES = ['Aqua', 'Glycerin', 'Phenoxyethanol', 'Squalane', 'Urea'];

/** Ten blends; each may hold substances and any blend that comes after it, so that none leads back. */
const shelf = fc
  .array(
    fc.uniqueArray(fc.tuple(fc.nat({ max: 13 }), fc.integer({ min: 1, max: 40 }), fc.nat({ max: 30 })), {
      minLength: 1,
      maxLength: 5,
      selector: ([which]) => which,
    }),
    { minLength: 10, maxLength: 10 },
  )
  .map((blends) =>
    blends.map((parts, at): Composed => {
      const named = new Map<string, { lowPpm: number; highPpm: number }>();
      const whole = parts.reduce((sum, [, weight]) => sum + weight, 0);
      for (const [which, weight, spread] of parts) {
        const later = at + 1 + which;
        const inci = later < 10 ? `Blend ${later}` : (SUBSTANCES[which % 5] ?? 'Aqua');
        if (named.has(inci)) continue;
        const lowPpm = Math.floor((weight * WHOLE_PPM) / whole);
        named.set(inci, { lowPpm, highPpm: Math.min(WHOLE_PPM, lowPpm + spread * 1000) });
      }
      return {
        tradeName: `Blend ${at}`,
        composition: [...named].map(([inci, range]) => ({ inci, ...range })),
      };
    }),
  );

const finderOf = (blends: readonly Composed[]) => (name: string) =>
  blends.find(({ tradeName }) => tradeNameKey(tradeName) === tradeNameKey(name));

/** A plain re-computation: what one unit of a blend holds of a substance, between which ends. */
function heldOf(
  blends: readonly Composed[],
  at: number,
  substance: string,
  end: 'lowPpm' | 'highPpm',
): number {
  return (blends[at]?.composition ?? []).reduce((sum, part) => {
    const share = part[end] / WHOLE_PPM;
    if (part.inci === substance) return sum + share;
    const inner = /^Blend (\d+)$/.exec(part.inci);
    return inner ? sum + share * heldOf(blends, Number(inner[1]), substance, end) : sum;
  }, 0);
}

describe('compositions within compositions', () => {
  it('conserve the sum of every substance, within a ppm, and can be held by a library', () => {
    fc.assert(
      fc.property(shelf, (blends) => {
        const whole = wholeComposition(blends[0]!, finderOf(blends));
        expect(composition.safeParse(whole).success).toBe(true);
        expect(whole.every(({ inci }) => SUBSTANCES.includes(inci))).toBe(true);
        for (const substance of SUBSTANCES) {
          const part = whole.find(({ inci }) => inci === substance);
          const low = heldOf(blends, 0, substance, 'lowPpm') * WHOLE_PPM;
          const high = Math.min(WHOLE_PPM, heldOf(blends, 0, substance, 'highPpm') * WHOLE_PPM);
          expect(Math.abs((part?.lowPpm ?? 0) - low)).toBeLessThan(1.01);
          expect(Math.abs((part?.highPpm ?? 0) - high)).toBeLessThan(1.01);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('are refused where one leads back to itself, by whichever way, and left as written where it happened', () => {
    fc.assert(
      fc.property(shelf, fc.integer({ min: 1, max: 9 }), (blends, last) => {
        const chain = blends.map((one, at): Composed => {
          const next = at === last ? 'Blend 0' : `Blend ${at + 1}`;
          return { ...one, composition: [{ inci: next, lowPpm: WHOLE_PPM, highPpm: WHOLE_PPM }] };
        });
        expect(() => refuseCircular(chain[0]!, finderOf(chain))).toThrow(Problem);
        expect(wholeComposition(chain[0]!, finderOf(chain)).length).toBe(1);
      }),
      { numRuns: 30 },
    );
  });

  it('leave a material alone whose trade name is the name of its substance', () => {
    const glycerin: Composed = {
      tradeName: 'Glycerin',
      composition: [
        { inci: 'Glycerin', lowPpm: 995_000, highPpm: 995_000 },
        { inci: 'Aqua', lowPpm: 5_000, highPpm: 5_000 },
      ],
    };
    const blend: Composed = {
      tradeName: 'Moist',
      composition: [{ inci: 'glycerin', lowPpm: 400_000, highPpm: 400_000 }],
    };
    const find = finderOf([glycerin, blend]);
    expect(wholeComposition(glycerin, find)).toBe(glycerin.composition);
    expect(wholeComposition(blend, find)).toBe(blend.composition);
    expect(() => refuseCircular(glycerin, find)).not.toThrow();
  });
});
