import { lowestMean, meanFactor } from '@core/net-contents/mean-criterion';
import { checkPrepackages } from '@core/net-contents/prepackage-check';
import { CHECK_THE_LAW, prepackageLimits, tolerableError } from '@core/net-contents/tolerable-error';
import { allowableVariation, checkUsPackages, sampleCorrectionFactor } from '@core/net-contents/us-packages';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const packs = (count: number, contents: number, ...first: number[]): number[] =>
  Array.from({ length: count }, (_, at) => first[at] ?? contents);
/** So many packs at two contents in turn: their mean lies between, their deviation is half the gap × √(n / (n − 1)). */
const inTurn = (count: number, low: number, high: number): number[] =>
  Array.from({ length: count }, (_, at) => (at % 2 === 0 ? low : high));

describe('what a jar may lack (Directive 76/211/EEC, Annex I, 2.4; worked by hand)', () => {
  it.each([
    [5, 0.5, '9 % are 0.45, up to a tenth'],
    [7, 0.7, '0.63'],
    [15, 1.4, '1.35'],
    [30, 2.7, 'exactly 2.7: nothing to round'],
    [50.1, 4.5, 'from here an amount'],
    [100, 4.5, 'the end of it'],
    [100.1, 4.6, '4.5045'],
    [125, 5.7, '5.625'],
    [200, 9, '4.5 % exactly'],
    [200.1, 9, 'an amount again'],
    [300.1, 9.1, '9.003'],
    [500, 15, '3 % exactly'],
    [1000, 15, 'a litre'],
    [1000.1, 15.1, '1.5 %: 15.0015'],
    [5000, 75, 'a canister'],
    [12_000, 150, 'a drum: an amount'],
    [20_000, 200, '1 %'],
  ])('of %d is %d: %s', (nominal, error) => {
    expect(tolerableError(nominal, 'mL').value).toBe(error);
  });

  it('is told in the unit of the label, with the band, its source and that laws differ', () => {
    const { steps, sources, cautions } = tolerableError(125, 'mL');
    expect(steps.map(({ shows, result, unit }) => [shows, result, unit])).toEqual([
      ['4.5 % × 125 = 5.625, up to', 5.7, 'mL'],
    ]);
    expect(sources.map(({ text }) => text).join()).toContain('76/211/EEC');
    expect(cautions).toEqual([CHECK_THE_LAW]);
    // Above a kilogram the text at hand is from memory, and says so.
    expect(tolerableError(1000, 'g').sources.some(({ basis }) => basis === 'memory')).toBe(false);
    expect(tolerableError(1001, 'g').sources.some(({ basis }) => basis === 'memory')).toBe(true);
  });

  it('sets T1 and T2 below the label by it once and twice, and shows how', () => {
    const { t1, t2 } = prepackageLimits(250, 'g');
    expect([t1.value, t2.value]).toEqual([241, 232]);
    expect(t1.steps.at(-1)?.shows).toBe('250 − 9');
    expect(t2.steps.at(-1)?.shows).toBe('250 − 2 × 9');
  });
});

describe('the mean of a sample (Annex II, 2.3.3)', () => {
  // Student’s t at 0.995, any table: 63.657 for 1, 9.925 for 2, 2.861 for 19, 2.756 for 29, 2.680 for 49 degrees of freedom.
  it.each([
    [2, 63.657 / Math.SQRT2],
    [3, 9.925 / Math.sqrt(3)],
    [20, 2.861 / Math.sqrt(20)],
    [30, 2.756 / Math.sqrt(30)],
    [50, 2.68 / Math.sqrt(50)],
  ])('of %i packs may lie %d deviations below the label', (size, factor) => {
    expect(meanFactor(size, 0.995).value / factor).toBeCloseTo(1, 3);
  });

  it('worked by hand: 100 g, deviation 2 g, 30 packs: 100 − 0.5032 × 2 = 98.994', () => {
    const lowest = lowestMean(100, 2, 30, 'g');
    expect(lowest.value).toBeCloseTo(98.994, 3);
    expect(lowest.steps.map(({ unit }) => unit).at(-1)).toBe('g');
    expect(lowest.steps).toHaveLength(3);
  });

  it('is the label itself where all packs are alike', () => {
    expect(lowestMean(100, 0, 30, 'g').value).toBe(100);
  });

  it('is asked for less the more packs are drawn, and the surer one must be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 400 }), fc.integer({ min: 1, max: 400 }), (size, more) => {
        expect(meanFactor(size + more, 0.995).value).toBeLessThan(meanFactor(size, 0.995).value);
        expect(meanFactor(size, 0.999).value).toBeGreaterThan(meanFactor(size, 0.995).value);
      }),
      { numRuns: 30 },
    );
  });
});

