import { formulaCost } from '@core/costing/formula-cost';
import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { minorDigits } from '@core/quantities/money';
import { computed, reactive, type Ref } from 'vue';
import { useLockedLines } from '../formulas/locked-lines';
import { useSettings } from '../settings/store';

/** A formula's draft as it is reformulated. */
export interface DraftToChange {
  revision: number;
  content: FormulaContent;
  materials: Record<string, Material>;
}

/** What is asked of a reformulation, in the units that a maker types. */
export function useWishForm(formulaId: string, draft: Readonly<Ref<DraftToChange | null>>) {
  const settings = useSettings();
  const { locked, lock } = useLockedLines(formulaId);
  const wish = reactive({
    /** In whole units of the currency per kg. */
    cost: null as number | null,
    origin: null as number | null,
    originWithWater: true,
    withoutSubstances: [] as string[],
    withoutSuppliers: [] as string[],
    hlbWithin: 1 as number | null,
    phWithin: 0.2 as number | null,
    keepRanges: true,
    keepLaw: true,
    groupsWithin: 25 as number | null,
  });
  const whole = computed(() => 10 ** minorDigits(settings.current.currency));
  /** What a kg costs now, in whole units; null where nothing has a price. */
  const costNow = computed(() => {
    if (!draft.value) return null;
    const { content, materials } = draft.value;
    const { perKgMinor, coveredPpm } = formulaCost(content, materials, settings.current.currency);
    return coveredPpm > 0 ? perKgMinor / whole.value : null;
  });
  /** The substances and suppliers that the formula has, to be left out. */
  const substances = computed(() =>
    distinct(draft.value, ({ composition }) => composition.map(({ inci }) => inci)),
  );
  const suppliers = computed(() =>
    distinct(draft.value, ({ offers }) => offers.map(({ supplier }) => supplier)),
  );
  return {
    wish,
    locked,
    lock,
    costNow,
    substances,
    suppliers,
    /** Asks for a cost that is so many per cent below that of now. */
    cheaper(percent: number): void {
      if (costNow.value !== null) wish.cost = Math.floor(costNow.value * (100 - percent)) / 100;
    },
    request() {
      const { cost, origin, groupsWithin, ...rest } = wish;
      return {
        ...rest,
        costAtMost: cost === null ? null : cost * whole.value,
        originAtLeast: origin,
        groupsWithin: groupsWithin ?? 25,
        locked: [...locked],
        alternatives: 5,
      };
    },
  };
}

function distinct(draft: DraftToChange | null, of: (material: Material) => string[]): string[] {
  return [...new Set(Object.values(draft?.materials ?? {}).flatMap(of))].sort((a, b) =>
    a.localeCompare(b, 'en'),
  );
}
