/** A web address that may be handed to the system's browser, in its normal form; undefined for anything else. */
export function vettedLink(url: string): string | undefined {
  if (!URL.canParse(url)) return undefined;
  const { protocol, username, password, href } = new URL(url);
  return protocol === 'https:' && username === '' && password === '' ? href : undefined;
}

/** Opens a vetted web address by `open`; anything else is left alone. */
export function openVettedLink(url: string, open: (url: string) => Promise<void>): void {
  const link = vettedLink(url);
  if (link === undefined) return;
  open(link).catch((error: unknown) => console.error('The system could not open a link.', error));
}
