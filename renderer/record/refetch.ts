import type { RecordKind } from '@core/record/change';
import { useQueryCache, type QueryCache } from '@pinia/colada';
import { onScopeDispose } from 'vue';
import { isOfAll, onChange } from './changes';

/** What is kept of the service's answers, by the kinds of records in them. */
const KEYS_BY_KIND: Record<RecordKind, string[][]> = {
  material: [['bench'], ['uses'], ['deleted'], ['today']],
  formula: [['formulas'], ['uses'], ['deleted'], ['today']],
  version: [['formulas'], ['uses']],
  batch: [['batches'], ['today']],
  'trial series': [['trials'], ['deleted']],
  'saved search': [['searches'], ['deleted']],
  settings: [],
  substance: [['deleted']],
  limit: [['deleted']],
};
/** Several changes in a row, such as a note being typed, are asked for once. */
const TOGETHER_MS = 100;

/** Calls once for all changes of some kinds that come together; also when any change may have been missed. */
export function onChangesOf(kinds: readonly RecordKind[], refresh: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  onChange((change) => {
    if (!isOfAll(change) && !kinds.some((kind) => kind === change.kind)) return;
    timer ??= setTimeout(() => {
      timer = undefined;
      refresh();
    }, TOGETHER_MS);
  });
  onScopeDispose(() => clearTimeout(timer));
}

/**
 * Asks again for kept answers, all of them where no key is given. Each shows its own failure where it stands, so that
 * this never fails.
 */
export async function askAgain(cache: QueryCache, key?: string[]): Promise<void> {
  await cache.invalidateQueries(key && { key }).catch(() => undefined);
}

/** Asks again for every kept answer that a change makes old. */
export function useRefetching(): void {
  const cache = useQueryCache();
  for (const [kind, keys] of Object.entries(KEYS_BY_KIND))
    onChangesOf([kind as RecordKind], () => {
      for (const key of keys) void askAgain(cache, key);
    });
}
