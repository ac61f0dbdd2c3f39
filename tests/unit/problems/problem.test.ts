import { Problem, PROBLEM_CODES } from '@core/problems/problem';
import { badInput, between, finite, nonNegative, positive } from '@core/working/inputs';
import { describe, expect, it } from 'vitest';

describe('an expected failure', () => {
  it('says what happened and what to do, and names no field and no fact unless it has one', () => {
    const one = new Problem({ code: 'not-found', title: 'It is gone.', advice: 'Choose another.' });
    expect(one).toBeInstanceOf(Error);
    expect([one.name, one.message, one.advice, one.code]).toEqual([
      'Problem',
      'It is gone.',
      'Choose another.',
      'not-found',
    ]);
    expect([one.fields, one.facts]).toEqual([[], {}]);
    expect(one.cause).toBeUndefined();
  });

  it('keeps what caused it for whoever looks for a fault, out of its words', () => {
    const cause = new SyntaxError('at byte 7');
    const one = new Problem(
      { code: 'invalid-input', title: 'It cannot be read.', advice: 'Save it again.' },
      { cause },
    );
    expect(one.cause).toBe(cause);
    expect(`${one.message} ${one.advice}`).not.toContain('byte');
  });

  it('has a code of its own for each kind, in small letters', () => {
    expect(new Set(PROBLEM_CODES).size).toBe(PROBLEM_CODES.length);
    for (const code of PROBLEM_CODES) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });
});

describe('numbers that are refused', () => {
  const refused = (attempt: () => unknown): Problem => {
    try {
      attempt();
    } catch (problem) {
      return problem as Problem;
    }
    throw new Error('It was taken.');
  };
  it.each<[string, () => unknown]>([
    ['zero', () => positive(0, 'The dose')],
    ['less than zero', () => positive(-1, 'The dose')],
    ['less than nothing', () => nonNegative(-0.001, 'The dose')],
    ['no number', () => finite(NaN, 'The dose')],
    ['infinity', () => finite(Infinity, 'The dose')],
    ['infinity where more than zero is asked', () => positive(Infinity, 'The dose')],
    ['below a range', () => between(-1, 0, 100, 'The dose', '%')],
    ['above a range', () => between(101, 0, 100, 'The dose', '%')],
    ['no number in a range', () => between(NaN, 0, 100, 'The dose', '%')],
  ])('%s, by what it is called', (_, attempt) => {
    const problem = refused(attempt);
    expect(problem.code).toBe('invalid-input');
    expect(problem.message).toContain('The dose');
    expect(problem.advice).not.toBe('');
  });

  it('those at an end of their range are taken as they are', () => {
    expect([
      between(0, 0, 100, 'x', '%'),
      between(100, 0, 100, 'x', '%'),
      nonNegative(0, 'x'),
      positive(1e-9, 'x'),
      finite(-5, 'x'),
    ]).toEqual([0, 100, 0, 1e-9, -5]);
  });

  it('a field is named by its path, so that the screen can mark it', () => {
    expect(badInput('No pH.', 'Enter it.', 'pH').fields).toEqual([{ path: 'pH', message: 'No pH.' }]);
    expect(badInput('No pH.', 'Enter it.').fields).toEqual([]);
    expect(badInput('No pH.', 'Enter it.', 'pH', { missing: true }).facts).toEqual({ missing: true });
  });
});
