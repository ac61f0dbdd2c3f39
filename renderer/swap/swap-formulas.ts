import { changedConsequences, type ChangedConsequences } from '@core/formulas/change/changed-consequences';
import { consequencesOf, type Consequences, type FormulaSide } from '@core/formulas/change/consequences';
import { formulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { swapInFormula, type Swap, type SwappedFormula } from '@core/swap/swap-formula';
import type { SwapDose } from '@core/swap/swap-lines';
import { computed, type Ref } from 'vue';
import { today } from '../formulas/law-of-formula';
import { useLaw } from '../limits/law-store';
import { answer, service } from '../service/client';
import { useSettings } from '../settings/store';

/** A formula's draft in which a material may be swapped. */
export interface SwapSide extends FormulaSide {
  id: string;
  revision: number;
  name: string;
}

/** What a swap makes of one formula. */
export interface SwapOutcome {
  side: SwapSide;
  after: SwappedFormula;
  changed: ChangedConsequences;
}

/** How the new material is put in. */
export interface SwapOptions {
  dose: SwapDose;
  holdHlb: boolean;
}

export async function fetchSwapSide(id: string): Promise<SwapSide> {
  const { formula, materials } = await answer(service.formulas[':id'].$get({ param: { id } }));
  const content = formulaContent.parse(formula);
  return { id, revision: formula.revision, name: formula.name, content, materials };
}

/** Works out what a swap would change, by today's law and the maker's settings. */
export function useOutcomes(from: Ref<Material | null>, options: SwapOptions) {
  const law = useLaw();
  const settings = useSettings();
  const around = computed(() => ({
    law: law.law,
    onDay: today(),
    currency: settings.current.currency,
    checks: settings.current,
  }));
  /** What follows from the drafts as they are: worked out once for all candidates. */
  const kept = new WeakMap<FormulaSide, { around: unknown; found: Consequences }>();
  function before(side: SwapSide): Consequences {
    const known = kept.get(side);
    if (known?.around === around.value) return known.found;
    const found = consequencesOf(side, around.value);
    kept.set(side, { around: around.value, found });
    return found;
  }
  return {
    outcome(side: SwapSide, to: Material): SwapOutcome | null {
      if (!from.value) return null;
      const swap: Swap = { from: from.value, to, ...options };
      const after = swapInFormula(side, swap);
      const { languageRegion: region, currency } = settings.current;
      const changed = changedConsequences(before(side), consequencesOf(after, around.value), {
        region,
        currency,
      });
      return { side, after, changed };
    },
  };
}
