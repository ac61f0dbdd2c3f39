import { onBeforeUnmount, onMounted } from 'vue';
import { useRouter } from 'vue-router';
import { printHere } from '../sheets/print-command';
import { focusContent } from './focus-content';
import { usePalette } from './palette-store';

/** The keys that work everywhere. Each is listed in the palette beside its command. */
export function useKeys(): void {
  const palette = usePalette();
  const router = useRouter();
  const go: Record<string, string> = {
    '1': '/',
    '2': '/materials',
    '3': '/bench',
    '4': '/formulas',
    '5': '/batches',
    '6': '/calculators',
  };

  function pressed(event: KeyboardEvent): void {
    const command = event.ctrlKey || event.metaKey;
    if (command && event.key.toLowerCase() === 'k') {
      event.preventDefault();
      palette.show();
    } else if (command && !event.shiftKey && !event.altKey && event.key.toLowerCase() === 'p') {
      event.preventDefault();
      if (!printHere()) palette.show('print');
    } else if (event.key === 'F1') {
      event.preventDefault();
      void router.push({ name: 'help' }).then(() => focusContent(true));
    } else if (event.altKey && !command && go[event.key]) {
      event.preventDefault();
      void router.push(go[event.key] ?? '/').then(() => focusContent(true));
    }
  }
  onMounted(() => window.addEventListener('keydown', pressed));
  onBeforeUnmount(() => window.removeEventListener('keydown', pressed));
}
