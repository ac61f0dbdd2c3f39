import type { WebContents } from 'electron';

/** Asks whether to load the page again; true for yes. */
export type AskToReload = (what: string) => Promise<boolean>;

const ABORTED = -3;

/** When the page stops or cannot be loaded, offers to load it again. The library is not touched by either. */
export function offerReload(contents: WebContents, ask: AskToReload): void {
  const offer = (what: string) => {
    ask(what)
      .then((again) => {
        if (again && !contents.isDestroyed()) contents.reload();
      })
      .catch((error: unknown) => console.error('The question could not be asked.', error));
  };
  contents.on('render-process-gone', (_event, { reason }) => {
    if (reason !== 'clean-exit') offer(`The page stopped (${reason}).`);
  });
  contents.on('did-fail-load', (_event, code, description, _url, isMainFrame) => {
    if (isMainFrame && code !== ABORTED) offer(`The page could not be loaded (${description}).`);
  });
}
