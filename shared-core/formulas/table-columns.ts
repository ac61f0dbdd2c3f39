import type { TableColumn } from '../record/table-column';
import { phaseLetter, type FormulaPhase, type ProcedureStep } from './formula';

/** How many there are; the lines themselves have a table of their own, a row each. */
export const PHASE_COLUMNS: readonly TableColumn<FormulaPhase[]>[] = [
  { heading: 'Phases', cell: (phases) => phases.length },
  { heading: 'Lines', cell: (phases) => phases.reduce((sum, { lines }) => sum + lines.length, 0) },
];

function stepWords({ instruction, temperatureC, speedRpm, minutes }: ProcedureStep, at: number): string {
  const set = [
    temperatureC === null ? '' : `${temperatureC} °C`,
    speedRpm === null ? '' : `${speedRpm} rpm`,
    minutes === null ? '' : `${minutes} min`,
  ].filter(Boolean);
  return `${at + 1}. ${instruction}${set.length > 0 ? ` (${set.join(', ')})` : ''}`;
}

export const STEP_COLUMNS: readonly TableColumn<ProcedureStep[]>[] = [
  { heading: 'Procedure', cell: (steps) => (steps.length === 0 ? null : steps.map(stepWords).join('\n')) },
];

/** A line of a formula with what its material is called. */
export interface FormulaTableLine {
  code: string;
  formula: string;
  phase: number;
  phaseTitle: string;
  material: string;
  materialCode: string;
  inci: string;
  percent: number;
  toHundred: boolean;
  note: string;
}

/** The lines of formulas, a row each. */
export const FORMULA_LINE_COLUMNS: readonly TableColumn<FormulaTableLine>[] = [
  { heading: 'Formula code', cell: ({ code }) => code || null },
  { heading: 'Formula', cell: ({ formula }) => formula },
  { heading: 'Phase', cell: ({ phase }) => phaseLetter(phase) },
  { heading: 'Phase title', cell: ({ phaseTitle }) => phaseTitle || null },
  { heading: 'Material', cell: ({ material }) => material },
  { heading: 'Material code', cell: ({ materialCode }) => materialCode || null },
  { heading: 'INCI name', cell: ({ inci }) => inci || null },
  { heading: 'Share (%)', cell: ({ percent }) => percent },
  { heading: 'q.s. to 100 %', cell: ({ toHundred }) => (toHundred ? true : null) },
  { heading: 'Note', cell: ({ note }) => note || null },
];
