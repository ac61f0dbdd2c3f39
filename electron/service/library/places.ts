import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { z } from 'zod';

const MOST_RECENT = 12;
const recentFile = z.object({
  recent: z.array(z.object({ folder: z.string(), openedAt: z.iso.datetime() })).default([]),
});

/** A library folder as the screens know it: by a token, since paths never come from a page. */
export interface KnownFolder {
  token: string;
  name: string;
  folder: string;
  openedAt: string;
}

/** Where this machine's user keeps libraries, and which were open last. */
export class Places {
  private readonly offered = new Map<string, string>();

  /**
   * @param documents the folder in which new libraries are made
   * @param config the folder that holds the list of recent libraries
   */
  constructor(
    readonly documents: string,
    private readonly config: string,
  ) {}

  /** Makes a folder that the user chose known under a token. */
  offer(folder: string): string {
    const path = resolve(folder);
    const token = createHash('sha256').update(path).digest('hex').slice(0, 24);
    this.offered.set(token, path);
    return token;
  }

  /** The folder behind a token, or undefined when no such folder was ever offered. */
  folder(token: string): string | undefined {
    return this.offered.get(token);
  }

  recent(): KnownFolder[] {
    return this.read().map(({ folder, openedAt }) => ({
      token: this.offer(folder),
      name: basename(folder),
      folder,
      openedAt,
    }));
  }

  /** Puts a library first among the recent ones. */
  remember(folder: string, openedAt: string): void {
    const rest = this.read().filter((known) => known.folder !== folder);
    const recent = [{ folder, openedAt }, ...rest].slice(0, MOST_RECENT);
    mkdirSync(this.config, { recursive: true });
    const target = join(this.config, 'recent.json');
    const beside = `${target}.${randomBytes(4).toString('hex')}`;
    writeFileSync(beside, JSON.stringify({ recent }, null, 1));
    renameSync(beside, target);
  }

  private read(): { folder: string; openedAt: string }[] {
    try {
      return recentFile.parse(JSON.parse(readFileSync(join(this.config, 'recent.json'), 'utf8'))).recent;
    } catch {
      // The list is a convenience: none yet, or one that cannot be read, is an empty one.
      return [];
    }
  }
}
