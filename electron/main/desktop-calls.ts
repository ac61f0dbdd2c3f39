import { isAbsolute } from 'node:path';
import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { z } from 'zod';
import { CHANNELS, type Channel, type Reply } from '../preload/contract';
import { isOurs } from './origin';

/** What the calls need of the desktop; paths stay on this side, pages know tokens only. */
export interface Desktop {
  /** Asks the user for a folder; undefined when they cancel. */
  chooseFolder(): Promise<string | undefined>;
  /** Makes a folder known under a token. */
  offer(folder: string): Promise<string>;
  /** The folder behind a token, or null. */
  folder(token: string): Promise<string | null>;
  reveal(path: string): void;
  setTitle(title: string): void;
  /** Whether this sender is a window of ours. */
  isOurWindow(sender: IpcMainInvokeEvent['sender']): boolean;
}

const token = z.string().min(1).max(64);
const title = z.string().max(200);

function refuse(code: string, message: string): Reply<never> {
  return { ok: false, code, message };
}

/** Whether the call comes from the main frame of our page in a window that we made. */
export function isFromOurPage(event: IpcMainInvokeEvent, desktop: Desktop): boolean {
  const frame = event.senderFrame;
  if (!frame || frame.parent !== null || !isOurs(frame.url)) return false;
  return desktop.isOurWindow(event.sender);
}

/** A path that may be shown in the file manager: absolute, and not on another machine. */
export function isRevealable(path: string): boolean {
  return isAbsolute(path) && !/^[\\/]{2}/.test(path);
}

async function showInFolder(desktop: Desktop, given: string): Promise<Reply<null>> {
  const path = await desktop.folder(given);
  if (path === null || !isRevealable(path)) {
    return refuse('not-found', 'This folder is not known here. Open the library again.');
  }
  desktop.reveal(path);
  return { ok: true, value: null };
}

/** Answers the page's few desktop calls. Sender and arguments are checked once, here, for all of them. */
export function answerDesktopCalls(ipcMain: IpcMain, desktop: Desktop): void {
  function answer<Args extends unknown[], T>(
    channel: Channel,
    schema: z.ZodType<Args>,
    work: (...args: Args) => Promise<Reply<T>> | Reply<T>,
  ): void {
    ipcMain.handle(channel, async (event, ...args: unknown[]): Promise<Reply<T>> => {
      if (!isFromOurPage(event, desktop))
        return refuse('not-allowed', 'This call did not come from Stillroom.');
      const read = schema.safeParse(args);
      if (!read.success) return refuse('invalid-input', 'Stillroom was asked for something it cannot read.');
      try {
        return await work(...read.data);
      } catch (error) {
        console.error(channel, error);
        return refuse('internal', 'The system could not do this. Try again.');
      }
    });
  }

  answer(CHANNELS.chooseLibraryFolder, z.tuple([]), async () => {
    const folder = await desktop.chooseFolder();
    return { ok: true, value: folder === undefined ? null : await desktop.offer(folder) };
  });
  answer(CHANNELS.showInFolder, z.tuple([token]), (given) => showInFolder(desktop, given));
  answer(CHANNELS.setTitle, z.tuple([title]), (text) => {
    desktop.setTitle(text);
    return { ok: true, value: null };
  });
}
