import { onBeforeUnmount, onMounted } from 'vue';

type TextControl = HTMLInputElement | HTMLTextAreaElement;

function textControl(target: EventTarget | null): TextControl | null {
  const isText =
    target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && target.type === 'text');
  return isText ? target : null;
}

/**
 * Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y) over the whole draft. A field that holds something which is not in the draft
 * yet, such as a number that could not be read, keeps the browser's own undo; so does anything in a dialog.
 */
export function useUndoKeys(draft: { undo(): void; redo(): void }): void {
  function pressed(event: KeyboardEvent): void {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    const target = event.target instanceof HTMLElement ? event.target : null;
    if (target?.closest('[role=dialog]')) return;
    const control = textControl(target);
    if (control && (control.dataset.live === undefined || control.getAttribute('aria-invalid') === 'true'))
      return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) draft.redo();
    else draft.undo();
  }
  onMounted(() => window.addEventListener('keydown', pressed));
  onBeforeUnmount(() => window.removeEventListener('keydown', pressed));
}
