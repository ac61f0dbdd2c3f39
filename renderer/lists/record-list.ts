import { computed, ref, type ComputedRef, type Ref } from 'vue';
import { useRoute } from 'vue-router';
import { beginEditing } from '../record/editing';
import { useAsked } from '../shell/asked';

export interface RecordList {
  /** Whether the dialog that adds one is open; a window that was asked to add one opens it by itself. */
  adding: Ref<boolean>;
  /** The record shown beside the list, by the address; null for none. */
  openId: ComputedRef<string | null>;
  open(id: string | null): void;
  /** After a change of the one that is open. */
  changed(): Promise<void>;
  /** Opens the one just added, to be filled in: it has nothing to read yet. */
  added(id: string): Promise<void>;
}

/**
 * A list of records with the one that is open beside it: what is open, added and changed there.
 * @param kind of the records, as their history knows them
 * @param list the list on the screen
 * @param refreshToo what else tells of them
 */
export function useRecordList(
  kind: string,
  list: Readonly<Ref<{ refresh(): Promise<void>; open(id: string | null): void } | null>>,
  refreshToo: () => Promise<void> = () => Promise.resolve(),
): RecordList {
  const route = useRoute();
  const adding = ref(false);
  useAsked('add', () => (adding.value = true));
  const openId = computed(() => (typeof route.params.id === 'string' ? route.params.id : null));
  const open = (id: string | null): void => list.value?.open(id);
  const changed = async (): Promise<void> => {
    await Promise.all([list.value?.refresh(), refreshToo()]);
  };
  const added = async (id: string): Promise<void> => {
    await changed();
    beginEditing(`${kind} ${id}`);
    open(id);
  };
  return { adding, openId, open, changed, added };
}
