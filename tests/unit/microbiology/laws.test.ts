import fc from 'fast-check';
import {
  CHALLENGE_STANDARDS,
  daysAsked,
  judgeChallengeTest,
  ORGANISM_TYPES,
  type ChallengeStandard,
  type OrganismResult,
  type OrganismType,
} from '@core/microbiology/challenge-test';
import {
  COUNT_GROUPS,
  COUNT_LIMITS,
  judgeCount,
  logReduction,
  percentOfLog,
} from '@core/microbiology/counts';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const ORDER = ['none', 'fail', 'B', 'A', 'pass'];
const rank = (standard: ChallengeStandard, organisms: readonly OrganismResult[]) =>
  ORDER.indexOf(judgeChallengeTest(standard, organisms).verdict);
const of = (type: OrganismType, logReductions: Record<string, number>): OrganismResult => ({
  organism: `a ${type}`,
  type,
  logReductions,
});

/** Tenths of a log, as reports give them. */
const log = fc.integer({ min: -20, max: 60 }).map((tenths) => tenths / 10);
const organism: fc.Arbitrary<OrganismResult> = fc.record({
  organism: fc.constantFrom('E. coli', 'S. aureus', 'C. albicans', 'A. brasiliensis'),
  type: fc.constantFrom(...ORGANISM_TYPES),
  logReductions: fc.record({ '2': log, '7': log, '14': log, '28': log }),
});
const report = fc.array(organism, { minLength: 1, maxLength: 5 });
const standard = fc.constantFrom(...CHALLENGE_STANDARDS);

