import { computed, nextTick, onBeforeUnmount, onMounted, useTemplateRef, watch, type Ref } from 'vue';
import { useLeaveGuard } from '../shell/leave-guard';
import { beginEditing, endEditing, isEdited } from './editing';
import { useUndoKeys } from './undo-keys';

interface Written {
  content: Ref<object | null>;
  saveNow(): Promise<boolean>;
  unsaved(): boolean;
  stuck(): boolean;
  undo(): void;
  redo(): void;
}

/** Escape and letters then belong to what lies over the screen: a question, the finder, a choice of columns. */
const dialogOpen = (): boolean => document.querySelector('[role=dialog]') !== null;
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select') !== null;

/**
 * What every record beside its list does: it is read first and edited on asking, Escape steps back, and leaving saves.
 * @param key its kind and id
 * @param close closes it
 * @returns with its element, which the template names `pane`
 */
export function useRecordPane(key: string, draft: Written, close: () => void) {
  const pane = useTemplateRef<HTMLElement>('pane');
  const editing = computed(() => isEdited(key));

  /** Hands on what still stands in the field that is being typed in. */
  function commitField(): void {
    const field = document.activeElement;
    if (field instanceof HTMLElement && pane.value?.contains(field)) field.blur();
  }
  /** A field that holds what cannot be read as its number, or was refused. */
  const unread = (): HTMLElement | null => pane.value?.querySelector('[aria-invalid=true]') ?? null;

  async function saveNow(): Promise<boolean> {
    commitField();
    // What a field has against its text is on screen only then.
    await nextTick();
    return (await draft.saveNow()) && !unread();
  }
  function unsaved(): boolean {
    commitField();
    return draft.unsaved() || unread() !== null;
  }
  const guard = useLeaveGuard({ saveNow, unsaved, stuck: () => draft.stuck() || unread() !== null });

  async function focusFirst(): Promise<void> {
    await nextTick();
    pane.value
      ?.querySelector<HTMLElement>('section :is(input, select, textarea)')
      ?.focus({ preventScroll: true });
  }
  function edit(): void {
    beginEditing(key);
    void focusFirst();
  }
  /** Back to reading. What could not be read or was refused stays where it can be put right. */
  async function done(): Promise<void> {
    await saveNow();
    if (draft.stuck() || unread()) return unread()?.focus();
    endEditing(key);
    await nextTick();
    pane.value?.querySelector<HTMLElement>('[data-edit]')?.focus({ preventScroll: true });
  }

  function pressed(event: KeyboardEvent): void {
    if (event.defaultPrevented || dialogOpen()) return;
    if (event.key === 'Escape') return editing.value ? void done() : close();
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
    if (event.key.toLowerCase() !== 'e' || !plain || editing.value || isTyping(event.target)) return;
    event.preventDefault();
    edit();
  }
  // One that opens for editing takes the keys as soon as its fields are there.
  const stop = watch(draft.content, (now) => {
    if (!now) return;
    if (editing.value) void focusFirst();
    stop();
  });
  useUndoKeys(draft);
  onMounted(() => window.addEventListener('keydown', pressed));
  onBeforeUnmount(() => {
    window.removeEventListener('keydown', pressed);
    endEditing(key);
  });
  return { ...guard, pane, editing, edit, done };
}