describe('a batch of jars, worked by hand', () => {
  // 30 packs of 100 g at 98 and 101 in turn: mean 99.5, deviation 1.5 × √(30/29) = 1.52564, lowest 100 − 0.50318 × 1.52564 = 99.2323.
  it('passes on its mean though most say less than the label, for its spread explains that', () => {
    const check = checkPrepackages(100, 400, false, inTurn(30, 98, 101), 'g');
    expect(check.mean.value).toBeCloseTo(99.5, 9);
    expect(check.lowestMean.value).toBeCloseTo(99.232, 3);
    expect([check.verdict, check.belowT1, check.belowT2]).toEqual(['accepted', 0, 0]);
    expect(check.why).toEqual([
      '0 of 30 below T1: accepted.',
      'None below T2.',
      'The mean reaches what is asked.',
    ]);
  });

  it('fails on the same mean where all packs are alike', () => {
    const check = checkPrepackages(100, 400, false, packs(30, 99.5), 'g');
    expect(check.verdict).toBe('rejected');
    expect(check.why.at(-1)).toBe('The mean is too low.');
  });

  it('that is weighed whole must reach the label on its mean, spread or not', () => {
    expect(checkPrepackages(100, 40, false, inTurn(40, 99, 101), 'g').verdict).toBe('accepted');
    expect(checkPrepackages(100, 40, false, inTurn(40, 99, 100.9), 'g').verdict).toBe('rejected');
  });

  it('asks for a second sample in words, and says how many it takes in all', () => {
    const { verdict, why } = checkPrepackages(100, 2000, false, packs(50, 102, 95, 95, 95), 'g');
    expect(verdict).toBe('second sample');
    expect(why[0]).toBe('3 of 50 below T1: second sample, 100 packs in all.');
  });

  it('says how many lie below T2, and that none may', () => {
    const { why } = checkPrepackages(100, 400, false, packs(30, 102, 90.9, 90), 'g');
    expect(why[1]).toBe('2 below T2: none may be.');
  });

  it('is judged alike in grams and in millilitres, and whatever the order of its packs', () => {
    const drawn = fc.array(fc.integer({ min: 900, max: 1100 }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(drawn, fc.nat({ max: 29 }), (tenths, turn) => {
        const contents = tenths.map((one) => one / 10);
        const turned = [...contents.slice(turn), ...contents.slice(0, turn)];
        const check = checkPrepackages(100, 400, false, contents, 'g');
        const other = checkPrepackages(100, 400, false, turned, 'mL');
        expect([other.verdict, other.belowT1, other.belowT2]).toEqual([
          ...[check.verdict, check.belowT1, check.belowT2],
        ]);
      }),
      { numRuns: 40 },
    );
  });

  it('never has more packs below T2 than below T1, and is not accepted with any below T2', () => {
    const drawn = fc.array(fc.integer({ min: 850, max: 1050 }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(drawn, (tenths) => {
        const check = checkPrepackages(
          100,
          400,
          false,
          tenths.map((one) => one / 10),
          'g',
        );
        expect(check.belowT2).toBeLessThanOrEqual(check.belowT1);
        if (check.belowT2 > 0) expect(check.verdict).toBe('rejected');
      }),
      { numRuns: 40 },
    );
  });
});

describe('packages in the United States (NIST Handbook 133, from memory)', () => {
  it.each([
    [35.9, 3.59],
    [36, 3.6],
    [53.9, 3.6],
    [54, 5.4],
    [250, 12.7],
    [454, 19.9],
    [500, 21.7],
    [1000, 35.3],
  ])('of %d g may be short by %d g', (label, variation) => {
    expect(allowableVariation(label).value).toBeCloseTo(variation, 9);
  });

  it.each([
    [12, 2.200985],
    [24, 2.068658],
    [48, 2.011741],
  ])('the factor of %i is t(0.975) over its root, by any table of t: %d', (size, t) => {
    expect(sampleCorrectionFactor(size).value).toBeCloseTo(t / Math.sqrt(size), 5);
  });

  it('a mean below the label passes where the spread explains it, and is told by both figures', () => {
    // 24 packages of 100 g at 98 and 101: error −0.5; deviation 1.5 √(24/23) = 1.53226, × 0.42226 = 0.64701.
    const check = checkUsPackages(100, inTurn(24, 98, 101));
    expect(check.error.value).toBeCloseTo(-0.5, 9);
    expect(check.limit.value).toBeCloseTo(0.64701, 4);
    expect(check.passes).toBe(true);
    expect(check.why).toEqual([
      'The average is not below the label by more than the sample error limit.',
      '0 short by more than the MAV of 7.2 g; 0 may be.',
    ]);
    const short = checkUsPackages(100, inTurn(24, 97.8, 100.8));
    expect([short.passes, short.why[0]]).toEqual([false, 'The average is too far below the label.']);
  });

  it('one short package of 48 is borne and of 24 is not, however full the others are', () => {
    expect(checkUsPackages(100, packs(48, 110, 92.7)).passes).toBe(true);
    const { passes, why } = checkUsPackages(100, packs(24, 110, 92.7));
    expect([passes, why[1]]).toEqual([false, '1 short by more than the MAV of 7.2 g; 0 may be.']);
  });
});
