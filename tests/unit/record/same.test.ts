import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameValue } from '@core/record/canonical';
import { same } from '@core/record/same';

describe('whether two values of a state say the same', () => {
  it('is answered alike where states are merged and where they are kept', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
        expect(same(one, other)).toBe(sameValue(one, other));
        expect(same(one, structuredClone(one))).toBe(true);
      }),
    );
  });

  it('takes nought for nought, whatever its sign', () => {
    expect([same(0, -0), sameValue(0, -0), same({ a: [-0] }, { a: [0] })]).toEqual([true, true, true]);
  });
});
