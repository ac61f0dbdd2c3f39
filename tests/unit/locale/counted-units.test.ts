import { calculateForm } from '@core/calculators/form-calculation';
import { count, unitWords } from '@core/locale/words';
import { withSubscripts } from '@core/structure/subscripts';
import { describe, expect, it } from 'vitest';

describe('one of something', () => {
  it('has its unit in the singular where the unit is a word, and signs stay as they are', () => {
    expect(unitWords(1, 'months')).toBe('month');
    expect(unitWords('1', 'parts')).toBe('part');
    expect(unitWords(1.5, 'months')).toBe('months');
    expect(unitWords(1, 'g')).toBe('g');
    expect(unitWords(1, 'mPa·s')).toBe('mPa·s');
    expect(unitWords('Squalane', 'parts')).toBe('parts');
    expect(unitWords(1)).toBe('');
  });

  it('is told so among what goes into a calculation', () => {
    const rows = [0, 1, 3].map((month) => ({ month, reading: 100 - month }));
    const { given } = calculateForm({
      of: 'form',
      form: 'trend-crossing',
      values: { limit: 90 },
      rows,
    });
    const told = given.map(({ value }) => String(value)).filter((value) => value.includes('month'));
    expect(told.map((value) => /time (\d+ months?)/.exec(value)?.[1])).toEqual([
      '0 months',
      '1 month',
      '3 months',
    ]);
  });

  it('and many are written as the region writes numbers', () => {
    expect(count(1, 'batch')).toBe('1 batch');
    expect(count(5000, 'raw material')).toBe('5,000 raw materials');
    expect(count(5000, 'raw material', 'de-DE')).toBe('5.000 raw materials');
  });
});

describe('a chemical formula as it is read', () => {
  it.each([
    ['C21H42O4', 'C₂₁H₄₂O₄'],
    ['-(CH2CH2O)- oxyethylene', '-(CH₂CH₂O)- oxyethylene'],
    ['Al2(SO4)3', 'Al₂(SO₄)₃'],
    ['CuSO4·5H2O', 'CuSO₄·5H₂O'],
    ['ester, sorbitan ring', 'ester, sorbitan ring'],
  ])('%s has its counts lowered', (written, read) => expect(withSubscripts(written)).toBe(read));
});
