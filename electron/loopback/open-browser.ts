import { spawn } from 'node:child_process';
import { openingPage } from './opening-page';

/** The program that opens a file in the default browser; undefined where there is no display. */
export function browserOpener(
  platform: NodeJS.Platform,
  env: Record<string, string | undefined>,
): { command: string; args: string[] } | undefined {
  if (platform === 'darwin') return { command: 'open', args: [] };
  // Not `start`: it belongs to the shell, which reads some signs of a path as its own.
  if (platform === 'win32') return { command: 'rundll32', args: ['url.dll,FileProtocolHandler'] };
  if (env.DISPLAY || env.WAYLAND_DISPLAY) return { command: 'xdg-open', args: [] };
  return undefined;
}

function failed(): void {
  console.log('No browser could be opened: open the address above yourself.');
}

/**
 * Opens the address in the default browser, if there is one, by way of a page in `folder`. The printed address serves
 * where this fails.
 * @returns takes that page away; called once the address was used, and at the end
 */
export function openBrowser(address: string, folder: string): () => void {
  const opener = browserOpener(process.platform, process.env);
  if (!opener) return () => undefined;
  try {
    const { file, remove } = openingPage(folder, address);
    const child = spawn(opener.command, [...opener.args, file], { detached: true, stdio: 'ignore' });
    child.once('error', failed);
    child.unref();
    return remove;
  } catch {
    failed();
    return () => undefined;
  }
}
