import { spawn } from 'node:child_process';

/** The program that opens an address in the default browser; undefined where there is no display. */
export function browserOpener(
  platform: NodeJS.Platform,
  env: Record<string, string | undefined>,
): { command: string; args: string[] } | undefined {
  if (platform === 'darwin') return { command: 'open', args: [] };
  // Not `start`: it belongs to the shell, which would read the `&` and `?` of an address.
  if (platform === 'win32') return { command: 'rundll32', args: ['url.dll,FileProtocolHandler'] };
  if (env.DISPLAY || env.WAYLAND_DISPLAY) return { command: 'xdg-open', args: [] };
  return undefined;
}

/** Opens the address in the default browser, if there is one. The printed address serves where this fails. */
export function openBrowser(address: string): void {
  const opener = browserOpener(process.platform, process.env);
  if (!opener) return;
  const child = spawn(opener.command, [...opener.args, address], { detached: true, stdio: 'ignore' });
  child.once('error', () => console.log('No browser could be opened: open the address above yourself.'));
  child.unref();
}
