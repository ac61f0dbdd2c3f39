import type { FormulaContent } from '@core/formulas/formula';
import { lawOfFormula } from '@core/limits/in-formula';
import type { Material } from '@core/materials/material';
import { computed } from 'vue';
import { useLaw } from '../limits/law-store';

/** Today, as the law counts days. */
export function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** What the library's law says of a formula on screen. */
export function useLawOfFormula(props: {
  content: FormulaContent;
  materials: ReadonlyMap<string, Material>;
}) {
  const store = useLaw();
  const found = computed(() =>
    lawOfFormula(props.content, (id) => props.materials.get(id), store.law, today()),
  );
  return { store, found };
}
