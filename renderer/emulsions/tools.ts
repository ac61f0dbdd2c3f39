import { defineAsyncComponent } from 'vue';
import { BENCH_CALCULATORS, type Tool } from '../calculators/tools';

/** What the bench offers, in the order of its sub-navigation; the first is where it opens. */
export const TOOLS: readonly Tool[] = [
  { key: 'system', name: 'System', component: defineAsyncComponent(() => import('./SystemTool.vue')) },
  { key: 'optimise', name: 'Optimise', component: defineAsyncComponent(() => import('./OptimiseTool.vue')) },
  {
    key: 'trials',
    name: 'Trials',
    component: defineAsyncComponent(() => import('../trials/TrialsTool.vue')),
  },
  ...BENCH_CALCULATORS,
];
