import { useKeptText } from '../shell/kept-text';
import { useSaving } from '../shell/saving';
import { isOfAll, onChange, onConnected } from './changes';
import { Draft } from './draft';
import type { DraftSource } from './draft-source';
import { onBeforeUnmount } from 'vue';

/**
 * The draft of a record on a screen: what every editor uses. It follows other windows, tells whether all is saved, and
 * keeps in the browser what is not in the library yet, so that a crash or a closed tab loses no key stroke.
 */
export function useDraft<T extends object>(source: DraftSource<T>) {
  const saving = useSaving();
  const draft: Draft<T> = new Draft(source, {
    // A refusal is told where the draft is, and beneath every screen; here it is only followed.
    follow: (whole) => void saving.track(whole).catch(() => undefined),
    moved: () => kept.settle(),
  });
  const kept = useKeptText(
    source,
    () => {
      const content = draft.content.value;
      const base = draft.changedFrom();
      return content && base ? { name: source.nameOf(content), content, base } : null;
    },
    () => void draft.saveNow(),
  );

  onChange((change) => {
    if (isOfAll(change)) void draft.refresh();
    else if (change.kind === source.kind && (source.id === '' || change.id === source.id))
      // What a library has once has no count of its edits.
      void draft.refresh(source.id === '' ? null : change.revision);
  });
  onConnected(() => draft.unsaved() && void draft.saveNow());
  onBeforeUnmount(() => draft.stop());

  return {
    draft,
    kept,
    /** Reads the record, and what an earlier visit could not save of it. @throws ServiceProblem when it cannot be read */
    async load(): Promise<void> {
      await draft.load();
      if (draft.content.value) await kept.look(draft.content.value);
    },
    /** Takes up what an earlier visit could not save; what stands now is one Undo away. */
    takeKept(): void {
      const text = kept.offered.value;
      kept.dismiss();
      if (text) draft.adopt(text.content, text.base);
    },
  };
}
