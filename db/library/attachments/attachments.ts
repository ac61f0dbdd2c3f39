import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { isMissing, type FileSystem } from '../file/file-system';
import { sha256Of, writeWholeFile } from '../file/whole-file';

const SHA256 = /^[0-9a-f]{64}$/;

/** Photos and data sheets, each under the SHA-256 of its bytes (`ab/abcdef…`), so that none is ever rewritten. */
export class Attachments {
  readonly #fs: FileSystem;
  readonly #folder: string;

  constructor(fs: FileSystem, folder: string) {
    this.#fs = fs;
    this.#folder = folder;
  }

  /** Keeps the bytes and returns their name. Bytes already kept, and whole, are not written again. */
  async put(bytes: Uint8Array): Promise<string> {
    const sha256 = sha256Of(bytes);
    try {
      if (await this.#isWhole(sha256)) return sha256;
      await this.#fs.mkdir(join(this.#folder, sha256.slice(0, 2)));
      await writeWholeFile(this.#fs, this.#path(sha256), bytes);
      return sha256;
    } catch (error) {
      throw diskProblem(error, 'keep the attachment');
    }
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

function missing(sha256: string): Problem {
  return new Problem({
    code: 'not-found',
    title: 'There is no such attachment in this library.',
    advice: 'It may not have been copied along with the library. Attach the original file again.',
    facts: { sha256 },
  });
}
