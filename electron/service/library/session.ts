import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Problem } from '@core/problems/problem';
import { createShelf, type Shelf } from '@core/shelf/shelf';
import type { OpenLibrary } from '@db/library/open-library';
import { readShelfEntries } from '@db/materials/shelf-entries';
import type { Places } from './places';

/** The open library, and the index that answers its materials list. */
export interface OpenedLibrary {
  library: OpenLibrary;
  shelf: Shelf;
}

/** How the session makes and opens library folders; the hosts give the real ones, tests may give others. */
export interface LibraryOpener {
  create(folder: string): Promise<OpenLibrary>;
  open(folder: string): Promise<OpenLibrary>;
  /** Makes a new library at `target` from the newest good backup of the damaged one in `folder`. */
  recover(folder: string, target: string): Promise<void>;
  /** Opens a library although someone else seems to have it open; the maker asked for it. */
  takeOver(folder: string): Promise<OpenLibrary>;
  /** Fills a new library with the demonstration maker's shelf and formulas. */
  fillWithDemonstration(library: OpenLibrary): void;
}

const LIBRARY_FILE = 'library.sqlite';

/** At most one library is open at a time. All that opens, makes or closes one goes through here. */
export class LibrarySession {
  private opened: OpenedLibrary | null = null;
  /** Why the library asked for at start could not be opened; shown on the first screen. */
  trouble: Problem | null = null;
  /** The folder in which `trouble` was met. */
  troubleFolder: string | null = null;
  /** A folder asked for at start that holds no library yet: where the first one will be made. */
  startFolder: string | null = null;

  constructor(
    readonly places: Places,
    private readonly opener: LibraryOpener,
    private readonly now: () => Date,
  ) {}

  /** The open library. @throws Problem `no-library` when none is */
  current(): OpenedLibrary {
    if (this.opened) return this.opened;
    throw new Problem({
      code: 'no-library',
      title: 'No library is open.',
      advice: 'Open one, or start a new one, on the first screen.',
    });
  }

  /** The open library, or null. */
  currentOrNull(): OpenedLibrary | null {
    return this.opened;
  }

  /** Opens the folder given at start, or the library that was open last. What stands in the way is kept in `trouble`. */
  async start(asked: string | undefined): Promise<void> {
    const folder = asked ? resolve(asked) : this.places.recent()[0]?.folder;
    if (!folder) return;
    const hasNothing = !existsSync(folder) || isEmptyFolder(folder);
    if (asked && hasNothing) {
      this.startFolder = folder;
      return;
    }
    try {
      await this.open(folder);
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      this.trouble = error;
      this.troubleFolder = folder;
    }
  }

  async open(folder: string): Promise<void> {
    const library = await this.opener.open(resolve(folder));
    await this.take(library);
  }

  /**
   * Makes a library in a new folder and opens it; the folder must not hold anything yet.
   * @param passing true for a library in a temporary folder, which is not put among the recent ones
   */
  async create(folder: string, kind: 'empty' | 'demonstration', passing = false): Promise<void> {
    const path = resolve(folder);
    if (existsSync(path) && !isEmptyFolder(path))
      throw new Problem({
        code: 'conflict',
        title: existsSync(join(path, LIBRARY_FILE))
          ? 'There is already a library of this name.'
          : 'There is already something in this place.',
        advice: 'Choose another name, or open the library that is there.',
      });
    const library = await this.opener.create(path);
    if (kind === 'demonstration') this.opener.fillWithDemonstration(library);
    await this.take(library, passing);
  }

  /** Opens the newest good backup of a damaged library, as a library of its own beside it. */
  async recover(): Promise<void> {
    const damaged = this.troubleFolder;
    if (!damaged)
      throw new Problem({
        code: 'not-found',
        title: 'No library is in trouble.',
        advice: 'Open one from the list.',
      });
    const target = freeFolderBeside(damaged, this.now().toISOString().slice(0, 10));
    await this.opener.recover(damaged, target);
    await this.open(target);
  }

  /** Opens the present library for writing although another seems to hold it. */
  async takeOver(): Promise<void> {
    const { folder } = this.current().library;
    await this.close();
    await this.take(await this.opener.takeOver(folder));
  }

  async close(): Promise<void> {
    const closing = this.opened;
    this.opened = null;
    await closing?.library.close();
  }

  /** Reads the shelf anew: after a restore, everything may be different. */
  refreshShelf(): void {
    const { library } = this.current();
    this.opened = { library, shelf: createShelf(readShelfEntries(library)) };
  }

  private async take(library: OpenLibrary, passing = false): Promise<void> {
    await this.close();
    this.opened = { library, shelf: createShelf(readShelfEntries(library)) };
    this.trouble = null;
    this.troubleFolder = null;
    this.startFolder = null;
    if (!passing) this.places.remember(library.folder, this.now().toISOString());
  }
}

function freeFolderBeside(folder: string, day: string): string {
  for (let count = 1; ; count += 1) {
    const target = `${folder} (recovered ${day}${count > 1 ? ` ${count}` : ''})`;
    if (!existsSync(target)) return target;
  }
}

function isEmptyFolder(path: string): boolean {
  try {
    return readdirSync(path).length === 0;
  } catch {
    return false;
  }
}
