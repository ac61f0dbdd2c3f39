import { onBeforeUnmount, onMounted, ref, type Ref } from 'vue';
import { leftFiles } from './left-files';

/**
 * A picture or paper in the clipboard is added wherever one is on a page: text goes where it always does.
 * @returns what to say of others that were pasted with it; empty where there were none
 */
export function usePastedFile(take: (file: File) => void): Ref<string> {
  const left = ref('');
  function pasted(event: ClipboardEvent): void {
    const { files } = event.clipboardData ?? {};
    const file = files?.[0];
    if (!files || !file || event.defaultPrevented || document.querySelector('[role=dialog]')) return;
    event.preventDefault();
    left.value = leftFiles(files);
    take(file);
  }
  onMounted(() => window.addEventListener('paste', pasted));
  onBeforeUnmount(() => window.removeEventListener('paste', pasted));
  return left;
}
