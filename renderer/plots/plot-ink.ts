import type { PlotInk } from '@core/plots/plot-ink';
import type { Region } from '@core/locale/numbers';
import { onScopeDispose, ref, type Ref } from 'vue';
import { useSettings } from '../settings/store';

function readInk(region: Region): PlotInk {
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
    region,
  };
}

/** The screen's colours for plots, and whose numbers they have; they follow the theme and the region. */
export function usePlotInk(): Ref<PlotInk> {
  const settings = useSettings();
  const read = (): PlotInk => readInk(settings.current.languageRegion);
  const ink = ref(read());
  const themes = new MutationObserver(() => (ink.value = read()));
  const attributeFilter = ['data-theme', 'data-region'];
  themes.observe(document.documentElement, { attributes: true, attributeFilter });
  onScopeDispose(() => themes.disconnect());
  return ink;
}
