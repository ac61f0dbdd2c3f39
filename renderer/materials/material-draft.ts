import { FIGURE_KINDS, type Figure, type FigureKind } from '@core/materials/figure';
import { storedContent, type Material, type MaterialContent } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import { MATERIAL_SHAPE } from '@core/materials/shape';
import { figureWords } from '@core/materials/words';
import { shallowRef } from 'vue';
import type { NounWords } from '../record/clash-words';
import type { Held } from '../record/draft-source';
import { useDraft } from '../record/use-draft';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import type { Settings } from '@core/settings/settings';
import { useSettings } from '../settings/store';

// What an earlier version let stand must still be opened, to be put right here.
function held(found: Material): Held<MaterialContent> {
  return { revision: found.revision, content: storedContent.parse(found) };
}

/** What the parts of a material are called where a change of them is told or asked about. */
function materialWords(region: () => Settings['languageRegion']): NounWords {
  return {
    fields: MATERIAL.fields,
    nameOf: (_place, value) => String((value as { title?: string } | undefined)?.title ?? 'A document'),
    labelOf: ({ field: [part, kind] }) =>
      part === 'figures' && kind ? FIGURE_KINDS[kind as FigureKind].label : null,
    tell: ({ field: [part, kind] }, value) =>
      part === 'figures' && kind && value ? figureWords(kind as FigureKind, value as Figure, region()) : null,
  };
}

/** A material being edited. */
export function useMaterialDraft(id: string, saved: () => void) {
  const settings = useSettings();
  const param = { id };
  const { draft, kept, load, takeKept } = useDraft<MaterialContent>({
    kind: 'material',
    id,
    schema: storedContent,
    shape: MATERIAL_SHAPE,
    nameOf: MATERIAL.titleOf,
    read: async () => held(await answer(service.materials[':id'].$get({ param }))),
    async write(content, { revision }) {
      const json = { revision, content };
      const now = held(await answer(service.materials[':id'].$put({ param, json })));
      saved();
      return now;
    },
  });
  const lost = shallowRef<ProblemDetails | null>(null);
  return {
    draft,
    words: materialWords(() => settings.current.languageRegion),
    kept,
    takeKept,
    lost,
    content: draft.content,
    revision: draft.revision,
    problem: draft.problem,
    load: () => load().catch((error: unknown) => void (lost.value = problemOf(error))),
    /** Changes parts of the material; the same parts in a row, such as key strokes, are one step of undo. */
    change: (part: Partial<MaterialContent>) =>
      draft.edit((content) => ({ ...content, ...part }), Object.keys(part).join()),
    fault: (path: string) => draft.faultAt(path),
    faultsUnder: (path: string) => draft.faultsUnder(path),
  };
}

export type MaterialDraft = ReturnType<typeof useMaterialDraft>;
