import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { isMissing, type FileSystem } from '../file/file-system';
import { sha256Of, syncFolderNow, writeWholeFile } from '../file/whole-file';

const SHA256 = /^[0-9a-f]{64}$/;

/** Photos and data sheets, each under the SHA-256 of its bytes (`ab/abcdef…`), so that none is ever rewritten. */
export class Attachments {
  readonly #fs: FileSystem;
  readonly #library: string;
  readonly #folder: string;
  readonly #refuseReadOnly: () => void;
  readonly #onKept: (sha256: string) => void;

  /**
   * @param library the library's folder
   * @param refuseReadOnly throws Problem while nothing may be changed in the library
   * @param onKept told which is there, and whole
   */
  constructor(fs: FileSystem, library: string, refuseReadOnly: () => void, onKept: (sha256: string) => void) {
    this.#fs = fs;
    this.#library = library;
    this.#folder = join(library, 'attachments');
    this.#refuseReadOnly = refuseReadOnly;
    this.#onKept = onKept;
  }

  /** Keeps the bytes and returns their name. Bytes already kept, and whole, are not written again. */
  async put(bytes: Uint8Array): Promise<string> {
    const sha256 = sha256Of(bytes);
    this.#refuseReadOnly();
    try {
      if (!(await this.#isWhole(sha256))) await this.#write(sha256, bytes);
    } catch (error) {
      throw diskProblem(error, 'keep the attachment');
    }
    this.#onKept(sha256);
    return sha256;
  }

  async #write(sha256: string, bytes: Uint8Array): Promise<void> {
    await this.#makeFolders(join(this.#folder, sha256.slice(0, 2)));
    const { durable } = await writeWholeFile(this.#fs, this.#path(sha256), bytes);
    if (!durable) throw unsureOfFolder();
  }

  /** Makes the folders that are missing, each flushed into the one above; never the library's own, which may have moved. */
  async #makeFolders(group: string): Promise<void> {
    await this.#fs.stat(join(this.#library, 'library.sqlite')).catch((error: unknown) => {
      throw isMissing(error) ? movedAway(this.#library) : error;
    });
    await this.#fs.mkdir(group);
    for (const above of [this.#library, this.#folder])
      if (!syncFolderNow(this.#fs, above)) throw unsureOfFolder();
  }

  /** The bytes of that name. Throws Problem not-found, or library-damaged when they are no longer what they were. */
  async get(sha256: string): Promise<Uint8Array> {
    if (!SHA256.test(sha256)) throw missing(sha256);
    let bytes: Uint8Array;
    try {
      bytes = await this.#fs.readFile(this.#path(sha256));
    } catch (error) {
      throw isMissing(error) ? missing(sha256) : diskProblem(error, 'read the attachment');
    }
    if (sha256Of(bytes) === sha256) return bytes;
    throw new Problem({
      code: 'library-damaged',
      title: 'An attachment in this library is damaged.',
      advice:
        'Attach the original file again; it then takes the place of the damaged one. All else is untouched.',
      facts: { sha256 },
    });
  }

  #path(sha256: string): string {
    return join(this.#folder, sha256.slice(0, 2), sha256);
  }

  async #isWhole(sha256: string): Promise<boolean> {
    try {
      return sha256Of(await this.#fs.readFile(this.#path(sha256))) === sha256;
    } catch (error) {
      if (isMissing(error)) return false;
      throw error;
    }
  }
}

function unsureOfFolder(): Error {
  return Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
}

function movedAway(folder: string): Problem {
  return new Problem({
    code: 'library-missing',
    title: 'The folder of this library is not there any more.',
    advice: 'It was moved, renamed or its disk is gone. Put it back, or open the library where it is now.',
    facts: { folder },
  });
}

function missing(sha256: string): Problem {
  return new Problem({
    code: 'not-found',
    title: 'There is no such attachment in this library.',
    advice: 'It may not have been copied along with the library. Attach the original file again.',
    facts: { sha256 },
  });
}
