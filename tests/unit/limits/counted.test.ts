import fc from 'fast-check';
import { isBroken, type Judged } from '@core/limits/judged';
import { limitsWithoutSubject } from '@core/limits/judge';
import type { Law } from '@core/limits/law';
import type { Limit } from '@core/limits/limit';
import { shareOfLimit } from '@core/limits/share-of-limit';
import type { Material } from '@core/materials/material';
import { blankSubstance } from '@core/substances/substance';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { law, limit, SUBSTANCES } from './acids';
import { EXAMPLES, judged, kept, situation, type Line } from './law';

const share = fc.integer({ min: 0, max: 200 }).map((hundredths) => hundredths / 100);

describe('a limit by what a substance is for', () => {
  const as = (inci: string, functions: Material['functions']): Material => make(inci, inci, { functions });
  const other = limit('Acids', { of: 'group', purpose: 'other than preservative', percent: 0.1 });
  const preserving = limit('Acids', { of: 'group', purpose: 'preservative', percent: 0.1 });

  it('counts each substance of a group by what its own lines are for', () => {
    const rows: Line[] = [
      [as('Benzoic Acid', ['preservative']), 0.5],
      [as('Sorbic Acid', ['fragrance']), 0.5],
    ];
    const names = (one: Limit): string[] =>
      judged(rows, situation(), law(one)).flatMap(({ counted }) =>
        counted.map(({ substance }) => substance.name),
      );
    expect(names(other)).toEqual(['Sorbic Acid']);
    expect(names(preserving)).toEqual(['Benzoic Acid']);
  });

  it('counts all of a substance once one line of it is for that: what preserves does so wherever it comes from', () => {
    const rows: Line[] = [
      [as('Benzoic Acid', ['preservative']), 0.06],
      [as('Benzoic Acid', ['fragrance']), 0.06],
    ];
    expect(judged(rows, situation(), law(preserving))[0]).toMatchObject({ verdict: 'above' });
    expect(judged(rows.slice(1), situation(), law(preserving))).toEqual([]);
  });
});

describe('what cannot be counted as the limit asks', () => {
  const sorbic = make('A', 'Sorbic Acid');
  it('is counted as it is, and says so: no equivalent, no molar mass, no such substance', () => {
    const asBenzoic = limit('Sorbic Acid', { expressedAs: 'Benzoic Acid' });
    const [one] = judged([[sorbic, 0.5]], situation(), law(asBenzoic));
    expect(one).toMatchObject({ total: { high: 0.5 }, verdict: 'within' });
    expect(one!.cautions).toEqual([
      'how much Benzoic Acid one molecule of Sorbic Acid holds is not recorded, so it counts as it is',
    ]);
    const unknown = limit('Sorbic Acid', { expressedAs: 'Unobtainic Acid' });
    expect(judged([[sorbic, 0.5]], situation(), law(unknown))[0]!.cautions[0]).toBe(
      'It is to be counted as Unobtainic Acid, which is not in the table of substances: each counts as it is. Add it, or correct the limit.',
    );
    const salt = kept({
      ...blankSubstance('Mystery Salt'),
      equivalents: [{ countedAs: 'Benzoic Acid', perMole: 1 }],
    });
    const asked: Law = {
      substances: [...SUBSTANCES, salt],
      limits: [limit('Mystery Salt', { expressedAs: 'Benzoic Acid' })],
    };
    expect(judged([[make('M', 'Mystery Salt'), 0.5]], situation(), asked)[0]!.cautions).toEqual([
      'the molar mass of Mystery Salt is not recorded, so Mystery Salt counts as it is',
    ]);
  });

  it('is told apart: limits about what no substance of the table is', () => {
    const lost = [limit('Unobtainic Acid'), limit('No such group', { of: 'group' })];
    expect(
      limitsWithoutSubject(law(...lost, limit('Acids', { of: 'group' }))).map(({ subject }) => subject),
    ).toEqual(['Unobtainic Acid', 'No such group']);
    expect(limitsWithoutSubject(EXAMPLES)).toEqual([]);
  });
});

describe('a share of a limit', () => {
  it('is the sum over the limit, by factors', () => {
    const some = fc.array(fc.record({ percent: share, factor: fc.double({ min: 0, max: 3, noNaN: true }) }));
    fc.assert(
      fc.property(some, fc.integer({ min: 1, max: 500 }), (substances, hundredths) => {
        const most = hundredths / 100;
        const sum = substances.reduce((total, one) => total + one.percent * one.factor, 0);
        const { total, shareOfLimit: of, verdict } = shareOfLimit(substances, most);
        expect(total).toBeCloseTo(sum, 9);
        expect(of).toBeCloseTo((100 * sum) / most, 6);
        expect(shareOfLimit([...substances].reverse(), most).total).toBeCloseTo(total, 9);
        if (Math.abs(sum - most) > 1e-6) expect(verdict).toBe(sum > most ? 'above' : 'within');
      }),
    );
  });

  it('takes ten tenths for a whole, though they do not sum to one in binary', () => {
    const tenths = Array.from({ length: 10 }, () => ({ percent: 0.1, factor: 1 }));
    expect(shareOfLimit(tenths, 1).verdict).toBe('within');
    expect(shareOfLimit(tenths, 1, true).verdict).toBe('above');
    expect(shareOfLimit([{ percent: 0.1, factor: 3 }], 0.3).verdict).toBe('within');
  });

  it('refuses what is no share and what is no limit', () => {
    expect(() => shareOfLimit([{ percent: -0.1, factor: 1 }], 1)).toThrow('A share');
    expect(() => shareOfLimit([{ percent: 0.1, factor: -1 }], 1)).toThrow('A factor');
    expect(() => shareOfLimit([], 0)).toThrow('The limit');
  });
});

describe('what must be done about', () => {
  it.each([
    [{ verdict: 'within' }, false],
    [{ verdict: 'notice' }, false],
    [{ verdict: 'cannot tell' }, false],
    [{ verdict: 'above' }, true],
    [{ verdict: 'may be above' }, true],
    [{ verdict: 'below least' }, true],
    [{ verdict: 'within', ph: 'outside' }, true],
    [{ verdict: 'within', ph: 'unknown' }, false],
    [{ verdict: 'within', forbiddenTo: ['children under 3 years'] }, true],
  ] as [Partial<Judged>, boolean][])('%j: %s', (parts, broken) => {
    expect(isBroken({ ph: null, forbiddenTo: [], ...parts } as unknown as Judged)).toBe(broken);
  });

  it('users by whom it must not be used are those that the formula names', () => {
    const children = limit('Benzoic Acid', { notForUsers: ['children under 3 years', 'pregnancy'] });
    const at = (users: ('children under 3 years' | 'adults')[]) =>
      judged([[make('A', 'Benzoic Acid'), 0.1]], situation({}, { users }), law(children))[0]!.forbiddenTo;
    expect([at([]), at(['adults']), at(['children under 3 years', 'adults'])]).toEqual([
      [],
      [],
      ['children under 3 years'],
    ]);
  });
});