describe('the verdict on a challenge test', () => {
  it('is that of the worst organism, whatever the order', () => {
    fc.assert(
      fc.property(standard, report, (by, organisms) => {
        const alone = organisms.map((one) => rank(by, [one]));
        expect(rank(by, organisms)).toBe(Math.min(...alone));
        expect(rank(by, [...organisms].reverse())).toBe(rank(by, organisms));
      }),
      { numRuns: 150 },
    );
  });

  it('is never worse where every count fell by the same amount more', () => {
    fc.assert(
      fc.property(standard, report, fc.integer({ min: 1, max: 20 }), (by, organisms, tenths) => {
        const better = organisms.map((one) => ({
          ...one,
          logReductions: Object.fromEntries(
            Object.entries(one.logReductions).map(([day, value]) => [day, value + tenths / 10]),
          ),
        }));
        expect(rank(by, better)).toBeGreaterThanOrEqual(rank(by, organisms));
      }),
      { numRuns: 150 },
    );
  });

  it('says why, for each organism that misses, unless it is the best that there is', () => {
    fc.assert(
      fc.property(standard, report, (by, organisms) => {
        const { verdict, why } = judgeChallengeTest(by, organisms);
        expect(why.length === 0).toBe(verdict === 'A' || verdict === 'pass');
        expect(new Set(why).size).toBe(why.length);
        for (const line of why) expect(organisms.some((one) => line.startsWith(one.organism))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the edges of a criterion', () => {
  // The least reductions of ISO 11930 A and B and of Ph. Eur. A and B (topical), as the published values hold them.
  it.each([
    ['ISO 11930', 'bacterium', { '7': 3, '14': 3, '28': 3 }, 'A', ['7', '14', '28']],
    ['ISO 11930', 'yeast', { '7': 1, '14': 1, '28': 1 }, 'A', ['7', '14', '28']],
    ['ISO 11930', 'mould', { '14': 0, '28': 1 }, 'A', ['14', '28']],
    ['ISO 11930', 'bacterium', { '7': 0, '14': 3, '28': 3 }, 'B', ['14', '28']],
    ['ISO 11930', 'yeast', { '7': 0, '14': 1, '28': 1 }, 'B', ['14', '28']],
    ['ISO 11930', 'mould', { '14': 0, '28': 0 }, 'B', ['14', '28']],
    ['Ph. Eur. 5.1.3', 'bacterium', { '2': 2, '7': 3, '14': 3, '28': 3 }, 'A', ['2', '7']],
    ['Ph. Eur. 5.1.3', 'yeast', { '14': 2, '28': 2 }, 'A', ['14']],
    ['Ph. Eur. 5.1.3', 'bacterium', { '2': 0, '7': 0, '14': 3, '28': 3 }, 'B', ['14']],
    ['Ph. Eur. 5.1.3', 'mould', { '14': 1, '28': 1 }, 'B', ['14']],
    ['USP 51', 'bacterium', { '14': 2, '28': 2 }, 'pass', ['14']],
    ['USP 51', 'mould', { '14': -0.5, '28': -0.5 }, 'pass', ['14', '28']],
  ] as const)('%s, a %s that just meets it: %o', (by, type, reductions, verdict, days) => {
    const held: Readonly<Record<string, number>> = reductions;
    expect(judgeChallengeTest(by, [of(type, held)]).verdict).toBe(verdict);
    // A hundredth less on a day that sets a least misses it; on the days that only forbid growth it does not.
    for (const day of Object.keys(held)) {
      const missed = judgeChallengeTest(by, [of(type, { ...held, [day]: (held[day] ?? 0) - 0.01 })]).verdict;
      expect(missed === verdict, `day ${day}`).toBe(!days.some((one) => one === day));
    }
  });

  it('lets a count stand half a log above the one before, exactly, and no more', () => {
    // Every pair of tenths half a log apart: 1.1 − 0.6 is 0.5000000000000001 in binary, and is still half a log.
    for (let tenths = 30; tenths <= 60; tenths += 1) {
      const before = tenths / 10 + 0.5;
      const rest = { '7': before, '14': before };
      const later = Number((before - 0.5).toFixed(1));
      expect(judgeChallengeTest('ISO 11930', [of('bacterium', { ...rest, '28': later })]).verdict).toBe('A');
      const more = Number((before - 0.6).toFixed(1));
      if (more >= 3)
        expect(judgeChallengeTest('ISO 11930', [of('bacterium', { ...rest, '28': more })]).verdict).toBe(
          'none',
        );
    }
    const yeast = (later: number) =>
      judgeChallengeTest('ISO 11930', [of('yeast', { '7': 1.6, '14': 1.6, '28': later })]);
    expect(yeast(1.1).verdict).toBe('A');
    expect(yeast(1).why[0]).toContain('it grew again between day 14 and day 28, from 1.6 to 1 log');
  });

  it('reads the criteria of the published table', () => {
    const row = z.object({
      criterion: z.string(),
      organisms: z.string(),
      day7: z.number().nullable(),
      day14: z.string(),
      day28: z.string(),
    });
    const { iso11930 } = publishedValues('microbiology', z.object({ iso11930: z.array(row) }));
    const types: Record<string, OrganismType> = {
      bacteria: 'bacterium',
      'C. albicans': 'yeast',
      'A. brasiliensis': 'mould',
    };
    expect(iso11930).toHaveLength(6);
    for (const { criterion, organisms, day7, day14, day28 } of iso11930) {
      const type = types[organisms];
      if (!type) throw new Error(organisms);
      const least = { '14': parseFloat(day14), '28': parseFloat(day28) };
      // Where the table is silent on day 7, a count that has hardly fallen by then does not matter.
      const met = judgeChallengeTest('ISO 11930', [of(type, { ...least, '7': day7 ?? least['14'] - 2 })]);
      expect(met.verdict, `${criterion} ${organisms}`).toBe(criterion);
    }
  });
});

describe('the days of a report', () => {
  it.each(CHALLENGE_STANDARDS)('%s: all that are asked for suffice, and each one is missed', (by) => {
    for (const type of ORGANISM_TYPES) {
      const days = daysAsked(by, type);
      const good = Object.fromEntries(days.map((day) => [day, 0]));
      expect(() => judgeChallengeTest(by, [of(type, good)])).not.toThrow();
      for (const day of days) {
        const { [day]: _, ...without } = good;
        refusal(() => judgeChallengeTest(by, [of(type, without)]), new RegExp(`day ${day} is missing`));
      }
    }
  });

  it('stand in the order of time, and are those that a laboratory knows', () => {
    // Day 10 would sort before day 2 as text.
    expect(daysAsked('Ph. Eur. 5.1.3', 'bacterium')).toEqual(['2', '7', '14', '28']);
    expect(daysAsked('ISO 11930', 'mould')).toEqual(['14', '28']);
    expect(daysAsked('USP 51', 'yeast')).toEqual(['14', '28']);
  });

  it('refuse what is no number, and a report of no organism', () => {
    for (const value of NO_NUMBERS)
      refusal(
        () => judgeChallengeTest('USP 51', [of('bacterium', { '14': value, '28': 3 })]),
        /day 14 is not a number/,
      );
    refusal(() => judgeChallengeTest('ISO 11930', []), /no organism yet/);
  });
});

describe('log reductions and per cent', () => {
  it('are one thing said twice: back and forth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        fc.double({ min: 0.001, max: 8, noNaN: true }),
        (start, fall) => {
          const log10 = logReduction(start, start / 10 ** fall).value;
          expect(log10).toBeCloseTo(fall, 9);
          expect(percentOfLog(log10).value).toBeCloseTo(100 * (1 - 10 ** -fall), 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('add up over two stretches of time, and are negative where it grew', () => {
    const [a, b, c] = [2_400_000, 31_000, 90];
    expect(logReduction(a, b).value + logReduction(b, c).value).toBeCloseTo(logReduction(a, c).value, 12);
    expect(logReduction(100, 1000).value).toBe(-1);
    expect(percentOfLog(-1).value).toBe(-900);
    expect(percentOfLog(0).value).toBe(0);
    // 99.9 % is 3 logs, 99.99 % is 4 (standard texts of microbiology).
    expect(percentOfLog(3).value).toBeCloseTo(99.9, 9);
    expect(percentOfLog(4).value).toBeCloseTo(99.99, 9);
  });

  it('refuse a count of nothing: nothing grew means below the limit of detection', () => {
    refusesEach(['The count at the start', NOT_POSITIVE, (value) => logReduction(value, 10)]);
    refusesEach(['The count later', NOT_POSITIVE, (value) => logReduction(1e6, value)]);
    refusesEach(['The log reduction', [...NO_NUMBERS, 15.1, -15.1], percentOfLog]);
    expect(logReduction(1e6, 10).cautions.join()).toContain('limit of detection');
  });
});

describe('a count against ISO 17516', () => {
  it.each(COUNT_GROUPS)(
    'for “%s” is within up to twice the limit, with a word above the limit itself',
    (group) => {
      const limit = COUNT_LIMITS[group];
      expect(judgeCount(group, limit, true)).toEqual({ verdict: 'within', why: [] });
      expect(judgeCount(group, limit + 1, true)).toMatchObject({
        verdict: 'within',
        why: [expect.stringContaining('Count again')],
      });
      expect(judgeCount(group, 2 * limit, true).verdict).toBe('within');
      expect(judgeCount(group, 2 * limit + 1, true).verdict).toBe('out');
      expect(judgeCount(group, 0, true)).toEqual({ verdict: 'within', why: [] });
    },
  );

  it('is out with a specified organism whatever the count, and tells both faults', () => {
    fc.assert(
      fc.property(fc.constantFrom(...COUNT_GROUPS), fc.integer({ min: 0, max: 5000 }), (group, total) => {
        const { verdict, why } = judgeCount(group, total, false);
        expect(verdict).toBe('out');
        expect(why).toHaveLength(total > 2 * COUNT_LIMITS[group] ? 2 : 1);
        expect(why[0]).toContain('Pseudomonas aeruginosa');
      }),
      { numRuns: 40 },
    );
    refusesEach(['The total count', NEGATIVE, (total) => judgeCount('other', total, true)]);
  });
});
