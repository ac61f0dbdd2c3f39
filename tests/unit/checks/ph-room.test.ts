import { describe, expect, it } from 'vitest';
import { blankTarget } from '@core/formulas/formula';
import { findingsOf, make, range, figure, type Row } from './build';

const water = make('Well', 'Aqua');
const benzoate = make('Salt', 'Sodium Benzoate', {
  functions: ['preservative'],
  figures: { workingPh: range(2, 5.5), pKa: figure(4.19) },
});
const acid = make('Peel', 'Salicylic Acid', { functions: ['active'], figures: { workingPh: range(3, 4.5) } });
const wide = make('Care', 'Niacinamide', { functions: ['active'], figures: { workingPh: range(4, 7) } });
const high = make('Gel', 'Carbomer', { functions: ['thickener'], figures: { workingPh: range(5.5, 10) } });

const at = (phLow: number, phHigh: number) => ({ target: { ...blankTarget(), phLow, phHigh } });
const rows = (...more: Row[]): Row[] => [[water, 90], [benzoate, 0.5], ...more];

describe('what to do about a pH', () => {
  it('says the target that every line works at, not only the one that it speaks of', () => {
    const [one] = findingsOf('working-ph', rows([acid, 1], [wide, 3]), at(6, 7));
    // Salicylic from 3 to 4.5, niacinamide from 4, benzoate to 4.19 + log 9 = 5.14.
    expect(one?.advice).toContain('Set the target within pH 4 to 4.5');
    const [other] = findingsOf('preservative-ph', rows([acid, 1], [wide, 3]), at(6, 7));
    expect(other?.advice).toContain('Set the target within pH 4 to 4.5');
  });

  it('says who stands against each other where no pH suits all', () => {
    const [one] = findingsOf('working-ph', rows([acid, 1], [high, 0.3]), at(6, 7));
    expect(one?.advice).toContain('No pH suits it and Gel: replace one of them');
    expect(one?.advice).not.toContain('Set the target');
  });

  it('offers one where none is given', () => {
    const [one] = findingsOf('preservative-ph', rows([wide, 3]));
    expect(one?.advice).toContain('Set the target within pH 4 to 5.1');
  });
});
