import { FORMULA_FIELDS } from '@core/formulas/fields';
import type { FormulaContent, FormulaLine } from '@core/formulas/formula';
import type { Ref } from 'vue';
import type { NounWords } from '../record/clash-words';

/**
 * What the parts of a formula are called where a change of them is told or asked about.
 * @param tradeNameOf undefined for a material that is not known
 */
export function formulaWords(
  content: Readonly<Ref<FormulaContent | null>>,
  tradeNameOf: (materialId: string) => string | undefined,
): NounWords {
  const nameOfMaterial = (materialId: string): string =>
    tradeNameOf(materialId) ?? 'a material no longer in the library';
  return {
    fields: FORMULA_FIELDS,
    nameOf({ thing }, value) {
      const lines = content.value?.phases.flatMap((phase) => phase.lines) ?? [];
      const line = lines.find((one) => thing === `phases/lines#${one.id}`);
      if (line) return nameOfMaterial(line.materialId);
      if (thing.startsWith('phases/lines#')) return nameOfMaterial((value as FormulaLine).materialId);
      const phase = content.value?.phases.find((one) => thing === `phases#${one.id}`);
      if (phase) return phase.title || 'Phase';
      const step = content.value?.steps.findIndex((one) => thing === `steps#${one.id}`) ?? -1;
      return step >= 0 ? `Step ${step + 1}` : thing.startsWith('steps') ? 'A step' : 'A phase';
    },
    tell: ({ field }, value) => (field[0] === 'materialId' ? nameOfMaterial(String(value)) : null),
  };
}
