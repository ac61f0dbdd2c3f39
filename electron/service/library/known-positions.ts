import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LibraryMemory, Remembered } from '@db/library/opening/remembered';
import { z } from 'zod';

const shape = z.object({ id: z.string(), sequence: z.number(), chain: z.string() });

/** How each library stood when it was last closed on this computer: a small file each, apart from the libraries. */
export class KnownPositions implements LibraryMemory {
  readonly #folder: string;

  /** @param config the folder of this computer's own configuration */
  constructor(config: string) {
    this.#folder = join(config, 'left');
  }

  recall(library: string): Remembered | undefined {
    try {
      return shape.parse(JSON.parse(readFileSync(this.#pathOf(library), 'utf8')));
    } catch {
      // Never seen here, or not to be read: then there is nothing to compare with.
      return undefined;
    }
  }

  remember(library: string, { id, sequence, chain }: Remembered): void {
    try {
      mkdirSync(this.#folder, { recursive: true });
      writeFileSync(this.#pathOf(library), JSON.stringify({ id, sequence, chain }));
    } catch {
      // It informs: a library that is closed is closed.
    }
  }

  #pathOf(library: string): string {
    return join(this.#folder, `${createHash('sha256').update(library).digest('hex').slice(0, 24)}.json`);
  }
}
