import type { App, BrowserWindow } from 'electron';

/** What has to be closed before the program may end. */
export interface Closable {
  close(): Promise<void>;
}

/**
 * Holds quitting until the library is closed, its log folded in and its lock given back. When that fails, `report`
 * tells why, and the program still ends: whatever was acknowledged stands in the log, and opening replays it.
 */
export function closeBeforeQuit(
  app: App,
  session: Closable,
  report: (error: unknown) => Promise<void>,
): void {
  let closed = false;
  let closing = false;
  app.on('before-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    if (closing) return;
    closing = true;
    session
      .close()
      .catch(report)
      .finally(() => {
        closed = true;
        app.quit();
      });
  });
  app.on('window-all-closed', () => app.quit());
}

/** Windows ends its session without `before-quit`: fold the log in at its first warning. */
export function flushBeforeSessionEnd(window: BrowserWindow, flush: () => Promise<void>): void {
  const onEnding = () => {
    flush().catch((error: unknown) => console.error('The log was not folded in; opening replays it.', error));
  };
  window.on('query-session-end', onEnding);
  window.on('session-end', onEnding);
}
