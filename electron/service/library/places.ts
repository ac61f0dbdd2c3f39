import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { z } from 'zod';
import { PLACES_FILE } from './places-file';
import { realFolder } from './real-folder';

const MOST_RECENT = 12;
const placesFile = z.object({
  recent: z.array(z.object({ folder: z.string(), openedAt: z.iso.datetime() })).default([]),
  /** For a library's folder, the folder in which its backups are kept when not within it. */
  backups: z.record(z.string(), z.string()).default({}),
  /** For a library's folder, a second one to which every backup is copied. */
  copies: z.record(z.string(), z.string()).default({}),
});
type PlacesFile = z.infer<typeof placesFile>;

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
   * @param home under which a page may list folders to choose from; undefined where the system's own dialog does that
   */
  constructor(
    readonly documents: string,
    private readonly config: string,
    readonly home?: string,
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
    return this.read().recent.map(({ folder, openedAt }) => ({
      token: this.offer(folder),
      name: basename(folder),
      folder,
      openedAt,
    }));
  }

  /** Puts a library first among the recent ones. */
  remember(folder: string, openedAt: string): void {
    const known = this.read();
    const rest = known.recent.filter((other) => realFolder(other.folder) !== realFolder(folder));
    this.write({ ...known, recent: [{ folder, openedAt }, ...rest].slice(0, MOST_RECENT) });
  }

  /** Where a library's backups are kept, when not in its own folder: a sub-folder named after it. */
  backupFolder(libraryFolder: string): string | undefined {
    const place = realFolder(libraryFolder);
    const found = Object.entries(this.read().backups).find(([folder]) => realFolder(folder) === place);
    return found && join(found[1], `${basename(found[0])} backups`);
  }

  /** Chooses where a library's backups are kept from the next opening on; null is its own folder again. */
  chooseBackupFolder(libraryFolder: string, chosen: string | null): void {
    const known = this.read();
    const backups = Object.fromEntries(
      Object.entries(known.backups).filter(([folder]) => realFolder(folder) !== realFolder(libraryFolder)),
    );
    this.write({
      ...known,
      backups: chosen === null ? backups : { ...backups, [libraryFolder]: resolve(chosen) },
    });
  }

  /** Where a copy of every backup of a library goes: a sub-folder named after it; undefined for nowhere. */
  backupCopies(libraryFolder: string): string | undefined {
    const place = realFolder(libraryFolder);
    const found = Object.entries(this.read().copies).find(([folder]) => realFolder(folder) === place);
    return found && join(found[1], `${basename(found[0])} backups`);
  }

  /** Chooses where copies of a library's backups go from the next opening on; null is nowhere. */
  chooseBackupCopies(libraryFolder: string, chosen: string | null): void {
    const known = this.read();
    const copies = Object.fromEntries(
      Object.entries(known.copies).filter(([folder]) => realFolder(folder) !== realFolder(libraryFolder)),
    );
    this.write({
      ...known,
      copies: chosen === null ? copies : { ...copies, [libraryFolder]: resolve(chosen) },
    });
  }

  private write(places: PlacesFile): void {
    mkdirSync(this.config, { recursive: true });
    const target = join(this.config, PLACES_FILE);
    const beside = `${target}.${randomBytes(4).toString('hex')}`;
    writeFileSync(beside, JSON.stringify(places, null, 1));
    renameSync(beside, target);
  }

  private read(): PlacesFile {
    try {
      return placesFile.parse(JSON.parse(readFileSync(join(this.config, PLACES_FILE), 'utf8')));
    } catch {
      // A convenience: none yet, or one that cannot be read, is an empty one.
      return { recent: [], backups: {}, copies: {} };
    }
  }
}
