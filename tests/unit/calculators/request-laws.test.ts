import fc from 'fast-check';
import { calculate } from '@core/calculators/calculation';
import type { Calculated } from '@core/calculators/calculated';
import { calculateHlb } from '@core/calculators/hlb';
import { BLANK_HLB } from '@core/calculators/hlb-request';
import { calculateHld } from '@core/calculators/hld';
import { BLANK_HLD, BLANK_LINE, type HldRequest } from '@core/calculators/hld-request';
import { BLANK_NEUTRALISE, type NeutraliseRequest } from '@core/calculators/neutralise-request';
import { calculatePreserve } from '@core/calculators/preserve';
import { BLANK_PRESERVE } from '@core/calculators/preserve-request';
import { ORGANIC_ACIDS } from '@core/preservation/organic-acids';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';

const NOTHING = new Map<string, Material>();
const from = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const value = (of: Calculated, key: string): number =>
  of.results.find((one) => one.key === key)?.worked.value ?? NaN;

const oil = (parts: number, eacn: number) => ({ ...BLANK_LINE, name: 'Oil', parts, value: eacn });
const surfactant = (parts: number, cc: number, molarMass: number) => ({
  ...BLANK_LINE,
  ...{ name: 'Surfactant', parts, value: cc, molarMass },
});
const oils = fc.array(fc.tuple(from(0.1, 50), from(-2, 20)), { minLength: 1, maxLength: 4 });
const surfactants = fc.array(fc.tuple(from(0.1, 20), from(-4, 4), from(200, 1200)), {
  minLength: 1,
  maxLength: 3,
});
const systems = fc
  .record({ oils, surfactants, salt: from(0, 10), temperature: from(0, 90) })
  .map(({ oils: some, surfactants: others, salt, temperature }): HldRequest => ({
    ...BLANK_HLD,
    ...{ oils: some.map(([parts, eacn]) => oil(parts, eacn)), salinityPercent: salt, temperature },
    surfactants: others.map(([parts, cc, mass]) => surfactant(parts, cc, mass)),
    ...{ k: 0.15, b: 0.13, cT: 0.06 },
  }));

describe('HLD as the calculator has it', () => {
  it('is that of the formula written out: b·S − K·EACN + cT·(T − 25) + Cc, by mass and by moles', () => {
    fc.assert(
      fc.property(systems, (request) => {
        const found = calculateHld(request, NOTHING);
        const mass = request.oils.reduce((sum, one) => sum + one.parts!, 0);
        const eacn = request.oils.reduce((sum, one) => sum + (one.parts! * one.value!) / mass, 0);
        const moles = request.surfactants.reduce((sum, one) => sum + one.parts! / one.molarMass!, 0);
        const cc = request.surfactants.reduce(
          (sum, one) => sum + ((one.parts! / one.molarMass!) * one.value!) / moles,
          0,
        );
        const hld = 0.13 * request.salinityPercent! - 0.15 * eacn + 0.06 * (request.temperature! - 25) + cc;
        expect(value(found, 'hld')).toBeCloseTo(hld, 9);
        expect(value(found, 'eacn')).toBeCloseTo(eacn, 9);
        expect(value(found, 'cc')).toBeCloseTo(cc, 9);
      }),
    );
  });

  it('at the temperature of inversion is nothing, and of the other sign on the other side', () => {
    fc.assert(
      fc.property(systems, (request) => {
        const zero = value(calculateHld(request, NOTHING), 'zero');
        fc.pre(zero > -100 && zero < 300);
        const at = (temperature: number): number =>
          value(calculateHld({ ...request, temperature }, NOTHING), 'hld');
        expect(at(zero)).toBeCloseTo(0, 6);
        // A non-ionic turns to the oil as it gets warm.
        expect(at(zero + 5)).toBeGreaterThan(0);
        expect(at(zero - 5)).toBeLessThan(0);
      }),
    );
  });

  it('does not mind the size of the batch, the order of lines, nor a line written twice', () => {
    fc.assert(
      fc.property(systems, from(0.01, 100), (request, by) => {
        const hld = value(calculateHld(request, NOTHING), 'hld');
        const other = (part: Partial<HldRequest>): number =>
          value(calculateHld({ ...request, ...part }, NOTHING), 'hld');
        expect(other({ oils: request.oils.map((one) => ({ ...one, parts: one.parts! * by })) })).toBeCloseTo(
          hld,
          9,
        );
        expect(other({ surfactants: [...request.surfactants].reverse() })).toBeCloseTo(hld, 9);
        const [first] = request.oils;
        const halves = { ...first!, parts: first!.parts! / 2 };
        expect(other({ oils: [halves, ...request.oils.slice(1), halves] })).toBeCloseTo(hld, 9);
      }),
      { numRuns: 50 },
    );
  });

  it('of a window says its HLD at both ends, and that it crosses where these have two signs', () => {
    fc.assert(
      fc.property(systems, from(-10, 20), from(1, 40), (request, coldest, wide) => {
        const found = calculateHld({ ...request, coldest, hottest: coldest + wide }, NOTHING);
        const zero = value(found, 'zero');
        fc.pre(Math.abs(zero - coldest) > 0.01 && Math.abs(zero - coldest - wide) > 0.01);
        const crosses = zero > coldest && zero < coldest + wide;
        expect(Math.sign(value(found, 'cold')) !== Math.sign(value(found, 'hot'))).toBe(crosses);
      }),
      { numRuns: 60 },
    );
  });
});

