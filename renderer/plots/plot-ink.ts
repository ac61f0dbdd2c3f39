import type { PlotInk } from '@core/plots/plot-ink';
import { onScopeDispose, ref, type Ref } from 'vue';

function readInk(): PlotInk {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string): string => style.getPropertyValue(name).trim();
  return {
    paper: colour('--paper'),
    ink: colour('--ink'),
    soft: colour('--ink-soft'),
    rule: colour('--rule'),
    accent: colour('--accent'),
    band: colour('--accent-soft'),
    font: colour('--sans'),
    size: 12,
    halo: 3,
  };
}

/** The screen's colours for plots; they follow the theme. */
export function usePlotInk(): Ref<PlotInk> {
  const ink = ref(readInk());
  const themes = new MutationObserver(() => (ink.value = readInk()));
  themes.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  onScopeDispose(() => themes.disconnect());
  return ink;
}
