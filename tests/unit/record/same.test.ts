import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText } from '@core/record/canonical';
import { same } from '@core/record/same';

describe('whether two values of a state say the same', () => {
  it('is answered alike where states are merged and where they are kept', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
        expect(same(one, other)).toBe(canonicalText(one) === canonicalText(other));
        expect(same(one, structuredClone(one))).toBe(true);
      }),
    );
  });

  it('takes nought for nought, whatever its sign', () => {
    expect([same(0, -0), same({ a: [-0] }, { a: [0] })]).toEqual([true, true]);
    expect(canonicalText({ a: [-0] })).toBe(canonicalText({ a: [0] }));
  });

  it('takes nothing for there that every object only inherits', () => {
    expect(same({ a: 1 }, { a: 1, constructor: 'x' })).toBe(false);
    expect(same({ constructor: 'x' }, {})).toBe(false);
    expect(same({ toString: undefined }, {})).toBe(true);
  });
});
