import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { baseToPh } from '@core/solutions/base-to-ph';
import { bufferCapacity, bufferPh, bufferRatio } from '@core/solutions/buffer';
import { ionicStrength } from '@core/solutions/ionic-strength';
import type { Solution } from '@core/solutions/solution';
import { solutionPh } from '@core/solutions/solution-ph';
import { waterActivity, waterActivityOfPercent } from '@core/solutions/water-activity';
import { publishedValues } from '../../reference/published';
import { refusal } from '../working/refusal';

function solution(part: Partial<Solution>): Solution {
  return { protolytes: [], strongCation: 0, strongAnion: 0, temperature: 25, activities: 'none', ...part };
}
const acid = (concentration: number, ...pKas: number[]) => ({ name: 'acid', pKas, charge: 0, concentration });

/** Another way to the pH of a monobasic acid with strong base: the cubic in [H], by Newton from above. */
function cubicPh(ka: number, total: number, base: number): number {
  // pKw at 25 °C by Harned and Owen.
  const kw = 10 ** -(4471 / 298.15 + 0.01706 * 298.15 - 6.0875);
  const f = (h: number) => h ** 3 + (ka + base) * h ** 2 + (ka * base - ka * total - kw) * h - ka * kw;
  const slope = (h: number) => 3 * h ** 2 + 2 * (ka + base) * h + (ka * base - ka * total - kw);
  let h = 1;
  for (let n = 0; n < 200; n += 1) h -= f(h) / slope(h);
  return -Math.log10(h);
}

describe('pH by the balance of charges', () => {
  it('water is neutral, strong acid and base are what they are, and cancel', () => {
    expect(solutionPh(solution({})).pH.value).toBeCloseTo(6.9975, 3);
    expect(solutionPh(solution({ strongAnion: 0.01 })).pH.value).toBeCloseTo(2, 6);
    expect(solutionPh(solution({ strongCation: 0.01 })).pH.value).toBeCloseTo(11.995, 3);
    expect(solutionPh(solution({ strongCation: 1, strongAnion: 1 })).pH.value).toBeCloseTo(6.9975, 3);
  });

  it('agrees with the cubic for any acid with any base', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 11, noNaN: true }),
        fc.double({ min: 1e-5, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        (pKa, total, share) => {
          const got = solutionPh(solution({ protolytes: [acid(total, pKa)], strongCation: share * total })).pH
            .value;
          expect(got).toBeCloseTo(cubicPh(10 ** -pKa, total, share * total), 3);
        },
      ),
    );
  });

  it('falls with acid, rises with base, and an amine’s salt is acidic', () => {
    // TRIS hydrochloride 0.1 mol/L: ½ (8.07 + 1) = 4.535, the textbook's rule.
    const tris = { name: 'amine', pKas: [8.07], charge: 1, concentration: 0.1 };
    expect(solutionPh(solution({ protolytes: [tris], strongAnion: 0.1 })).pH.value).toBeCloseTo(4.535, 2);
    // Free, it is basic: [OH] = √(Kw / Ka × C), 10.53.
    expect(solutionPh(solution({ protolytes: [tris] })).pH.value).toBeCloseTo(10.53, 1);
  });

  it('ionic strength of a salt is that of its ions, whatever the pH', () => {
    const salted = solution({ strongCation: 0.1, strongAnion: 0.1 });
    expect(solutionPh(salted).ionicStrength.value).toBeCloseTo(0.1, 6);
    expect(
      ionicStrength([
        { concentration: 0.2, charge: 1 },
        { concentration: 0.1, charge: -2 },
      ]).value,
    ).toBeCloseTo(0.3, 12);
  });

  // 0.1 mol/L HCl has pH 1.10 by activities (γ ± 0.796; Harned and Owen, from memory), 1.00 by concentration.
  it('activities move a strong acid as measured', () => {
    const { pH } = solutionPh(solution({ strongAnion: 0.1, activities: 'Davies' }));
    expect(pH.value).toBeCloseTo(1.1, 1);
    expect(pH.value).toBeGreaterThan(1.08);
  });

  it('refuses what is no solution', () => {
    refusal(() => solutionPh(solution({ protolytes: [acid(0.1)] })), /no pKa/);
    refusal(() => solutionPh(solution({ protolytes: [acid(0.1, 6, 3)] })), /do not rise/);
    refusal(() => solutionPh(solution({ strongCation: Number.NaN })), /Strong base/);
    refusal(() => solutionPh(solution({ strongCation: Infinity })), /Strong base/);
    refusal(() => solutionPh(solution({ temperature: 120 })), /Temperature/);
    refusal(() => solutionPh(solution({ strongAnion: 5, activities: 'Davies' })), /activities cannot/);
    refusal(() => ionicStrength([{ concentration: 0.1, charge: 0 }]), /charge of 0/);
  });
});

