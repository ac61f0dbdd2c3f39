import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { endingOfShown, mediaTypeOf } from '@service/attachments/media-type';
import { folderName } from '@service/library/folder-name';
import { Problem } from '@service/problems/problem';
import type { RequestHandler } from '@service/security/hosted-app';
import { isOurs } from './origin';

const LONGEST_NAME = 60;

/** What attached documents are opened with. */
export interface DocumentParts {
  service: RequestHandler;
  /** The system's folder for temporary files. */
  temporary: string;
  /** Opens a file with the system's program for it; gives why not, or an empty text. */
  openPath(path: string): Promise<string>;
}

/** Whether a page's link leads to a document or photo that is kept with a material. */
export function isAttachment(url: string): boolean {
  return isOurs(url) && /^\/api\/attachments\/[0-9a-f]{64}$/.test(new URL(url).pathname);
}

/** A file name from what the maker called it; what cannot be one is told apart by its content. */
function fileNameFor(url: URL, ending: string): string {
  const hash = url.pathname.slice(-64, -52);
  const called = (url.searchParams.get('name') ?? '').replace(new RegExp(`\\.${ending}$`, 'i'), '');
  try {
    return `${folderName(called.slice(0, LONGEST_NAME))}.${ending}`;
  } catch {
    return `document ${hash}.${ending}`;
  }
}

/** Shows attached documents in the system's own programs, as copies that go when Stillroom ends. */
export class AttachedDocuments {
  private readonly folders: string[] = [];

  constructor(private readonly parts: DocumentParts) {}

  /** Writes a copy to a temporary folder and opens that. @throws Problem when it cannot be read or shown */
  async open(address: string): Promise<void> {
    const response = await this.parts.service.fetch(new Request(address));
    if (!response.ok) throw await problemIn(response);
    const bytes = new Uint8Array(await response.arrayBuffer());
    // Only these are ever written out and opened; what a file is, its first bytes tell and never its name.
    const type = mediaTypeOf(bytes);
    if (!type)
      throw new Problem({
        code: 'not-allowed',
        title: 'This is neither a PDF document nor a picture.',
        advice: 'Stillroom opens only those. Save it, and open it from there if you trust it.',
      });
    const folder = await mkdtemp(join(this.parts.temporary, 'stillroom-document-'));
    this.folders.push(folder);
    const path = join(folder, fileNameFor(new URL(address), endingOfShown(type)));
    // Read only: a note made in this copy would be lost, and the viewer then says so.
    await writeFile(path, bytes, { mode: 0o400, flag: 'wx' });
    const refused = await this.parts.openPath(path);
    if (refused !== '')
      throw new Problem({
        code: 'not-found',
        title: `The system could not open this ${type === 'application/pdf' ? 'PDF' : 'picture'} (${refused}).`,
        advice:
          'Install a program that shows it, or choose one for this kind of file in the system’s settings.',
      });
  }

  /** Removes the copies. One that a program still holds is left to the system. */
  async sweep(): Promise<void> {
    await Promise.allSettled(
      this.folders.splice(0).map((folder) => rm(folder, { recursive: true, force: true })),
    );
  }
}

async function problemIn(response: Response): Promise<Problem> {
  const details = (await response.json().catch(() => ({}))) as { title?: string; detail?: string };
  return new Problem({
    code: 'not-found',
    title: details.title ?? 'This document could not be read.',
    advice: details.detail ?? 'Add it again.',
  });
}
