import { sharesOf, totalPercent, withShare, withTotal } from '@core/emulsions/bench/shares';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const levels = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 2, maxLength: 6 });
const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

describe('shares of a system', () => {
  it('a drag keeps the total, gives the asked share, and leaves the others in proportion', () => {
    fc.assert(
      fc.property(levels, fc.nat(5), fc.double({ min: 0, max: 100, noNaN: true }), (before, at, share) => {
        const index = at % before.length;
        const after = withShare(before, index, share);
        expect(sum(after)).toBeCloseTo(sum(before), 8);
        if (sum(before) > 1e-6) expect(sharesOf(after)[index]).toBeCloseTo(share, 6);
        expect(after.every((level) => level >= 0)).toBe(true);
      }),
    );
  });

  it('others at nothing share alike, so that a drag back from 100 % is never stuck', () => {
    expect(withShare([4, 0, 0], 0, 50)).toEqual([2, 1, 1]);
  });

  it('another total keeps the ratio', () => {
    expect(withTotal([2, 1], 6)).toEqual([4, 2]);
    expect(withTotal([0, 0], 6)).toEqual([3, 3]);
  });

  it('refuses what no formula can hold', () => {
    expect(() => withTotal([1, 1], 101)).toThrow('must lie between 0 and 100');
    expect(() => withTotal([1, 1], -1)).toThrow('must lie between 0 and 100');
    expect(() => withShare([1, 1], 0, 120)).toThrow('must lie between 0 and 100');
  });

  it('adds up without binary noise', () => {
    expect(totalPercent([0.1, 0.2])).toBe(0.3);
  });
});
