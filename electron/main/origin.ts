/** The window's own scheme and host: `app://stillroom/`. */
export const SCHEME = 'app';
export const HOST = 'stillroom';
export const ORIGIN = `${SCHEME}://${HOST}`;

/** Whether a URL, parsed, belongs to our page. Never by comparing text: look-alikes begin the same way. */
export function isOurs(url: string): boolean {
  if (!URL.canParse(url)) return false;
  const { protocol, hostname, port, username, password } = new URL(url);
  return protocol === `${SCHEME}:` && hostname === HOST && port === '' && username === '' && password === '';
}

/** Whether the page, or the PDF preview that it made itself, may be the source of a download. */
export function isOwnDownload(url: string): boolean {
  return isOurs(url.startsWith('blob:') ? url.slice('blob:'.length) : url);
}

/** Whether the window may send this request at all: ours, and what the page made in memory. Nothing else leaves. */
export function mayRequest(url: string): boolean {
  if (url.startsWith('data:')) return true;
  return isOwnDownload(url);
}
