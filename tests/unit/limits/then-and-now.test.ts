import { describe, expect, it } from 'vitest';
import { blankLimit, type Limit } from '@core/limits/limit';
import { lawThenAndNow } from '@core/limits/then-and-now';
import { content, make, phase } from '../checks/build';
import { EXAMPLES, kept } from './law';

const limit = (percent: number, from: string, until = ''): Limit =>
  kept({
    ...blankLimit('Phenoxyethanol'),
    ...{ percent, from, until, regions: ['EU' as const], source: 'invented for this test' },
  });
const material = make('P', 'Phenoxyethanol', { functions: ['preservative'] });
const judge = (percent: number, limits: Limit[], then: string, now: string) =>
  lawThenAndNow(
    content([phase([[material, percent]])]),
    () => material,
    { ...EXAMPLES, limits },
    { then, now },
  );
const counts = (found: ReturnType<typeof judge>) => [
  found.both.length,
  found.onlyThen.length,
  found.onlyNow.length,
  found.coming.length,
];

describe('a version by the law of its day and of today', () => {
  const old = limit(1, '2010-01-01', '2025-12-31');
  const strict = limit(0.5, '2026-01-01');
  it('was lawful on its day, and is not any more', () => {
    expect(counts(judge(0.8, [old, strict], '2025-06-01', '2026-06-01'))).toEqual([0, 0, 1, 0]);
  });
  it('passed an old limit that has ended, and keeps the new one', () => {
    const eased = limit(2, '2026-01-01');
    expect(counts(judge(1.5, [old, eased], '2025-06-01', '2026-06-01'))).toEqual([0, 1, 0, 0]);
  });
  it('shows what is to come apart, and what holds on both days', () => {
    expect(counts(judge(0.8, [old, strict], '2025-06-01', '2025-07-01'))).toEqual([0, 0, 0, 1]);
    expect(counts(judge(1.5, [limit(1, '')], '2025-06-01', '2026-07-01'))).toEqual([1, 0, 0, 0]);
  });
  it('holds on the first and the last day that a limit names', () => {
    expect(counts(judge(1.5, [old], '2025-12-31', '2026-01-01'))).toEqual([0, 1, 0, 0]);
    expect(counts(judge(0.8, [strict], '2025-12-31', '2026-01-01'))).toEqual([0, 0, 1, 0]);
  });
});
