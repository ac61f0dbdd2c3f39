import { lawOfFormula } from '@core/limits/in-formula';
import { NO_LAW, type Law } from '@core/limits/law';
import { lawChanges } from '@core/limits/law-changes';
import { lawAsItWas, type LawThen } from '@core/limits/law-then';
import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { computed, ref, shallowRef, watch } from 'vue';
import { useLaw } from '../limits/law-store';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useSettings } from '../settings/store';
import { today } from './law-of-formula';

interface Recorded {
  content: FormulaContent;
  materials: Readonly<Record<string, Material | undefined>>;
  version: { id: string; recordedAt: string };
}

/** The law as the library held it when a version was recorded, beside that of now, and what of it concerns the version. */
export function useLawThen(props: Recorded) {
  const store = useLaw();
  const settings = useSettings();
  const otherwise = shallowRef<LawThen | null>(null);
  const problem = ref<ProblemDetails | null>(null);

  async function load(): Promise<void> {
    try {
      const param = { versionId: props.version.id };
      otherwise.value = await answer(service.formulas.versions[':versionId'].law.$get({ param }));
      problem.value = null;
    } catch (error) {
      problem.value = problemOf(error);
    }
  }
  // Whenever the law of now is another one, more of it may be otherwise than it was.
  watch([() => store.law, () => props.version.id], () => store.loaded && void load(), { immediate: true });

  const held = computed<Law>(() => (otherwise.value ? lawAsItWas(store.law, otherwise.value) : NO_LAW));
  /** Whether the library held any limits then; where it held none, those of now stand for their days. */
  const heldThen = computed(() => held.value.limits.length > 0);
  const laws = computed(() => ({ then: heldThen.value ? held.value : store.law, now: store.law }));
  const changes = computed(() => {
    const { then, now } = laws.value;
    const find = (id: string): Material | undefined => props.materials[id];
    const contents = [then, now].map((law) => lawOfFormula(props.content, find, law, today()).contents);
    return lawChanges(laws.value, contents, settings.current.languageRegion);
  });
  return { laws, changes, heldThen, loaded: computed(() => otherwise.value !== null), problem };
}
