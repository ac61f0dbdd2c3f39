import type { Batch } from '@core/batches/batch';
import type { CalculationRequest } from '@core/calculators/calculation-request';
import type { BenchState } from '@core/emulsions/bench/bench-state';
import type { TrialSeries } from '@core/trials/trial-series';
import type { FormulaVersion } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import type { Settings } from '@core/settings/settings';
import { batchSheet } from '@core/sheets/batch-sheet';
import { comparisonSheet } from '@core/sheets/comparison-sheet';
import { formulaSheet, type FormulaSheetOptions, type PrintedFormula } from '@core/sheets/formula-sheet';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { materialSheet } from '@core/sheets/material-sheet';
import type { SheetPhoto } from '@core/sheets/photo';
import { trialsSheet } from '@core/sheets/trials-sheet';
import { renderSheet } from './render';
import { setCalculation } from './set-calculation';
import { setWorking } from './set-working';

type MaterialsById = Record<string, Material>;

/** What a sheet is of, as plain data that can cross to another thread. */
export type SheetSubject =
  | { kind: 'material'; material: Material; photo: SheetPhoto | null }
  | { kind: 'formula'; formula: PrintedFormula; options: FormulaSheetOptions }
  | { kind: 'batch'; batch: Batch; version: FormulaVersion }
  | { kind: 'comparison'; materials: Material[]; photos: Record<string, SheetPhoto> }
  | { kind: 'trials'; series: TrialSeries; materials: MaterialsById }
  | { kind: 'working'; state: BenchState; materials: MaterialsById }
  | { kind: 'calculation'; calculation: CalculationRequest; materials: MaterialsById };

/** A sheet to be set and printed. */
export interface SheetJob {
  subject: SheetSubject;
  settings: Settings;
  /** ISO 8601 UTC; printed on the sheet and written into the file. */
  printedAt: string;
  replaceUnprintable: boolean;
}

/** Sets a sheet as data for the printer. */
export function setSheet({ subject, settings, printedAt }: SheetJob): SheetDefinition {
  switch (subject.kind) {
    case 'material':
      return materialSheet(subject.material, settings, printedAt, subject.photo);
    case 'formula':
      return formulaSheet(subject.formula, subject.options, settings, printedAt);
    case 'batch':
      return batchSheet(subject.batch, subject.version, settings, printedAt);
    case 'comparison':
      return comparisonSheet(subject.materials, settings, printedAt, subject.photos);
    case 'trials':
      return trialsSheet(subject.series, subject.materials, settings, printedAt);
    case 'working':
      return setWorking(subject.state, subject.materials, settings, printedAt);
    case 'calculation':
      return setCalculation(subject.calculation, subject.materials, settings, printedAt);
  }
}

/** Sets and prints a sheet as PDF, in this thread. @throws Problem `unprintable-text` */
export function printSheet(job: SheetJob): Promise<Uint8Array> {
  const { replaceUnprintable } = job;
  return renderSheet(setSheet(job), { now: new Date(job.printedAt), replaceUnprintable });
}
