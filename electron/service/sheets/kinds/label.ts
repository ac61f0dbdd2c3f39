import type { PrintedFormula } from '@core/sheets/formula-sheet';
import type { LabelSheetOptions } from '@core/sheets/label-sheet';
import { printedFormula } from './formula';
import { kindOfSheet } from './kind';

interface Subject {
  formula: PrintedFormula;
  options: LabelSheetOptions;
}

export const label = kindOfSheet<'label', Subject>('label', {
  read(library, request) {
    const formula = printedFormula(library, request);
    const { form, allergens } = request;
    const which = formula.version ? `version ${formula.version.number}` : 'draft';
    const { code, name } = formula.content;
    return { subject: { formula, options: { form, allergens } }, name: [code, name, which, form] };
  },
  async setting() {
    const { labelSheet } = await import('@core/sheets/label-sheet');
    return ({ formula, options }, settings, printedAt) => labelSheet(formula, options, settings, printedAt);
  },
});
