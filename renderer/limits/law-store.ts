import { subjectsOf } from '@core/limits/judge';
import { NO_LAW, type Law } from '@core/limits/law';
import type { Limit } from '@core/limits/limit';
import { substanceIndex } from '@core/substances/substance-index';
import { defineStore } from 'pinia';
import { computed, shallowRef } from 'vue';
import { isOfAll, onChange } from '../record/changes';
import { answer, service } from '../service/client';

/** Edits follow each other by the key stroke: the whole is asked for once they pause. */
const PAUSE_MS = 400;

/** The substances and limits of the library, as a whole: what checks, label and exposure are worked out from. */
export const useLaw = defineStore('law', () => {
  const law = shallowRef<Law>(NO_LAW);
  const loaded = shallowRef(false);
  let asked: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function fetchLaw(): Promise<void> {
    law.value = await answer(service.law.$get());
    loaded.value = true;
  }
  /** Fetches it unless it is there; a failure leaves it to be asked for again. */
  function load(): Promise<void> {
    asked ??= fetchLaw().catch(() => void (asked = null));
    return asked;
  }
  onChange((change) => {
    if (!isOfAll(change) && change.kind !== 'substance' && change.kind !== 'limit') return;
    if (!asked) return;
    clearTimeout(timer);
    timer = setTimeout(() => void fetchLaw().catch(() => undefined), PAUSE_MS);
  });
  void load();

  const index = computed(() => substanceIndex(law.value.substances));
  return {
    law,
    loaded,
    index,
    load,
    /** The limits that name a substance, or one of its groups. */
    limitsOf(substanceId: string): Limit[] {
      return law.value.limits.filter((limit) =>
        subjectsOf(limit, index.value)?.some((one) => one.id === substanceId),
      );
    },
  };
});
