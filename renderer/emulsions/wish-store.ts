import { systemWish } from '@core/emulsions/systems/wish';
import { defineStore } from 'pinia';
import { ref, watch } from 'vue';
import { z } from 'zod';

const KEY = 'stillroom.bench.wish';
const conditions = systemWish.omit({ currency: true, emulsionType: true });
/** What is wished of a system, apart from its oil phase and type. */
export type Conditions = z.infer<typeof conditions>;
const stored = z.object({ conditions, weights: z.record(z.string(), z.number().min(0).max(100)) });

const AT_FIRST: z.infer<typeof stored> = {
  conditions: {
    feel: 'cream',
    climate: 'temperate',
    ph: null,
    electrolyte: 'none',
    origins: [],
    levelFrom: null,
    levelTo: null,
  },
  weights: {},
};

function remembered(): z.infer<typeof stored> {
  try {
    return stored.parse(JSON.parse(localStorage.getItem(KEY) ?? ''));
  } catch {
    // Nothing wished yet, or a wish of an older version.
    return AT_FIRST;
  }
}

/** The conditions and the rules' weights, kept on this machine. */
export const useWish = defineStore('bench wish', () => {
  const { conditions: first, weights: firstWeights } = remembered();
  const wished = ref<Conditions>(first);
  const weights = ref<Record<string, number>>(firstWeights);

  function change(part: Partial<Conditions>): void {
    wished.value = { ...wished.value, ...part };
  }
  /** Gives a rule another weight; null gives it its own back. */
  function weigh(ruleId: string, weight: number | null): void {
    const { [ruleId]: _before, ...others } = weights.value;
    weights.value = weight === null ? others : { ...others, [ruleId]: weight };
  }
  watch([wished, weights], () =>
    localStorage.setItem(KEY, JSON.stringify({ conditions: wished.value, weights: weights.value })),
  );
  return { wished, weights, change, weigh, resetWeights: () => (weights.value = {}) };
});
