import { onBeforeUnmount, onMounted } from 'vue';

/** A picture or paper in the clipboard is added wherever one is on a page: text goes where it always does. */
export function usePastedFile(take: (file: File) => void): void {
  function pasted(event: ClipboardEvent): void {
    const [file] = event.clipboardData?.files ?? [];
    if (!file || event.defaultPrevented || document.querySelector('[role=dialog]')) return;
    event.preventDefault();
    take(file);
  }
  onMounted(() => window.addEventListener('paste', pasted));
  onBeforeUnmount(() => window.removeEventListener('paste', pasted));
}