describe('published buffer tables, with Davies’ activities', () => {
  const rows = z.object({ rows: z.array(z.array(z.number())) });
  const tables = publishedValues('solutions', z.object({ mcilvaine: rows, acetatePearse: rows }));

  // The table's own note: computed 0.03 to 0.19 high.
  it.each(tables.mcilvaine.rows.filter(([pH = 0]) => pH < 7.5))(
    'McIlvaine pH %f',
    (pH, phosphate, citric) => {
      const [p, c] = [(0.2 * (phosphate ?? 0)) / 20, (0.1 * (citric ?? 0)) / 20];
      const got = solutionPh(
        solution({
          protolytes: [acid(c, 3.128, 4.761, 6.396), acid(p, 2.148, 7.198, 12.35)],
          strongCation: 2 * p,
          activities: 'Davies',
        }),
      ).pH.value;
      expect(Math.abs(got - (pH ?? 0))).toBeLessThan(0.2);
    },
  );

  it.each(tables.acetatePearse.rows)('acetate, %f mL acid and %f mL salt', (free, salt, pH) => {
    const got = solutionPh(
      solution({
        protolytes: [acid(0.1, 4.756)],
        strongCation: (0.1 * (salt ?? 0)) / ((free ?? 0) + (salt ?? 0)),
        activities: 'Davies',
      }),
    ).pH.value;
    expect(Math.abs(got - (pH ?? 0))).toBeLessThan(0.061);
  });
});

describe('base to a pH', () => {
  it('is the base at which the cubic has that pH, found by halving the base', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 8, noNaN: true }),
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (pKa, total, share) => {
          const pH = cubicPh(10 ** -pKa, total, share * total);
          let [low, high] = [0, total];
          for (let n = 0; n < 40; n += 1) {
            const middle = (low + high) / 2;
            if (cubicPh(10 ** -pKa, total, middle) < pH) low = middle;
            else high = middle;
          }
          expect(baseToPh({ pKas: [pKa], concentration: total }, pH, null).perGroup.value).toBeCloseTo(
            low / total,
            5,
          );
        },
      ),
    );
  });

  it('counts free alkali above the acid, and none below the acid’s own pH', () => {
    // At pH 13 0.1 mol/L of hydroxide is free beside the 0.1 that the acid takes.
    const over = baseToPh({ pKas: [4], concentration: 0.1 }, 13, null);
    expect(over.perGroup.value).toBeCloseTo(2.01, 1);
    refusal(() => baseToPh({ pKas: [3.86], concentration: 0.0222 }, 2.5, null), /acid alone is at pH 2\.7\d/);
    expect(baseToPh({ pKas: [3.86], concentration: 0.0222 }, 2.9, null).alone.value).toBeCloseTo(2.77, 1);
  });

  it('an amine near its pKa takes up half', () => {
    expect(baseToPh({ pKas: [3.86], concentration: 0.05 }, 7.76, 7.76).uptake?.value).toBe(0.5);
    expect(baseToPh({ pKas: [3.86], concentration: 0.05 }, 7.76, null).uptake).toBeNull();
  });
});

describe('buffer equations', () => {
  it('ratio and pH are each other’s inverse', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (pKa, off) => {
          const ratio = bufferRatio(pKa, pKa + off).value;
          expect(bufferPh(pKa, 0.1, 0.1 * ratio).value).toBeCloseTo(pKa + off, 9);
        },
      ),
    );
  });

  it('capacity is the slope of base over pH, by a finite difference of the balance', () => {
    const at = (pH: number) => baseToPh({ pKas: [4.757], concentration: 0.2 }, pH, null).perGroup.value * 0.2;
    expect(bufferCapacity(0.2, 4.757, 4.76).value).toBeCloseTo((at(4.761) - at(4.759)) / 0.002, 3);
  });

  it('refuses an acid or salt of nothing', () => {
    refusal(() => bufferPh(4.76, 0, 0.1), /more than zero/);
    refusal(() => bufferPh(4.76, 0.1, -1), /more than zero/);
  });
});

describe('water activity', () => {
  const table = publishedValues(
    'solutions',
    z.object({
      waterActivity: z.array(
        z.object({ solute: z.string(), aw: z.array(z.number()), molality: z.array(z.number()) }),
      ),
      norrishK: z.array(z.object({ solute: z.string(), k: z.number() })),
    }),
  );

  it.each(['glycerol', 'sucrose'])('of %s follows Scott 1957 within 0.004', (solute) => {
    const k = table.norrishK.find((one) => one.solute === solute)?.k ?? Number.NaN;
    const measured = table.waterActivity.find((one) => one.solute === solute);
    for (const [index, molality] of (measured?.molality ?? []).entries())
      expect(Math.abs(waterActivity({ molality, k }).value - (measured?.aw[index] ?? 0))).toBeLessThan(0.004);
  });

  it('from per cent is that of the molality: 20 % glycerol is 2.715 mol/kg', () => {
    expect(waterActivityOfPercent(20, 92.094, 1.16).value).toBeCloseTo(
      waterActivity({ molality: 2.7146, k: 1.16 }).value,
      5,
    );
    refusal(() => waterActivityOfPercent(100, 92.094, 1.16), /Solute/);
    refusal(() => waterActivity({ molality: -1, k: 0 }), /negative/);
  });
});
