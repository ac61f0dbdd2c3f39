import type { WebContents } from 'electron';
import { isAttachment } from './attached-documents';
import { isOurs } from './origin';

interface Navigation {
  url: string;
  preventDefault(): void;
}

/**
 * Rules for every page that Electron ever makes: it stays ours, makes no windows, and embeds nothing. Of the links that
 * ask for a window only an attached document leads anywhere: to the system's program for it, by `openDocument`.
 */
export function ruleContents(contents: WebContents, openDocument: (url: string) => void): void {
  const stay = (event: Navigation) => {
    if (!isOurs(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    if (isAttachment(url)) openDocument(url);
    return { action: 'deny' };
  });
}
