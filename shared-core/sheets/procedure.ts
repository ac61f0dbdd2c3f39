import { phaseLetter } from '../formulas/formula';
import type { FormulaContent, ProcedureStep } from '../formulas/formula';
import { formatNumber } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import type { Cell, SheetNode, TextNode } from './kit/definition';
import { HAND_ROW } from './kit/by-hand';
import { blankCell, cell, figureCell, ruledTable } from './kit/tables';
import type { Column } from './kit/tables';
import { SIZE, SOFT_INK } from './kit/type-scale';

/** The letters of the phases that a step refers to: "A, B". */
export function stepPhases(content: FormulaContent, step: ProcedureStep): string {
  return content.phases
    .flatMap((phase, index) => (step.phaseIds.includes(phase.id) ? [phaseLetter(index)] : []))
    .join(', ');
}

function instruction(step: ProcedureStep): Cell {
  const small = (text: string, more: Partial<TextNode> = {}): SheetNode => ({
    text,
    fontSize: SIZE.small,
    margin: [0, 1, 0, 0],
    ...more,
  });
  return {
    stack: [
      cell(step.instruction),
      ...(step.lookFor ? [small(`Look for: ${step.lookFor}`, { color: SOFT_INK })] : []),
      ...(step.caution ? [small(`▲ Caution: ${step.caution}`, { bold: true })] : []),
    ],
  };
}

function figure(value: number | null, region: Region): TextNode {
  return figureCell(value === null ? '' : formatNumber(value, region));
}

/** The procedure to read: steps with phases, temperature, speed and time. */
export function procedureTable(content: FormulaContent, region: Region, width: number): SheetNode {
  return ruledTable({
    width,
    columns: [
      { head: 'Step', share: 5 },
      { head: 'Phase', share: 7 },
      { head: 'What to do', share: 60 },
      { head: '°C', share: 8, alignment: 'right' },
      { head: 'rpm', share: 10, alignment: 'right' },
      { head: 'min', share: 8, alignment: 'right' },
    ],
    rows: content.steps.map((step, index) => [
      cell(String(index + 1)),
      cell(stepPhases(content, step)),
      instruction(step),
      figure(step.temperatureC, region),
      figure(step.speedRpm, region),
      figure(step.minutes, region),
    ]),
  });
}

const BENCH_COLUMNS: Column[] = [
  { head: 'Step', share: 5.5 },
  { head: 'Phase', share: 6.5 },
  { head: 'What to do', share: 41 },
  { head: '°C, target', share: 7, alignment: 'right' },
  { head: '°C, actual', share: 8, byHand: true },
  { head: 'rpm, target', share: 7.5, alignment: 'right' },
  { head: 'rpm, actual', share: 8, byHand: true },
  { head: 'min, target', share: 7, alignment: 'right' },
  { head: 'From – to', share: 10.5, byHand: true },
  { head: 'Sign', share: 8, byHand: true },
];

/** The procedure to follow at the bench: targets beside ruled blanks for what was done, and a sign for each step. */
export function benchProcedure(content: FormulaContent, region: Region, width: number): SheetNode {
  return ruledTable({
    width,
    columns: BENCH_COLUMNS,
    rowHeight: HAND_ROW,
    rows: content.steps.map((step, index) => [
      cell(String(index + 1)),
      cell(stepPhases(content, step)),
      instruction(step),
      figure(step.temperatureC, region),
      blankCell(),
      figure(step.speedRpm, region),
      blankCell(),
      figure(step.minutes, region),
      blankCell(),
      blankCell(),
    ]),
  });
}
