import { randomBytes } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface OpeningPage {
  file: string;
  remove(): void;
}

/**
 * A file that leads a browser to an address. The browser is started with the file's name, so that the key in the
 * address never stands in a list of processes; nobody else on the machine may read the file.
 * @param folder where a browser may read too: some are kept out of hidden and temporary folders
 */
export function openingPage(folder: string, address: string): OpeningPage {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `open-stillroom-${randomBytes(6).toString('hex')}.html`);
  const lead = `<meta http-equiv="refresh" content="0; url=${address}">`;
  const body = `<!doctype html><meta charset="utf-8"><title>Stillroom</title>${lead}\n`;
  writeFileSync(file, body, { mode: 0o600, flag: 'wx' });
  return { file, remove: () => rmSync(file, { force: true }) };
}
