import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ORGANIC_ACIDS, organicAcid } from '@core/preservation/organic-acids';
import { asAcid, undissociatedAmount, undissociatedPercent } from '@core/preservation/undissociated';
import { undissociatedSpread } from '@core/preservation/undissociated-spread';
import { stateAt } from '@core/solutions/charge-balance';
import { NEGATIVE, NO_NUMBERS, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const pKa = fc.double({ min: 2, max: 9, noNaN: true });
const pH = fc.double({ min: 0, max: 14, noNaN: true });

describe('the undissociated share', () => {
  it('is half at the pKa, and its complement as far below as above', () => {
    fc.assert(
      fc.property(pKa, fc.double({ min: 0, max: 2, noNaN: true }), (k, off) => {
        expect(undissociatedPercent(k, k).value).toBe(50);
        const [below, above] = [undissociatedPercent(k, k - off), undissociatedPercent(k, k + off)];
        expect(below.value + above.value).toBeCloseTo(100, 9);
      }),
    );
    // One unit above: 100 / 11; two: 100 / 101.
    expect(undissociatedPercent(4.19, 5.19).value).toBeCloseTo(9.0909, 4);
    expect(undissociatedPercent(4.19, 6.19).value).toBeCloseTo(0.990099, 6);
  });

  it('is what the balance of forms in water says, and falls with pH', () => {
    fc.assert(
      fc.property(pKa, pH, (k, at) => {
        const protolytes = [{ name: 'acid', pKas: [k], charge: 0, concentration: 1 }];
        const water = {
          protolytes,
          strongCation: 0,
          strongAnion: 0,
          temperature: 25,
          activities: 'none',
        } as const;
        const whole = stateAt(water, at, 0).forms[0]?.[0]?.concentration ?? Number.NaN;
        expect(undissociatedPercent(k, at).value).toBeCloseTo(100 * whole, 9);
        if (at < 13.9) expect(undissociatedPercent(k, at + 0.1).value).toBeLessThan(100 * whole);
      }),
    );
  });

  it('of a dose is never more than the dose, and in proportion to it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), pKa, pH, (dose, k, at) => {
        const amount = undissociatedAmount(dose, k, at).value;
        expect(amount).toBeLessThanOrEqual(dose);
        expect(undissociatedAmount(2 * dose, k, at).value).toBeCloseTo(2 * amount, 9);
      }),
    );
    expect(undissociatedAmount(0, 4.2, 5).value).toBe(0);
  });

  it('over published pKas holds the first one’s figure between its ends', () => {
    for (const { pKas, inci } of ORGANIC_ACIDS)
      for (const at of [3, 4.5, 5.5, 7]) {
        const { worked, low, high } = undissociatedSpread(pKas, at);
        expect(worked.value, inci).toBe(undissociatedPercent(pKas[0]?.pKa ?? 0, at).value);
        expect(low).toBeLessThanOrEqual(worked.value);
        expect(high).toBeGreaterThanOrEqual(worked.value);
        expect(worked.sources.length).toBeGreaterThan(2);
      }
    refusal(() => undissociatedSpread([], 5), /no pKa/);
  });

  it('acids are found by their INCI name in any case, and nothing else is', () => {
    expect(organicAcid(' SORBIC acid ')?.inci).toBe('Sorbic Acid');
    for (const none of ['', 'Sorbic', 'Potassium Sorbate', 'Sorbic Acid 2'])
      expect(organicAcid(none)).toBeUndefined();
  });
});

describe('a salt as its acid', () => {
  // Molar masses by IUPAC weights: potassium sorbate 150.218, sorbic acid 112.128; sodium dehydroacetate 190.13, its acid 168.148.
  it.each([
    [0.8, 150.218, 112.128, 0.59715],
    [0.6, 190.13, 168.148, 0.53063],
  ])('%d %% of %d g/mol as %d g/mol is %d %%', (salt, of, as, acid) =>
    expect(asAcid(salt, of, as).value).toBeCloseTo(acid, 4),
  );

  it('and back is the salt', () => {
    const mass = fc.double({ min: 40, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 8, noNaN: true }), mass, mass, (salt, of, as) => {
        expect(asAcid(asAcid(salt, of, as).value, as, of).value).toBeCloseTo(salt, 9);
      }),
    );
  });
});

describe('what is refused', () => {
  const molar = [...NO_NUMBERS, 0, 0.99, 1_000_001];
  const percent = [...NEGATIVE, 100.1];
  it.each([
    ['pKa', [...NO_NUMBERS, -10.1, 20.1], (x: number) => undissociatedPercent(x, 5)],
    ['pH', [...NEGATIVE, 14.1], (x: number) => undissociatedPercent(4, x)],
    ['pH', [...NEGATIVE, 14.1], (x: number) => undissociatedAmount(1, 4, x)],
    ['Dose of the acid', percent, (x: number) => undissociatedAmount(x, 4, 5)],
    ['Dose of the salt', percent, (x: number) => asAcid(x, 144, 122)],
    ['Molar mass of the salt', molar, (x: number) => asAcid(1, x, 122)],
    ['Molar mass of the acid', molar, (x: number) => asAcid(1, 144, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});
