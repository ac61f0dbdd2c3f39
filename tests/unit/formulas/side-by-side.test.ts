import { blankProductFile } from '@core/formulas/product-file';
import { blankTarget, type FormulaContent } from '@core/formulas/formula';
import { sharedFacts, sharedLines } from '@core/formulas/side-by-side';
import { describe, expect, it } from 'vitest';

function formula(lines: [string, number, boolean?][], more: Partial<FormulaContent> = {}): FormulaContent {
  const phase = (id: string, own: typeof lines) => ({
    ...{ id, title: '', temperatureC: null },
    lines: own.map(([materialId, ppm, toHundred = false], at) => ({
      ...{ id: `${id}${at}`, materialId, ppm, toHundred, note: '' },
    })),
  });
  return {
    ...{ code: '', name: '', productType: 'o/w emulsion', use: 'leave-on', purpose: '', notes: '' },
    ...{ phases: [phase('a', lines.slice(0, 2)), phase('b', lines.slice(2))] },
    ...{ steps: [], target: blankTarget(), accepted: [], ...blankProductFile(), ...more },
  } as FormulaContent;
}

describe('formulas side by side', () => {
  const one = formula([
    ['water', 0, true],
    ['oil', 200_000],
    ['oil', 50_000],
  ]);
  const other = formula([
    ['oil', 250_000],
    ['wax', 10_000],
  ]);

  it('tell each material once, with its whole share in each, the q.s. line’s worked out', () => {
    const lines = sharedLines([one, other]);
    expect(lines.map(({ materialId, differs }) => [materialId, differs])).toEqual([
      ['water', true],
      ['oil', false],
      ['wax', true],
    ]);
    expect(lines[0]?.shares).toEqual([{ ppm: 750_000, phases: 'A', toHundred: true }, null]);
    expect(lines[1]?.shares[0]).toEqual({ ppm: 250_000, phases: 'A, B', toHundred: false });
  });

  it('tell what else they say, and leave out what neither does', () => {
    const target = { ...blankTarget(), phLow: 5, phHigh: 5.8 };
    const step = { ...{ id: 's', phaseIds: ['a'], instruction: 'Melt', temperatureC: 75, speedRpm: null } };
    const facts = sharedFacts(
      [formula([], { target, steps: [{ ...step, minutes: 10, lookFor: '', caution: '' }] }), formula([])],
      'de-DE',
    );
    expect(facts.map(({ label }) => label)).toEqual(['Product type', 'Use', 'Target: pH', 'Step 1']);
    expect(facts[2]).toEqual({ label: 'Target: pH', values: ['5,0–5,8', ''], differs: true });
    expect(facts[3]?.values[0]).toBe('A: Melt · 75\u00a0°C, 10\u00a0min');
  });
});
