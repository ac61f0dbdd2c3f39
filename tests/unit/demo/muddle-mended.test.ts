import { checkFormula } from '@core/checks/all';
import type { Finding } from '@core/checks/check';
import { MUDDLE_CODE } from '@core/demo/formulas/muddle';
import type { FormulaContent, FormulaLine } from '@core/formulas/formula';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../limits/law';
import { formulaByCode, library } from './demo-shelf';

const materials = new Map(library.materials.map((one) => [one.id, one]));
const idOf = (code: string): string => library.materials.find((one) => one.code === code)!.id;
const find = (content: FormulaContent): Finding[] =>
  checkFormula({ content, materials, law: EXAMPLES, onDay: '2026-11-28' });

type Edit = (content: FormulaContent) => FormulaContent;
const eachPhase =
  (edit: (lines: FormulaLine[], at: number) => FormulaLine[]): Edit =>
  (content) => ({
    ...content,
    phases: content.phases.map((phase, at) => ({ ...phase, lines: edit(phase.lines, at) })),
  });
const without = (code: string): Edit =>
  eachPhase((lines) => lines.filter(({ materialId }) => materialId !== idOf(code)));
const line = (code: string, percent: number): FormulaLine => ({
  ...{ id: `mended ${code}`, materialId: idOf(code), ppm: percent * 10_000, toHundred: false, note: '' },
});
const added = (phase: number, code: string, percent: number): Edit =>
  eachPhase((lines, at) => (at === phase ? [...lines, line(code, percent)] : lines));
const all =
  (...edits: Edit[]): Edit =>
  (content) =>
    edits.reduce((done, edit) => edit(done), content);

/** What a maker does on screen, one after the other, and the checks that have nothing more to say after it. */
const MENDS: readonly [what: string, edit: Edit, silent: string[]][] = [
  [
    'the water takes what is left to 100 %',
    eachPhase((lines) =>
      lines.map((one) => (one.materialId === idOf('H-100') ? { ...one, toHundred: true } : one)),
    ),
    ['total'],
  ],
  [
    'a preservative that works at this pH, and is left free in the water, at its dose',
    all(without('R-103'), added(2, 'R-101', 1)),
    ['preservative-ph', 'preservative-spectrum', 'preservative-free'],
  ],
  ['no salicylic acid', without('V-107'), ['law', 'classified', 'harmful-pairs']],
  [
    'no retinoid above its limit',
    without('V-109'),
    ['legal-limit', 'supply', 'label-notices', 'storage-temperatures'],
  ],
  ['no urea by the trace', without('V-108'), ['working-ph', 'small-lines', 'usage-range']],
  ['no cationic polymer beside an anionic one', without('U-202'), ['charge-conflict']],
  [
    'a thickener that needs no base and stands salt',
    all(without('T-101'), added(1, 'T-102', 0.3)),
    ['neutralising', 'electrolyte'],
  ],
  [
    'two emulsifiers for o/w, enough for the oil, and none that is archived',
    all(without('N-205'), added(0, 'N-113', 2.2), added(0, 'A-307', 1.5)),
    ['emulsion-type', 'disperses-in-water', 'hlb-match', 'emulsifier-to-oil', 'archived-material'],
  ],
  ['waxes where they melt', all(without('W-203'), without('W-103'), added(0, 'W-103', 1.5)), ['unmelted']],
  ['fragrance in the cool-down', all(without('F-101'), added(2, 'F-101', 0.3)), ['heat-sensitive']],
  ['no load of powder', without('V-110'), ['powder-load', 'uv-filters']],
  ['an antioxidant for the seed oils', added(2, 'V-101', 0.2), ['antioxidant']],
  ['a chelator', added(1, 'R-301', 0.1), ['chelator']],
];

describe('the formula that is wrong on purpose, mended one thing after the other', () => {
  let content: FormulaContent = formulaByCode(MUDDLE_CODE);
  it.each(MENDS)('%s', (_what, edit, silent) => {
    const before = new Set(find(content).map(({ ruleId }) => ruleId));
    content = edit(content);
    const after = new Set(find(content).map(({ ruleId }) => ruleId));
    for (const rule of silent) {
      expect(before, `${rule} spoke before`).toContain(rule);
      expect(after, `${rule} is silent after`).not.toContain(rule);
    }
  });

  it('has no finding left, and more than twenty checks were silenced by a mend each', () => {
    expect(find(content).map(({ title }) => title)).toEqual([]);
    expect(new Set(MENDS.flatMap(([, , silent]) => silent)).size).toBeGreaterThanOrEqual(20);
  });
});
