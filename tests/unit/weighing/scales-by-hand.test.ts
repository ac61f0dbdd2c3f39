import { minimumWeight, roundingSd } from '@core/weighing/minimum-weight';
import { permissibleError } from '@core/weighing/permissible-error';
import { describe, expect, it } from 'vitest';

describe('a bench balance, worked by hand', () => {
  // USP 41, from memory: 2 s / limit, s no less than 0.41 d.
  it.each([
    [0.0001, 0.1, 0.082, 'an analytical balance of 0.1 mg weighs from 82 mg on to 0.1 %'],
    [0.001, 0.1, 0.82, 'one of a milligram from 0.82 g'],
    [0.01, 1, 0.82, 'one of a centigram from 0.82 g, to 1 %'],
    [0.1, 1, 8.2, 'a kitchen scale of 0.1 g from 8.2 g, to 1 %'],
    [1, 5, 16.4, 'one of 1 g from 16.4 g, to 5 %'],
  ])('of %d g to %d %% weighs from %d g: %s', (readability, limit, least) => {
    expect(minimumWeight(null, readability, limit, 'g').value).toBeCloseTo(least, 9);
  });

  it('shows which deviation was taken, and tells how to measure it', () => {
    const { steps, cautions, unit } = minimumWeight(0.2, 0.1, 1, 'g');
    expect(steps.map(({ shows }) => shows)).toEqual(['max(0.2, 0.41 × 0.1)', '2 × 0.2 / 0.01']);
    expect(unit).toBe('g');
    expect(cautions.join()).toMatch(/ten weighings.*certificate/);
    expect(roundingSd(0.1, 'mg').unit).toBe('mg');
  });
});

describe('a verified scale, worked by hand (OIML R 76-1, table 6, from memory)', () => {
  it.each([
    ['III', 5, 2_000, 2.5, 'a shop scale of 5 g: 400 e'],
    ['III', 5, 2_505, 5, '501 e'],
    ['III', 20, 60_000, 30, 'a floor scale: 3,000 e'],
    ['II', 0.01, 50, 0.005, '5,000 e, at the end of the first band'],
    ['II', 0.01, 200, 0.01, '20,000 e, at the end of the second'],
    ['IIII', 50, 10_000, 50, '200 e'],
    ['I', 0.001, 100, 0.001, '100,000 e'],
  ] as const)('class %s, e %d g, load %d g: ± %d g (%s)', (accuracy, e, load, error, _which) => {
    const found = permissibleError(accuracy, e, load);
    expect(found.value).toBeCloseTo(error, 12);
    expect(found.steps[0]?.result).toBeCloseTo(load / e, 6);
  });
});
