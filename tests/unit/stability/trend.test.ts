import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { extrapolation } from '@core/stability/extrapolation';
import { crossing, shelfLife } from '@core/stability/trend';
import { Problem } from '@core/problems/problem';
import { publishedValues } from '../../reference/published';

const { dataSets } = publishedValues(
  'stability-more',
  z.object({
    dataSets: z.array(
      z.object({
        set: z.string(),
        months: z.array(z.number()),
        batches: z.array(z.array(z.number())).optional(),
        replicates: z.array(z.array(z.number())).optional(),
        limit: z.number(),
        computedShelfLives: z.array(z.number()).optional(),
        computedShelfLife: z.number().optional(),
      }),
    ),
  }),
);

describe('shelf life by the confidence limit of the mean', () => {
  for (const { set, months, batches = [], limit, computedShelfLives = [] } of dataSets)
    it.each(batches.map((values, index) => [index + 1, values, computedShelfLives[index]] as const))(
      `${set}, batch %i`,
      (_batch, values, wanted) => {
        expect(shelfLife(months, values, limit, 0.95, 'decreasing').value).toBeCloseTo(wanted ?? 0, 1);
      },
    );

  it('takes replicates as readings of one time (Bolton and Bon)', () => {
    const tablets = dataSets.find(({ replicates }) => replicates);
    const times =
      tablets?.replicates?.flatMap((row, index) => row.map(() => tablets.months[index] ?? 0)) ?? [];
    const values = tablets?.replicates?.flat() ?? [];
    expect(shelfLife(times, values, 45, 0.95, 'decreasing').value).toBeCloseTo(
      tablets?.computedShelfLife ?? 0,
      1,
    );
  });

  const times = [0, 3, 6, 9, 12];
  const falling = [100, 98.5, 97.2, 95.4, 94.1];

  it('is the same mirrored: a growing impurity under an upper limit', () => {
    const rising = falling.map((one) => 200 - one);
    const down = shelfLife(times, falling, 90, 0.95, 'decreasing').value;
    expect(shelfLife(times, rising, 110, 0.95, 'increasing').value).toBeCloseTo(down, 8);
  });

  it('is shorter where both ways are possible, and always before the line itself crosses', () => {
    const one = shelfLife(times, falling, 90, 0.95, 'decreasing').value;
    expect(shelfLife(times, falling, 90, 0.95, 'either').value).toBeLessThan(one);
    expect(one).toBeLessThan(crossing(times, falling, 90).value);
    // Two-sided 90 % is one-sided 95 %.
    expect(shelfLife(times, falling, 90, 0.9, 'either').value).toBeCloseTo(one, 8);
  });

  it('refuses what is out from the start, what never gets there, and readings at one time', () => {
    expect(() => shelfLife(times, falling, 101, 0.95, 'decreasing')).toThrow(Problem);
    expect(() => shelfLife(times, [90, 95, 100, 105, 110], 50, 0.95, 'decreasing')).toThrow(Problem);
    expect(() => shelfLife([3, 3, 3], [1, 2, 3], 0, 0.95, 'decreasing')).toThrow(Problem);
    expect(() => crossing(times, falling, 120)).toThrow(Problem);
  });
});

// ICH Q1E, flow chart (from memory; the rules stand in stability-more.json).
describe('how far beyond the data', () => {
  it.each([
    [6, 'no significant change', true, 12],
    [24, 'no significant change', true, 36],
    [12, 'no significant change', false, 18],
    [24, 'no significant change', false, 30],
    [6, 'significant change, none at intermediate', true, 9],
    [24, 'significant change, none at intermediate', false, 27],
    [12, 'significant change at intermediate', true, 12],
  ] as const)('%i months, %s, analysed %s: %i', (months, accelerated, analysed, most) => {
    expect(extrapolation(months, accelerated, analysed).value).toBe(most);
  });
});
