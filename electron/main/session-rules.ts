import type { Session } from 'electron';
import { isOwnDownload, mayRequest } from './origin';

/** Keeps the window offline: every request but our own is cancelled. Developer tools need theirs while developing. */
export function filterRequests(session: Session, isPackaged: boolean): void {
  session.webRequest.onBeforeRequest(({ url }, answer) => {
    const developing = !isPackaged && url.startsWith('devtools:');
    answer({ cancel: !mayRequest(url) && !developing });
  });
}

/** Lets the maker save what our own service made (sheets, backups); the whole chain of addresses must be ours. */
export function filterDownloads(session: Session): void {
  session.on('will-download', (event, item) => {
    const chain = [item.getURL(), ...item.getURLChain()];
    if (!chain.every(isOwnDownload)) event.preventDefault();
  });
}
