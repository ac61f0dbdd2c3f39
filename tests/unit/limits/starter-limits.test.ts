import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import { limitContent } from '@core/limits/limit';
import { describe, expect, it } from 'vitest';

describe('the starter set of limits', () => {
  it('may be entered as it is', () => {
    for (const one of STARTER_LIMITS)
      expect(limitContent.safeParse(one).error?.issues ?? [], `${one.subject} ${one.source}`).toEqual([]);
    expect(STARTER_LIMITS.every(({ checked }) => checked === 'example: check the current law')).toBe(true);
  });
});
