import { describe, expect, it } from 'vitest';
import { judgeChallengeTest, type OrganismResult } from '@core/microbiology/challenge-test';
import { judgeCount } from '@core/microbiology/counts';
import { krevelenParameters } from '@core/solubility/from-groups';
import { Problem } from '@core/problems/problem';

const bacterium = (logReductions: OrganismResult['logReductions']): OrganismResult => ({
  organism: 'E. coli',
  type: 'bacterium',
  logReductions,
});
const mould = (logReductions: OrganismResult['logReductions']): OrganismResult => ({
  organism: 'A. brasiliensis',
  type: 'mould',
  logReductions,
});

describe('a challenge test', () => {
  it('fails, whatever fell, when the count rises again by more than half a log', () => {
    const rising = bacterium({ '7': 4.5, '14': 4.5, '28': 3.2 });
    expect(judgeChallengeTest('ISO 11930', [rising])).toMatchObject({ verdict: 'none' });
    expect(judgeChallengeTest('ISO 11930', [bacterium({ '7': 4.5, '14': 4.5, '28': 4 })]).verdict).toBe('A');
    expect(judgeChallengeTest('USP 51', [rising]).verdict).toBe('fail');
  });

  it('lets moulds stand still for ISO 11930 B, not for A', () => {
    expect(judgeChallengeTest('ISO 11930', [mould({ '14': 0.2, '28': 0.3 })]).verdict).toBe('B');
    expect(judgeChallengeTest('ISO 11930', [mould({ '14': 0.2, '28': 1 })]).verdict).toBe('A');
    expect(judgeChallengeTest('ISO 11930', [mould({ '14': -0.6, '28': 0 })]).verdict).toBe('none');
  });

  it('asks for the days of its standard: day 2 for A of the pharmacopoeia', () => {
    expect(() => judgeChallengeTest('Ph. Eur. 5.1.3', [bacterium({ '7': 3, '14': 3, '28': 3 })])).toThrow(
      /day 2/,
    );
    expect(
      judgeChallengeTest('Ph. Eur. 5.1.3', [bacterium({ '2': 1, '7': 2, '14': 3, '28': 3 })]).verdict,
    ).toBe('B');
  });

  it('says which organism misses what', () => {
    const found = judgeChallengeTest('ISO 11930', [bacterium({ '7': 2.9, '14': 3, '28': 3 })]);
    expect(found).toEqual({ verdict: 'B', why: ['E. coli: 2.9 log on day 7, at least 3 asked'] });
  });
});

describe('a microbiological limit', () => {
  it('is out only above twice the limit, and with any specified organism', () => {
    const eye = 'under 3 years, eye area, mucous membranes';
    expect(judgeCount(eye, 200, true).verdict).toBe('within');
    expect(judgeCount(eye, 201, true).verdict).toBe('out');
    expect(judgeCount('other', 0, false).verdict).toBe('out');
    expect(judgeCount('other', 1600, true).why[0]).toContain('spread of the method');
  });
});

describe('parameters from groups', () => {
  it('refuse a group without a published polar part, rather than take nothing for it', () => {
    expect(() => krevelenParameters({ CH3: 1, NH2: 1 }, 60)).toThrow(Problem);
    expect(() => krevelenParameters({ unknown: 1 }, 60)).toThrow(/has no group/);
    expect(() => krevelenParameters({}, 60)).toThrow(Problem);
  });
});
