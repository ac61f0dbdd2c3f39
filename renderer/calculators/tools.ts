import { TOPICS, type TopicKey } from '@core/calculators/all-forms';
import { defineAsyncComponent, type Component } from 'vue';

export interface Tool {
  /** As it stands in the address: `?tool=…`. */
  key: string;
  name: string;
  component: Component;
  /** The topic of small calculations that it shows; the component alone says it otherwise. */
  topic?: TopicKey;
}

const TopicTool = defineAsyncComponent(() => import('./TopicTool.vue'));

function topicsOf(place: 'bench' | 'calculators'): Tool[] {
  return TOPICS.filter((topic) => topic.place === place).map(({ key, name }) => ({
    key,
    name,
    component: TopicTool,
    topic: key,
  }));
}

/** The calculators that the emulsion bench offers beside its own tools. */
export const BENCH_CALCULATORS: readonly Tool[] = [
  { key: 'hlb', name: 'HLB', component: defineAsyncComponent(() => import('./HlbTool.vue')) },
  { key: 'hld', name: 'HLD', component: defineAsyncComponent(() => import('./HldTool.vue')) },
  ...topicsOf('bench'),
];

/** The calculators on a page of their own, in the order shown; the first is where it opens. */
export const CALCULATORS: readonly Tool[] = [
  {
    key: 'neutralise',
    name: 'Neutralise',
    component: defineAsyncComponent(() => import('./NeutraliseTool.vue')),
  },
  {
    key: 'preserve',
    name: 'Preservative acids',
    component: defineAsyncComponent(() => import('./PreserveTool.vue')),
  },
  ...topicsOf('calculators'),
];
