import { describe, expect, it } from 'vitest';
import { show, showTerm } from '@core/working/show';

describe('numbers in a working', () => {
  it.each([
    [0, '0'],
    [12.027027, '12.027'],
    [-0.475, '−0.475'],
    [100, '100'],
    [56_106, '56106'],
    [4.0875e-8, '4.0875 × 10^−8'],
    [1e12, '1 × 10^12'],
  ])('%s reads %s', (value, text) => {
    expect(show(value)).toBe(text);
  });

  it('puts a negative term in brackets', () => {
    expect(showTerm(-2)).toBe('(−2)');
    expect(showTerm(2)).toBe('2');
  });
});
