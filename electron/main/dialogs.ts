import { basename } from 'node:path';
import { errorWords } from '@service/problems/words';
import type { BrowserWindow, Dialog, MessageBoxOptions } from 'electron';

type Window = BrowserWindow | undefined;

function show(dialog: Dialog, window: Window, options: MessageBoxOptions) {
  return window ? dialog.showMessageBox(window, options) : dialog.showMessageBox(options);
}

/** Whether the user chose the first of the two buttons. */
async function isFirst(dialog: Dialog, window: Window, options: MessageBoxOptions): Promise<boolean> {
  const { response } = await show(dialog, window, { defaultId: 0, cancelId: 1, ...options });
  return response === 0;
}

/** Asks for a folder, of a library or for its backups, beginning in `documents`; undefined when the user cancels. */
export async function chooseFolder(
  dialog: Dialog,
  window: Window,
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
export function askToReload(dialog: Dialog, window: BrowserWindow, what: string): Promise<boolean> {
  return isFirst(dialog, window, {
    type: 'warning',
    message: what,
    detail: 'What was saved is safe in the library. Loading the page again does not change it.',
    buttons: ['Load again', 'Cancel'],
  });
}

/** Asks whether a library, asked for by starting Stillroom once more, is opened in place of the present one. */
export function askToOpenOther(dialog: Dialog, window: Window, folder: string): Promise<boolean> {
  return isFirst(dialog, window, {
    type: 'question',
    message: `Open “${basename(folder)}” in place of the library that is open?`,
    detail: `${folder}\n\nThe present library is closed; what is marked “Saved” is in it.`,
    buttons: ['Open it', 'Stay here'],
    defaultId: 1,
  });
}

/** Tells that the process that keeps the library was lost and is there again. */
export async function tellStartedAgain(dialog: Dialog, window: Window): Promise<void> {
  await show(dialog, window, {
    type: 'warning',
    message: 'The part of Stillroom that keeps your library stopped, and was started again.',
    detail:
      'Everything that was shown as saved is in the library. Check that your last change is there, and make it again if not.',
    buttons: ['Continue'],
  });
}

/** Tells that it stopped too often to be started again unasked; true to try once more, false to quit. */
export function askToStartAgain(dialog: Dialog, window: Window): Promise<boolean> {
  return isFirst(dialog, window, {
    type: 'error',
    message: 'The part of Stillroom that keeps your library stops again and again.',
    detail:
      'Everything that was shown as saved is in the library’s folder. Close other programs to free memory, then try again.',
    buttons: ['Try again', 'Quit Stillroom'],
  });
}

/** Tells why something could not be done; the window goes on. */
export async function reportTrouble(dialog: Dialog, window: Window, error: unknown): Promise<void> {
  console.error(error);
  await show(dialog, window, { type: 'warning', ...errorWords(error), buttons: ['OK'] });
}

/** Tells why the library could not be closed as usual. */
export async function reportClosing(dialog: Dialog, error: unknown): Promise<void> {
  console.error(error);
  const { message, detail } = errorWords(error);
  const safe =
    'Everything that was shown as saved is in the library’s folder, and is read when you next open it.';
  await dialog.showMessageBox({ type: 'warning', message, detail: `${detail}\n\n${safe}`, buttons: ['OK'] });
}

/** Tells why Stillroom could not start. */
export function reportStart(dialog: Dialog, error: unknown): void {
  console.error(error);
  const { message, detail } = errorWords(error);
  dialog.showErrorBox(message, detail);
}
