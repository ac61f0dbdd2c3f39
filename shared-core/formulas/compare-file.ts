import type { Region } from '../locale/numbers';
import type { Field } from '../record/field';
import { fieldWords } from '../record/words';
import { pushText } from './compared';
import type { Difference } from './difference';
import { FORMULA_FIELDS } from './fields';
import type { FormulaContent } from './formula';

/** What differs in what the product's file holds: claims, reports and statements. */
export function fileDifferences(before: FormulaContent, after: FormulaContent, region: Region): Difference[] {
  const found: Difference[] = [];
  for (const key of ['claims', 'reports', 'statements'] as const) {
    const field = FORMULA_FIELDS[key] as Field;
    pushText(
      found,
      'file',
      field.label,
      fieldWords(field, before[key], region),
      fieldWords(field, after[key], region),
    );
  }
  return found;
}
