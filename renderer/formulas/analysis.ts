import { checkFormula } from '@core/checks/all';
import { judgedFindings } from '@core/checks/accepted';
import { FINDING_SEVERITIES, type FindingSeverity } from '@core/checks/check';
import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { useLaw } from '../limits/law-store';
import { today } from './law-of-formula';
import { computed, onScopeDispose, shallowRef, watch } from 'vue';
import { useSettings } from '../settings/store';
import type { FormulaDraft } from './draft';

const PAUSE_MS = 120;

/** The draft as it was when typing last paused, with what the checks find in it: typing never waits for them. */
export function useAnalysis(draft: FormulaDraft) {
  const settled = shallowRef<{ content: FormulaContent; materials: Map<string, Material> } | null>(null);
  let timer: ReturnType<typeof setTimeout> | undefined;

  watch(
    [draft.content, () => draft.materials.size],
    () => {
      clearTimeout(timer);
      const take = (): void => {
        const content = draft.content.value;
        if (content) settled.value = { content, materials: new Map(draft.materials) };
      };
      if (settled.value) timer = setTimeout(take, PAUSE_MS);
      else take();
    },
    { immediate: true },
  );
  onScopeDispose(() => clearTimeout(timer));

  const settings = useSettings();
  const store = useLaw();
  // Until the law is there its checks are silent, not wrong.
  const lawful = computed(() => (store.loaded ? { law: store.law, onDay: today() } : {}));
  const judged = computed(() => {
    if (!settled.value) return { open: [], accepted: [], past: [] };
    const findings = checkFormula({ ...settled.value, ...lawful.value }, settings.current);
    return judgedFindings(findings, settled.value.content);
  });
  /** The most serious finding of each line that has one. */
  const severities = computed(() => {
    const worst = new Map<string, FindingSeverity>();
    const rank = (severity: FindingSeverity): number => FINDING_SEVERITIES.indexOf(severity);
    for (const { lines, severity } of judged.value.open)
      for (const line of lines) {
        const known = worst.get(line);
        if (!known || rank(severity) < rank(known)) worst.set(line, severity);
      }
    return worst;
  });
  return { settled, judged, severities };
}
