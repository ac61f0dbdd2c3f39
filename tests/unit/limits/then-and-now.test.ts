import { describe, expect, it } from 'vitest';
import { blankLimit, type Limit } from '@core/limits/limit';
import type { Law } from '@core/limits/law';
import { lawChanges } from '@core/limits/law-changes';
import { lawAsItWas } from '@core/limits/law-then';
import { contentsOf } from '@core/limits/contents';
import { substanceIndex } from '@core/substances/substance-index';
import { lawThenAndNow } from '@core/limits/then-and-now';
import { content, make, phase } from '../checks/build';
import { EXAMPLES, kept } from './law';

const limit = (percent: number, from: string, until = ''): Limit =>
  kept({
    ...blankLimit('Phenoxyethanol'),
    ...{ percent, from, until, regions: ['EU' as const], source: 'invented for this test' },
  });
const material = make('P', 'Phenoxyethanol', { functions: ['preservative'] });
const law = (limits: Limit[]): Law => ({ ...EXAMPLES, limits });
const judge = (percent: number, limits: Limit[], then: string, now: string, were = limits) =>
  lawThenAndNow(
    content([phase([[material, percent]])]),
    () => material,
    { then: law(were), now: law(limits) },
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

describe('a limit that was edited after a version was recorded', () => {
  const was = limit(1, '');
  const is = { ...was, percent: 0.5, revision: 2, checked: 'checked' as const };
  it('judges the day of the version as it stood then', () => {
    expect(counts(judge(0.8, [is], '2026-02-01', '2026-06-01', [was]))).toEqual([0, 0, 1, 0]);
    expect(counts(judge(0.8, [was], '2026-02-01', '2026-06-01', [is]))).toEqual([0, 1, 0, 0]);
  });
  it('counts where it was taken out since, and not yet where it was entered since', () => {
    expect(counts(judge(1.5, [], '2026-02-01', '2026-06-01', [was]))).toEqual([0, 1, 0, 0]);
    expect(counts(judge(1.5, [was], '2026-02-01', '2026-06-01', []))).toEqual([0, 0, 1, 0]);
  });

  const others = EXAMPLES.limits.filter(({ subject }) => subject !== 'Phenoxyethanol');
  const changesTo = (now: Limit[], then: Limit[]) => {
    const laws = { then: law([...others, ...then]), now: law([...others, ...now]) };
    const held = contentsOf([{ lineId: 'a', material, ppm: 8000 }], substanceIndex(laws.now.substances));
    return lawChanges(laws, [held], 'en-GB');
  };
  it('is named with what of it changed, and not with how far it was checked', () => {
    expect(changesTo([is], [was])).toMatchObject([
      {
        name: 'Phenoxyethanol',
        happened: 'changed',
        fields: [{ label: 'Limit', before: '1\u00a0% of the product' }],
      },
    ]);
    expect(changesTo([{ ...was, checked: 'checked' }], [was])).toEqual([]);
    expect(changesTo([], [was])).toMatchObject([{ happened: 'removed', fields: [] }]);
    expect(changesTo([is], [])).toMatchObject([{ happened: 'entered' }]);
  });
  it('says nothing where it is about nothing in the formula', () => {
    const other = { ...was, subject: 'Salicylic Acid' };
    expect(changesTo([{ ...other, percent: 2 }], [other])).toEqual([]);
    // One that was about it, and is about another now, still concerns it.
    expect(changesTo([other], [was]).map(({ happened }) => happened)).toEqual(['changed']);
  });
  it('is put together from what is and what was otherwise', () => {
    const now = law([is, ...others]);
    expect(lawAsItWas(now, { was: { substances: [], limits: [was] }, since: [] }).limits).toEqual([
      ...others,
      was,
    ]);
    expect(lawAsItWas(now, { was: { substances: [], limits: [] }, since: [is.id] }).limits).toEqual(others);
  });
});
