import { describe, expect, it } from 'vitest';
import { calculated } from './worked-figure';

/** Directive 76/211/EEC, Annex I, 2.4; above 10 kg OIML R 87, Table 2. */
describe('what a pack may lack', () => {
  it.each([
    [10, 0.9],
    [50, 4.5],
    [99, 4.5],
    [100, 4.5],
    [200, 9],
    [300, 9],
    [400, 12],
    [500, 15],
    [1000, 15],
    [2000, 30],
    [10_000, 150],
    [12_000, 150],
    [30_000, 300],
  ])('of %d g is %d g', (nominal, tne) => {
    const { results } = calculated({ form: 'pack-limits', values: { nominal } });
    const of = (key: string) => results.find((one) => one.key === key)?.worked.value;
    expect(of('tne')).toBeCloseTo(tne, 9);
    expect(of('t1')).toBeCloseTo(nominal - tne, 9);
    expect(of('t2')).toBeCloseTo(nominal - 2 * tne, 9);
  });
});

/** OIML R 76-1, Table 6, in verification intervals e. */
describe('what a balance may be wrong by', () => {
  it.each([
    ['I', 50_000, 0.5],
    ['I', 50_001, 1],
    ['I', 200_001, 1.5],
    ['II', 5_000, 0.5],
    ['II', 20_000, 1],
    ['II', 20_001, 1.5],
    ['III', 500, 0.5],
    ['III', 2_000, 1],
    ['III', 2_001, 1.5],
    ['IIII', 50, 0.5],
    ['IIII', 200, 1],
    ['IIII', 201, 1.5],
  ])('class %s at %d e: %d e', (accuracy, load, error) => {
    const { results } = calculated({
      form: 'scale-error',
      values: { class: accuracy, e: 0.01, load: load / 100 },
    });
    expect(results[0]?.worked.value).toBeCloseTo(error / 100, 12);
  });
});

/** ICH Q1E, 2.4 and its Appendix A, long-term data of 12 and 24 months at room temperature. */
describe('how far a trend may be drawn out', () => {
  it.each([
    [12, 'no significant change', 'yes', 24],
    [24, 'no significant change', 'yes', 36],
    [12, 'no significant change', 'no', 18],
    [24, 'no significant change', 'no', 30],
    [12, 'significant change, none at intermediate', 'yes', 18],
    [24, 'significant change, none at intermediate', 'yes', 30],
    [12, 'significant change, none at intermediate', 'no', 15],
    [12, 'significant change at intermediate', 'yes', 12],
  ])('%d months, %s, analysed: %s → %d months', (months, accelerated, analysed, to) => {
    const keys = { months, accelerated, analysed };
    expect(calculated({ form: 'extrapolation', values: keys }).results[0]?.worked.value).toBe(to);
  });
});

/** ISO 17516: 100 where skin is tender, else 1,000 CFU a gram; out above twice that, and at any specified microorganism. */
describe('a count of microorganisms', () => {
  it.each([
    ['under 3 years, eye area, mucous membranes', 200, 'absent', true],
    ['under 3 years, eye area, mucous membranes', 201, 'absent', false],
    ['other', 2000, 'absent', true],
    ['other', 2001, 'absent', false],
    ['other', 0, 'found', false],
  ])('%s, %d, specified ones %s', (group, count, specified, good) => {
    const [found] = calculated({ form: 'micro-limit', values: { group, count, specified } }).verdicts ?? [];
    expect(found?.good === false).toBe(!good);
    expect(found?.why.length).toBeGreaterThan(0);
  });
});
