import { Problem } from '@core/problems/problem';
import type { BrowserWindow, Dialog } from 'electron';

/** Asks for a folder, of a library or for its backups, beginning in `documents`; undefined when the user cancels. */
export async function chooseFolder(
  dialog: Dialog,
  window: BrowserWindow | undefined,
  documents: string,
): Promise<string | undefined> {
  const options = {
    title: 'Choose a folder',
    defaultPath: documents,
    properties: ['openDirectory' as const, 'createDirectory' as const],
  };
  const { canceled, filePaths } = window
    ? await dialog.showOpenDialog(window, options)
    : await dialog.showOpenDialog(options);
  return canceled ? undefined : filePaths[0];
}

/** Tells that the page stopped, and asks whether to load it again. */
export async function askToReload(dialog: Dialog, window: BrowserWindow, what: string): Promise<boolean> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'warning',
    message: what,
    detail: 'What was saved is safe in the library. Loading the page again does not change it.',
    buttons: ['Load again', 'Leave it'],
    defaultId: 0,
    cancelId: 1,
  });
  return response === 0;
}

function wordsFor(error: unknown): { message: string; detail: string } {
  if (error instanceof Problem) return { message: error.message, detail: error.advice };
  return { message: 'Stillroom met an error of its own.', detail: String(error) };
}

/** Tells why the library could not be closed as usual. */
export async function reportClosing(dialog: Dialog, error: unknown): Promise<void> {
  console.error(error);
  const { message, detail } = wordsFor(error);
  const safe = 'Every acknowledged change stands in the library’s log and is read when you open it next.';
  await dialog.showMessageBox({ type: 'warning', message, detail: `${detail}\n\n${safe}`, buttons: ['OK'] });
}

/** Tells why Stillroom could not start. */
export function reportStart(dialog: Dialog, error: unknown): void {
  console.error(error);
  const { message, detail } = wordsFor(error);
  dialog.showErrorBox(message, detail);
}
