import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marginOfSafety, maxConcentrationForMargin } from '@core/exposure/exposure';
import { shownMargin } from '@core/exposure/shown-margin';
import { USUAL_MARGIN } from '@core/exposure/tables';

const systemic = (pod: number) => ({ pod, oralBioavailabilityPercent: 100 });

describe('a margin that is the very one asked for', () => {
  it('is shown as it, though a computer makes it a hair less: 0.00279 over 2.79 × 0.1 % × 1 % is 100', () => {
    const { value } = marginOfSafety(systemic(0.00279), {
      use: { perKg: 2.79 },
      concentrationPercent: 0.1,
      absorptionPercent: 1,
    });
    expect(value).toBeLessThan(100);
    expect(shownMargin(value)).toBe(100);
  });

  it('is reached by the largest strength that leaves it', () => {
    const figure = fc.integer({ min: 1, max: 1000 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(figure, figure, figure, (pod, perKg, absorptionPercent) => {
        const use = { perKg };
        const strength = maxConcentrationForMargin(systemic(pod), use, absorptionPercent, USUAL_MARGIN).value;
        fc.pre(strength < 100);
        const dose = { use, concentrationPercent: strength, absorptionPercent };
        expect(shownMargin(marginOfSafety(systemic(pod), dose).value)).toBe(USUAL_MARGIN);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    [99.999, 99],
    [99.9999999, 99],
    [9.99999, 9.9],
    [0.09999, 0],
    [24.999999999999993, 25],
    [9.999999999999998, 10],
    [0, 0],
  ])('%d is shown as %d', (margin, shown) => expect(shownMargin(margin)).toBeCloseTo(shown, 12));
});
