import type { Material } from '@core/materials/material';
import { TRIAL_SERIES_FIELDS } from '@core/trials/noun';
import { SERIES_SHAPE } from '@core/trials/shape';
import { trialSeries, type TrialSeries } from '@core/trials/trial-series';
import { shallowRef } from 'vue';
import type { NounWords } from '../record/clash-words';
import { useDraft } from '../record/use-draft';
import { answer, service } from '../service/client';

/** A trial series being written down, with the materials that its lines name. */
export function useSeriesDraft(id: string) {
  const materials = shallowRef<Record<string, Material>>({});
  const param = { id };
  const { draft, kept, load, takeKept } = useDraft<TrialSeries>({
    kind: 'trial series',
    id,
    schema: trialSeries,
    shape: SERIES_SHAPE,
    nameOf: ({ title }) => title,
    async read() {
      const found = await answer(service.trials[':id'].$get({ param }));
      materials.value = found.materials;
      return { revision: found.revision, content: found.series };
    },
    async write(content, { revision }) {
      const saved = await answer(service.trials[':id'].$put({ param, json: { revision, content } }));
      return { revision: saved.revision, content: saved.series };
    },
  });
  const words: NounWords = {
    fields: TRIAL_SERIES_FIELDS,
    nameOf: ({ thing }) => thing.slice(thing.indexOf('#') + 1),
    tell: ({ field }, value) =>
      field[0] === 'chosen' && typeof value === 'number'
        ? (draft.content.value?.trials[value]?.label ?? null)
        : null,
  };
  return { draft, kept, load, takeKept, materials, words };
}
