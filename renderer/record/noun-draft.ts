import type { RecordKind } from '@core/record/change';
import type { Noun } from '@core/record/noun';
import type { Shape } from '@core/record/place';
import { shallowRef } from 'vue';
import type { z } from 'zod';
import { problemOf, type ProblemDetails } from '../service/client';
import type { NounWords } from './clash-words';
import type { Held } from './draft-source';
import { useDraft } from './use-draft';

interface Source<C extends object> {
  noun: Noun<C> & { kind: RecordKind };
  id: string;
  schema: z.ZodType<C>;
  shape?: Shape;
  read(): Promise<Held<C>>;
  write(content: C, revision: number): Promise<Held<C>>;
}

/** A record whose fields say all that there is to edit: its draft, and the words for what clashes. */
export function useNounDraft<C extends object>({ noun, id, schema, shape = {}, read, write }: Source<C>) {
  const { draft, kept, load, takeKept } = useDraft<C>({
    kind: noun.kind,
    id,
    schema,
    shape,
    nameOf: noun.titleOf,
    read,
    write: (content, { revision }) => write(content, revision),
  });
  const lost = shallowRef<ProblemDetails | null>(null);
  const words: NounWords = {
    fields: noun.fields,
    nameOf: (_place, value) => String((value as { name?: string } | undefined)?.name ?? 'A row'),
    labelOf: () => null,
    tell: () => null,
  };
  return {
    noun,
    id,
    shape,
    draft,
    words,
    kept,
    takeKept,
    lost,
    content: draft.content,
    revision: draft.revision,
    load: () => load().catch((error: unknown) => void (lost.value = problemOf(error))),
    /** Changes parts of the record; the same parts in a row, such as key strokes, are one step of undo. */
    change: (part: Partial<C>) =>
      draft.edit((content) => ({ ...content, ...part }), Object.keys(part).join()),
    fault: (path: string) => draft.faultAt(path),
    faultsUnder: (path: string) => draft.faultsUnder(path),
  };
}

export type NounDraft<C extends object> = ReturnType<typeof useNounDraft<C>>;