describe('neutralising as the calculator has it', () => {
  const request = fc
    .record({ acid: from(0.1, 5), value_: from(50, 600), base: from(5, 100), share: from(1, 100) })
    .map(({ acid, value_, base, share }): NeutraliseRequest => ({
      ...BLANK_NEUTRALISE,
      ...{ acidPercent: acid, acidValue: value_, baseMolarMass: 39.997, basePercent: base },
      neutralisedPercent: share,
    }));

  it('is one amount by the acid value and by the molar mass that it stands for', () => {
    fc.assert(
      fc.property(request, (one) => {
        const byMass: NeutraliseRequest = {
          ...one,
          ...{ acidKnownBy: 'molar mass', acidActivePercent: 100, acidEquivalents: 1 },
          acidMolarMass: 56_106 / one.acidValue!,
        };
        const [a, b] = [calculate(one, NOTHING), calculate(byMass, NOTHING)];
        expect(value(b, 'percent')).toBeCloseTo(value(a, 'percent'), 9);
        expect(value(b, 'acid-value')).toBeCloseTo(one.acidValue!, 6);
      }),
    );
  });

  it('in two halves is the whole, and in a batch what its per cent say', () => {
    fc.assert(
      fc.property(request, from(1, 10_000), (one, grams) => {
        const whole = calculate({ ...one, batchGrams: grams }, NOTHING);
        const half = calculate({ ...one, neutralisedPercent: one.neutralisedPercent! / 2 }, NOTHING);
        expect(value(half, 'percent')).toBeCloseTo(value(whole, 'percent') / 2, 9);
        expect(value(whole, 'mass')).toBeCloseTo((value(whole, 'percent') * grams) / 100, 6);
      }),
    );
  });

  it('says so where acid and base come to more than the formula, and only there', () => {
    fc.assert(
      fc.property(request, fc.constantFrom(1, 10), (one, weaker) => {
        const asked = {
          ...one,
          basePercent: one.basePercent! / weaker,
          acidPercent: Math.min(99, one.acidPercent! * 20),
        };
        const found = calculate(asked, NOTHING);
        const cautions = found.results[0]!.worked.cautions.join(' ');
        const overfull = value(found, 'percent') + asked.acidPercent > 100;
        expect(cautions.includes('more than the whole formula')).toBe(overfull);
      }),
    );
  });
});

describe('an organic acid as the calculator has it', () => {
  const acids = fc.constantFrom(...ORGANIC_ACIDS.map(({ inci }) => inci));

  it('is undissociated by Henderson and Hasselbalch, at every pH of its table, and falls along it', () => {
    fc.assert(
      fc.property(acids, from(2, 10), from(0.01, 2), (acid, pH, dosePercent) => {
        const found = calculatePreserve({ ...BLANK_PRESERVE, acid, pH, dosePercent }, NOTHING);
        const [first] = found.pKas;
        const share = (at: number): number => 100 / (1 + 10 ** (at - first!.pKa));
        expect(value(found, 'share')).toBeCloseTo(share(pH), 9);
        expect(value(found, 'active')).toBeCloseTo((dosePercent * share(pH)) / 100, 9);
        for (const row of found.rows) {
          expect(row.percent).toBeCloseTo(share(row.pH), 9);
          expect(row.low).toBeLessThanOrEqual(row.percent);
          expect(row.high).toBeGreaterThanOrEqual(row.percent);
          expect(row.active).toBeCloseTo((dosePercent * row.percent) / 100, 9);
        }
        const shares = found.rows.map(({ percent }) => percent);
        expect(shares).toEqual([...shares].sort((a, b) => b - a));
      }),
      { numRuns: 60 },
    );
  });

  it('dosed as its salt acts as less of it does: the same whatever the case its name is written in', () => {
    for (const acid of ['Benzoic Acid', 'Sorbic Acid', 'Salicylic Acid']) {
      const dosed = (dosedAs: 'acid' | 'sodium salt' | 'potassium salt', name = acid): number =>
        value(
          calculatePreserve({ ...BLANK_PRESERVE, acid: name, pH: 5, dosePercent: 0.5, dosedAs }, NOTHING),
          'active',
        );
      expect(dosed('sodium salt')).toBeLessThan(dosed('acid'));
      expect(dosed('potassium salt')).toBeLessThan(dosed('sodium salt'));
      expect(dosed('sodium salt', acid.toUpperCase())).toBe(dosed('sodium salt'));
    }
  });
});

describe('HLB by figures as the calculator has it', () => {
  it('of one ethoxylate by Griffin’s two formulas is one figure: E/5, and 20 × Mh/M', () => {
    fc.assert(
      fc.property(from(1, 99), from(200, 2000), (oxyethylenePercent, molarMass) => {
        const found = calculateHlb(
          {
            ...{ ...BLANK_HLB, way: 'figures', charge: 'non-ionic', oxyethylenePercent, molarMass },
            hydrophilicMolarMass: (molarMass * oxyethylenePercent) / 100,
          },
          NOTHING,
        );
        const values = found.results.map(({ worked }) => worked.value);
        expect(values.length).toBeGreaterThanOrEqual(2);
        for (const one of values) expect(one).toBeCloseTo(oxyethylenePercent / 5, 6);
      }),
    );
  });

  it('of an ionic withholds Griffin’s, and says why', () => {
    const found = calculateHlb(
      { ...BLANK_HLB, way: 'figures', charge: 'anionic', oxyethylenePercent: 30 },
      NOTHING,
    );
    expect(found.results).toEqual([]);
    expect(found.withheld.every(({ why }) => why.length > 20)).toBe(true);
  });

  it.each([
    [{ ...BLANK_HLB, way: 'figures' as const }, 'No figure is entered yet.'],
    [{ ...BLANK_HLB, way: 'smiles' as const }, 'There is no SMILES yet.'],
    [{ ...BLANK_HLB, way: 'groups' as const }, 'No group is counted yet.'],
  ])('asks for what is missing: %#', (request, message) => {
    expect(() => calculateHlb(request, NOTHING)).toThrow(message);
  });
});
