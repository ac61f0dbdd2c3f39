import { movedOnes } from '@core/formulas/moved-ones';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('what was moved in a list', () => {
  it('is nothing in a list that keeps its order, gaps or not', () => {
    expect(movedOnes([])).toEqual([]);
    expect(movedOnes([0, 2, 5])).toEqual([false, false, false]);
  });

  it('is one item when one was taken elsewhere, and the others keep their order always', () => {
    const lists = fc.uniqueArray(fc.nat(200), { minLength: 3, maxLength: 40 });
    fc.assert(
      fc.property(lists, fc.nat(), fc.nat(), (list, from, to) => {
        const rest = [...list].sort((a, b) => a - b);
        const [taken] = rest.splice(from % rest.length, 1);
        rest.splice(to % (rest.length + 1), 0, taken ?? 0);
        expect(movedOnes(rest).filter(Boolean).length).toBeLessThanOrEqual(1);
        const kept = list.filter((_, at) => !movedOnes(list)[at]);
        expect(kept).toEqual([...kept].sort((a, b) => a - b));
      }),
    );
  });
});
