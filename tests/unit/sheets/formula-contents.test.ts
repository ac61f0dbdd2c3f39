import type { FormulaContent, FormulaVersion } from '@core/formulas/formula';
import { batchSheet } from '@core/sheets/batch-sheet';
import { formulaSheet } from '@core/sheets/formula-sheet';
import { stepPhases } from '@core/sheets/procedure';
import { targetFacts } from '@core/sheets/target-words';
import { blankTarget } from '@core/formulas/formula';
import { describe, expect, it } from 'vitest';
import { AT, idOf, MATERIALS } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch, sampleStep } from './samples';
import { rowsUnder, wordsOf } from './sheet-words';

const full = { forSharing: false, tradeNames: true };
const printed = (content: FormulaContent = CREAM, version: FormulaVersion | null = CREAM_VERSION) => ({
  content,
  materials: MATERIALS,
  version,
});
const formulaWords = (content?: FormulaContent, options = full) =>
  wordsOf(formulaSheet(printed(content), options, MAKER, AT));

describe('the lines of a formula sheet', () => {
  const sheet = formulaSheet(printed(), full, MAKER, AT);

  it('stand in their phases, in order, each with its share, and come to 100 % by hand', () => {
    // Water 100 − (4 + 0.25 + 5 + 1.5 + 12 + 4 + 2 + 0.5 + 1 + 0.3 + 0.125) = 69.325; phases 73.575, 25, 1.425.
    const words = wordsOf(sheet).join(' | ');
    expect(words).toContain('A   Water phase · 75 °C | 73.575 %');
    expect(words).toContain('B   Oil phase · 75 °C | 25.000 %');
    expect(words).toContain('C   Cool-down phase · 40 °C | 1.425 %');
    expect(words).toContain('Total | 100.000 %');
    const [first] = sheet.content.flatMap((node) => rowsUnder([node], 'Raw material', '% w/w'));
    expect(first?.[0]).toBe('Purified water (q.s. to 100)');
    expect(first?.at(-1)).toBe('69.325');
  });

  it('holds every line of the formula once', () => {
    const lines = CREAM.phases.flatMap((phase) => phase.lines);
    const words = wordsOf(sheet);
    for (const line of lines) {
      const name = MATERIALS[line.materialId]?.tradeName ?? '';
      const shown = line.toHundred ? `${name} (q.s. to 100)` : name;
      expect(
        words.filter((one) => one === shown),
        name,
      ).toHaveLength(1);
    }
  });

  it('shows each share in the decimals that the finest needs, so that none is rounded away', () => {
    const fine = structuredClone(CREAM);
    fine.phases[2]!.lines[0]!.ppm = 9_999;
    const words = formulaWords(fine);
    expect(words).toContain('0.9999');
    expect(words).toContain('69.3251');
  });

  it('says by how much lines fall short of or pass 100 %', () => {
    const without = {
      ...CREAM,
      phases: CREAM.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.filter((line) => !line.toHundred),
      })),
    };
    expect(formulaWords(without)).toContain('Total – 69.325 % short of 100 %');
    const over = structuredClone(without);
    over.phases[0]!.lines[0]!.ppm += 800_000;
    expect(formulaWords(over)).toContain('Total – 10.675 % beyond 100 %');
  });

  it('names a line whose material has left the library, with its share', () => {
    const lost = structuredClone(CREAM);
    lost.phases[1]!.lines[0]!.materialId = idOf(99);
    const words = formulaWords(lost);
    expect(words).toContain('Material no longer in the library');
    expect(words).toContain('5.000');
  });

  it('letters a phase without a title, and prints none of its heat where none is set', () => {
    const plain = structuredClone(CREAM);
    plain.phases[1] = { ...plain.phases[1]!, title: '', temperatureC: null };
    expect(formulaWords(plain)).toContain('B   Phase B');
  });
});

describe('the procedure', () => {
  it('names the phases of a step by their letters in the order of the formula, whatever the order in the step', () => {
    const [a, b, c] = CREAM.phases.map((phase) => phase.id);
    expect(stepPhases(CREAM, sampleStep([c!, a!], ''))).toBe('A, C');
    expect(stepPhases(CREAM, sampleStep([b!, idOf(77)], ''))).toBe('B');
    expect(stepPhases(CREAM, sampleStep([], ''))).toBe('');
  });

  it('prints each figure of a step as it was written: a quarter of a minute is no third', () => {
    const step = sampleStep([], 'Homogenise.', { minutes: 0.25, temperatureC: 62.75, speedRpm: 3500 });
    const rows = rowsUnder(
      formulaSheet(printed({ ...CREAM, steps: [step] }), full, MAKER, AT).content,
      'Step',
      'What to do',
    );
    expect(rows).toEqual([['1', '', 'Homogenise.', '62.75', '3,500', '0.25']]);
    const bench = batchSheet(
      sampleBatch(),
      { ...CREAM_VERSION, content: { ...CREAM, steps: [step] } },
      MAKER,
      AT,
    );
    expect(rowsUnder(bench.content, 'Step', '°C, actual')).toEqual([
      ['1', '', 'Homogenise.', '62.75', '', '3,500', '', '0.25', '', ''],
    ]);
  });

  it('keeps what to look for and the caution beside their step', () => {
    const rows = rowsUnder(formulaSheet(printed(), full, MAKER, AT).content, 'Step', 'What to do');
    expect(rows).toHaveLength(CREAM.steps.length);
    expect(rows[0]?.[2]).toBe(
      'Wet the gum with the glycerol, add the water with stirring and heat.\nLook for: no lumps\n▲ Caution: Gum dust: weigh without draughts.',
    );
    expect(rows[3]?.slice(0, 2)).toEqual(['4', '']);
  });
});

describe('the target specification', () => {
  const of = (part: Partial<FormulaContent['target']>) =>
    Object.fromEntries(
      targetFacts({ ...blankTarget(), ...part }, 'en-GB').map(({ label, value }) => [label, value]),
    );

  it('says nothing of what nobody set', () => {
    expect(Object.values(of({})).every((value) => value === '')).toBe(true);
    expect(formulaWords({ ...CREAM, target: blankTarget() })).not.toContain('Target specification');
  });

  it('writes both ends in the same decimals, one end as at least or at most, and equal ends once', () => {
    expect(of({ phLow: 5, phHigh: 5.85 }).pH).toBe('5.00–5.85');
    expect(of({ phLow: 5 }).pH).toBe('at least 5');
    expect(of({ phHigh: 6.5 }).pH).toBe('at most 6.5');
    expect(of({ phLow: 5.5, phHigh: 5.5 }).pH).toBe('5.5');
    expect(of({ densityLow: 0, densityHigh: 1 }).Density).toBe('0–1\u00a0g/mL');
    expect(of({ viscosityLow: 18_000, viscosityMethod: 'spindle 6' }).Viscosity).toBe(
      'at least 18,000\u00a0mPa·s; spindle 6',
    );
    expect(of({ viscosityMethod: 'spindle 6' }).Viscosity).toBe('spindle 6');
  });
});
