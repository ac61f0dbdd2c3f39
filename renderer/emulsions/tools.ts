import { defineAsyncComponent, type Component } from 'vue';

export interface BenchTool {
  /** As it stands in the address: `/bench?tool=…`. */
  key: string;
  name: string;
  component: Component;
}

/** What the bench offers, in the order of its sub-navigation; the first is where it opens. */
export const TOOLS: readonly BenchTool[] = [
  { key: 'system', name: 'System', component: defineAsyncComponent(() => import('./SystemTool.vue')) },
  { key: 'optimise', name: 'Optimise', component: defineAsyncComponent(() => import('./OptimiseTool.vue')) },
  {
    key: 'trials',
    name: 'Trials',
    component: defineAsyncComponent(() => import('../trials/TrialsTool.vue')),
  },
  { key: 'hlb', name: 'HLB', component: defineAsyncComponent(() => import('../calculators/HlbTool.vue')) },
  { key: 'hld', name: 'HLD', component: defineAsyncComponent(() => import('../calculators/HldTool.vue')) },
  {
    key: 'neutralise',
    name: 'Neutralise',
    component: defineAsyncComponent(() => import('../calculators/NeutraliseTool.vue')),
  },
  {
    key: 'preserve',
    name: 'Preservative acids',
    component: defineAsyncComponent(() => import('../calculators/PreserveTool.vue')),
  },
  {
    key: 'screening',
    name: 'Separation and ageing',
    component: defineAsyncComponent(() => import('../calculators/ScreeningTool.vue')),
  },
];
