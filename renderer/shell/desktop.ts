import { onBeforeUnmount, onMounted, watchEffect } from 'vue';
import { useRouter } from 'vue-router';
import { useLibrary } from '../library/store';
import { printHere } from '../sheets/print-command';
import { usePalette } from './palette-store';

/** What a desktop window offers beyond a page; absent in a browser. */
export interface Desktop {
  chooseLibraryFolder(): Promise<
    { ok: true; value: string | null } | { ok: false; code: string; message: string }
  >;
  showInFolder(token: string): Promise<unknown>;
  setTitle(title: string): Promise<unknown>;
  onMenu(listener: (command: string) => void): () => void;
}

declare global {
  interface Window {
    stillroomDesktop?: Desktop;
  }
}

/** Follows the window's menu, and names the window after the library. */
export function useDesktop(): void {
  const router = useRouter();
  const palette = usePalette();
  const library = useLibrary();
  const commands: Record<string, () => void> = {
    'new-library': () => void router.push('/library'),
    'open-library': () => void router.push('/library'),
    print: () => {
      if (!printHere()) palette.show('print');
    },
    find: () => palette.show(),
    settings: () => void router.push('/settings'),
    help: () => void router.push({ name: 'help' }),
  };
  let stop: (() => void) | undefined;
  onMounted(() => (stop = window.stillroomDesktop?.onMenu((command) => commands[command]?.())));
  onBeforeUnmount(() => stop?.());
  watchEffect(() => {
    const title = library.open ? `${library.open.name} – Stillroom` : 'Stillroom';
    document.title = title;
    void window.stillroomDesktop?.setTitle(title);
  });
}
