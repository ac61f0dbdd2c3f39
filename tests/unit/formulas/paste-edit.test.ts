import type { FormulaContent, FormulaLine } from '@core/formulas/formula';
import { addPasted } from '@renderer/formulas/paste-edit';
import { describe, expect, it } from 'vitest';

const line = (id: string, toHundred = false): FormulaLine => ({
  ...{ id, materialId: `of ${id}`, ppm: 10_000, toHundred, note: '' },
});
const formula = (...lines: FormulaLine[]): FormulaContent =>
  ({
    phases: [
      { id: 'a', title: '', temperatureC: null, lines },
      { id: 'b', title: '', temperatureC: null, lines: [] },
    ],
  }) as unknown as FormulaContent;
const linesOf = (content: FormulaContent): string[][] =>
  content.phases.map((phase) => phase.lines.map(({ id, toHundred }) => id + (toHundred ? ' q.s.' : '')));

describe('pasted lines', () => {
  it('come behind those of the phase, in their order', () => {
    const edit = addPasted(
      'a',
      ['x', 'y'].map((id) => ({ line: line(id), phase: null })),
      () => 'new',
    );
    expect(linesOf(edit(formula(line('one'))))).toEqual([['one', 'x', 'y'], []]);
  });

  it('go to the phases that they name, which are made where the formula has them not', () => {
    const pasted = [
      { line: line('x'), phase: 'B' },
      { line: line('y'), phase: 'F' },
      { line: line('z'), phase: 'F' },
      { line: line('w'), phase: null },
    ];
    const content = addPasted('a', pasted, () => 'new')(formula());
    expect(linesOf(content)).toEqual([['w'], ['x'], ['y', 'z']]);
    expect(content.phases[2]?.id).toBe('new');
  });

  it('leave one line q.s. to 100: the one that stands there, else the first of them', () => {
    const pasted = ['x', 'y'].map((id) => ({ line: line(id, true), phase: null }));
    const edit = addPasted('a', pasted, () => 'new');
    expect(linesOf(edit(formula(line('one', true))))).toEqual([['one q.s.', 'x', 'y'], []]);
    expect(linesOf(edit(formula()))).toEqual([['x q.s.', 'y'], []]);
  });
});
