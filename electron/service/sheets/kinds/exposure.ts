import type { PrintedFormula } from '@core/sheets/formula-sheet';
import { printedFormula } from './formula';
import { kindOfSheet } from './kind';

export const exposure = kindOfSheet<'exposure', PrintedFormula>('exposure', {
  read(library, request) {
    const formula = printedFormula(library, request);
    const which = formula.version ? `version ${formula.version.number}` : 'draft';
    return { subject: formula, name: [formula.content.code, formula.content.name, which] };
  },
  async setting() {
    const { exposureSheet } = await import('@core/sheets/exposure-sheet');
    return exposureSheet;
  },
});
