import type { WebContents } from 'electron';
import { openVettedLink } from './external-links';
import { isOurs } from './origin';

interface Navigation {
  url: string;
  preventDefault(): void;
}

/** Rules for every page that Electron ever makes: it stays ours, makes no windows, and embeds nothing. */
export function ruleContents(contents: WebContents, openLink: (url: string) => Promise<void>): void {
  const stay = (event: Navigation) => {
    if (!isOurs(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    openVettedLink(url, openLink);
    return { action: 'deny' };
  });
}
