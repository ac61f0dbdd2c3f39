import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composition, partPpm } from '@core/materials/composition';
import { FIGURE_KINDS, FIGURE_NAMES, figures, figureValue } from '@core/materials/figure';

type Ends = { low: number | null; value: number | null; high: number | null };
const ends = (low: number | null, value: number | null, high: number | null): Ends => ({ low, value, high });
const said = (kind: string, of: Ends): string =>
  figures.safeParse({ [kind]: { ...of, provenance: 'supplier', source: 'leaflet' } }).error?.issues[0]
    ?.message ?? '';

describe('a figure of a material', () => {
  it.each(FIGURE_NAMES)('%s is taken at its believable ends, and refused by name just beyond', (kind) => {
    const { min, max, label } = FIGURE_KINDS[kind];
    const beyond = Math.max(1e-6, Math.abs(max) * 1e-6);
    for (const of of [
      ends(min, null, max),
      ends(null, min, null),
      ends(null, max, null),
      ends(min, min, min),
    ])
      expect(said(kind, of)).toBe('');
    for (const of of [
      ends(null, max + beyond, null),
      ends(min - beyond, null, null),
      ends(null, null, max + beyond),
    ])
      expect(said(kind, of)).toMatch(new RegExp(`^${label.replace(/[()]/g, '\\$&')} must lie between`));
    expect(said(kind, ends(null, null, null))).toBe(`${label}: enter a value, or remove it.`);
    expect(said(kind, ends(null, Number.NaN, null))).not.toBe('');
    expect(said(kind, ends(null, Number.POSITIVE_INFINITY, null))).not.toBe('');
  });

  it('has its lower end below its value below its upper end, whichever of them are known', () => {
    const end = fc.option(fc.integer({ min: 0, max: 40 }));
    fc.assert(
      fc.property(end, end, end, (low, value, high) => {
        const known = [low, value, high].filter((one) => one !== null);
        fc.pre(known.length > 0);
        const rising = known.every((one, at) => at === 0 || (known[at - 1] ?? 0) <= one);
        expect(said('hlb', ends(low, value, high)) === '').toBe(rising);
      }),
    );
  });

  it('computes with its value, else the middle, else the one end that is known, always within its ends', () => {
    expect(figureValue(undefined)).toBeNull();
    expect(figureValue(ends(null, null, null))).toBeNull();
    expect(figureValue(ends(9, 9.8, 10.5))).toBe(9.8);
    expect(figureValue(ends(0, 0, 5))).toBe(0);
    expect(figureValue(ends(4, null, 9))).toBe(6.5);
    expect([figureValue(ends(4, null, null)), figureValue(ends(null, null, 9))]).toEqual([4, 9]);
  });

  it('of a kind that is not known is refused, not kept in silence', () => {
    expect(said('smell', ends(null, 1, null))).not.toBe('');
  });
});

describe('a composition', () => {
  const part = (inci: string, lowPpm: number, highPpm = lowPpm) => ({ inci, lowPpm, highPpm });
  const fault = (parts: unknown): string => composition.safeParse(parts).error?.issues[0]?.message ?? '';

  it.each([
    [[part('Aqua', 1_000_000)], ''],
    [[part('Aqua', 999_999), part('Urea', 1)], ''],
    [[part('Aqua', 600_000, 900_000), part('Urea', 400_000, 900_000)], ''],
    [[part('Aqua', 0)], ''],
    [[], 'A raw material needs at least one INCI name.'],
    [
      [part('Aqua', 1_000_000), part('Urea', 1)],
      'The shares, each at its lowest, add up to more than 100 %. Lower one of them.',
    ],
    [[part('Aqua', 2, 1)], 'The lower end of the range is above the upper end.'],
    [
      [part('Aqua', 1), part('AQUA', 2)],
      'The same INCI name is listed twice. Keep it once, with the summed share.',
    ],
    [[part('Aqua', -1)], 'A share cannot be negative.'],
    [[part('Aqua', 0, 1_000_001)], 'A share cannot be more than 100 %.'],
    [[part('', 1)], 'Give the INCI name.'],
    [
      Array.from({ length: 61 }, (_, at) => part(`X${at}`, 1)),
      'A raw material can hold 60 INCI names at most.',
    ],
  ])('%j: %s', (parts, message) => expect(fault(parts)).toBe(message));

  it('computes with the middle of a range', () => {
    fc.assert(
      fc.property(fc.nat(1_000_000), fc.nat(1_000_000), (a, b) => {
        const middle = partPpm(part('X', Math.min(a, b), Math.max(a, b)));
        expect(middle - Math.min(a, b)).toBe(Math.max(a, b) - middle);
      }),
    );
  });
});
