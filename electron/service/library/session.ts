import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Problem } from '@core/problems/problem';
import type { OpenLibrary } from '@db/library/open-library';
import type { ReadProgress } from '@db/library/opening/read-file';
import type { KeptLog, Recovered } from '@db/library/opening/recovery';
import type { GoodLog } from '@db/library/log/salvage';
import { z } from 'zod';
import { Changes } from '../changes/changes';
import { LibraryLists } from '../lists/library-lists';
import { noLibrary } from './no-library';
import type { Places } from './places';
import { realFolder } from './real-folder';

/** The open library, and the indexes that answer its lists. */
export interface OpenedLibrary {
  library: OpenLibrary;
  lists: LibraryLists;
  /** What became of its log, when it was opened with a part of it only. */
  keptLog: KeptLog | null;
}

/** How the session makes and opens library folders; the hosts give the real ones, tests may give others. */
export interface LibraryOpener {
  create(folder: string): Promise<OpenLibrary>;
  open(folder: string, onReading?: ReadProgress): Promise<OpenLibrary>;
  /** Opens a library for reading only, beside the one that is open. */
  look(folder: string): Promise<OpenLibrary>;
  /** Opens a library whose file is damaged from one of its backups; the damaged file is kept among them. */
  recover(folder: string, backupName: string): Promise<Recovered>;
  /** Opens a library whose log is damaged with the part of it that holds; all of the log is kept aside. */
  recoverLog(folder: string): Promise<Recovered>;
  /** Opens a library although someone else seems to have it open; the maker asked for it. */
  takeOver(folder: string): Promise<OpenLibrary>;
  /** Fills a new library with the demonstration maker's shelf and formulas. */
  fillWithDemonstration(library: OpenLibrary): Promise<void>;
  /** Gives a new library the example substances and limits of law, the demonstration as old as its versions. */
  fillWithExamples(library: OpenLibrary, kind: 'empty' | 'demonstration'): Promise<void>;
}

const OUTSIDE_CHECK_MS = 30_000;
const LIBRARY_FILE = 'library.sqlite';
const goodLog = z.object({ taken: z.number(), left: z.number() });

/** What is being opened, and how much of its file has been read, in bytes; `of` is 0 until that is known. */
export interface Opening {
  folder: string;
  done: number;
  of: number;
}

interface Taking {
  /** In a temporary folder: not put among the recent ones. */
  passing?: boolean;
  keptLog?: KeptLog;
}

/** At most one library is open at a time. All that opens, makes or closes one goes through here. */
export class LibrarySession {
  private opened: OpenedLibrary | null = null;
  private outsideWatch: NodeJS.Timeout | undefined;
  /** Settles when all that was asked before is done; never rejects. */
  private turn: Promise<void> = Promise.resolve();
  /** How much of that is not done yet. */
  private turns = 0;
  /** What is being opened just now. */
  opening: Opening | null = null;
  /** Tells every window what changes. */
  readonly changes = new Changes();
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
    throw noLibrary();
  }

  /** Settles once nothing more is on its way that a request could wait for: a library is open, or none will be. */
  async ready(): Promise<void> {
    while (!this.opened && this.turns > 0) await this.turn;
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
    await this.open(folder).catch((error: unknown) => {
      // Told on the first screen; the host starts all the same.
      if (!(error instanceof Problem)) throw error;
    });
  }

  /** One after another: two windows that open a library at once must not find each other's lock. */
  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    this.turns += 1;
    const done = this.turn.then(work).finally(() => (this.turns -= 1));
    this.turn = done.then(
      () => undefined,
      () => undefined,
    );
    return done;
  }

  /** Opens a library's folder, anew when it is the one open. What stands in the way is kept in `trouble` too. */
  open(folder: string): Promise<void> {
    return this.inTurn(() => this.openNow(folder));
  }

  private async openNow(folder: string): Promise<void> {
    const path = realFolder(folder);
    try {
      await this.telling(path, async (onReading) => {
        if (this.opened?.library.folder === path) await this.closeNow();
        await this.take(await this.opener.open(path, onReading));
      });
    } catch (error) {
      this.keepTrouble(error, path);
      throw error;
    }
  }

  /** What keeps a library from being opened is told on the first screen, with the ways to open it after all. */
  private keepTrouble(error: unknown, folder: string): void {
    if (error instanceof Problem) {
      this.trouble = error;
      this.troubleFolder = folder;
    }
    this.changes.tellLibrary();
  }

  /** Says what is being opened while `work` opens it. */
  private async telling(folder: string, work: (onReading: ReadProgress) => Promise<void>): Promise<void> {
    const opening: Opening = { folder, done: 0, of: 0 };
    this.opening = opening;
    try {
      await work((done, of) => Object.assign(opening, { done, of }));
    } finally {
      this.opening = null;
    }
  }

  /**
   * Makes a library in a new folder and opens it; the folder must not hold anything yet.
   * @param passing true for a library in a temporary folder, which is not put among the recent ones
   */
  create(folder: string, kind: 'empty' | 'demonstration', passing = false): Promise<void> {
    return this.inTurn(() => this.createNow(folder, kind, passing));
  }

  private async createNow(folder: string, kind: 'empty' | 'demonstration', passing: boolean): Promise<void> {
    const path = resolve(folder);
    refuseTaken(path);
    await this.telling(path, async () => {
      const library = await this.opener.create(path);
      await this.opener.fillWithExamples(library, kind);
      if (kind === 'demonstration') await this.opener.fillWithDemonstration(library);
      await this.take(library, { passing });
    });
  }

  /** Opens the library in trouble from its newest good backup. @throws Problem when there is none */
  recover(): Promise<void> {
    return this.inTurn(() => this.recoverNow());
  }

  private async recoverNow(): Promise<void> {
    const backup = z.object({ name: z.string() }).safeParse(this.trouble?.facts.newestBackup);
    if (!this.troubleFolder || !backup.success)
      throw new Problem({
        code: 'not-found',
        title: 'There is no good backup to open.',
        advice: 'Look for a copy of the library’s folder on another disk. Nothing here was changed.',
      });
    const folder = this.troubleFolder;
    await this.telling(folder, async () => {
      const { library, log } = await this.opener.recover(folder, backup.data.name);
      await this.take(library, { keptLog: log });
    });
  }

  /** How much holds of the log of the library in trouble; null when its log is not the trouble. */
  goodLog(): GoodLog | null {
    const { success, data } = goodLog.safeParse(this.trouble?.facts.goodLog);
    return success ? data : null;
  }

  /**
   * Opens the library in trouble with its file as it is, and the part of its log that holds.
   * @throws Problem when neither is the trouble
   */
  recoverLog(): Promise<void> {
    return this.inTurn(() => this.recoverLogNow());
  }

  private async recoverLogNow(): Promise<void> {
    if (!this.troubleFolder || !(this.goodLog() || this.trouble?.facts.asItIs))
      throw new Problem({
        code: 'not-found',
        title: 'There is no library here that can be opened in this way.',
        advice: 'Open the library again to see what is wrong with it. Nothing was changed.',
      });
    const folder = this.troubleFolder;
    await this.telling(folder, async () => {
      const { library, log } = await this.opener.recoverLog(folder);
      await this.take(library, { keptLog: log });
    });
  }

  /** Opens the present library for writing although another seems to hold it. */
  takeOver(): Promise<void> {
    return this.inTurn(async () => {
      const { folder } = this.current().library;
      try {
        await this.telling(folder, async () => {
          await this.closeNow();
          await this.take(await this.opener.takeOver(folder));
        });
      } catch (error) {
        this.keepTrouble(error, folder);
        throw error;
      }
    });
  }

  /** Another library for reading, while ours stays open; whoever asked closes it. @throws Problem */
  look(folder: string): Promise<OpenLibrary> {
    return this.opener.look(realFolder(folder));
  }

  /** Makes a library in a new folder beside the one that is open, fills and closes it. @throws Problem conflict */
  async makeBeside(folder: string, fill: (library: OpenLibrary) => Promise<void>): Promise<void> {
    const path = resolve(folder);
    refuseTaken(path);
    const library = await this.opener.create(path);
    try {
      await fill(library);
      await library.close();
    } catch (error) {
      await library.close();
      // It was made a moment ago, where nothing stood: half a library must not be taken for a whole one.
      rmSync(path, { recursive: true, force: true });
      throw error;
    }
    this.places.remember(path, this.now().toISOString());
  }

  close(): Promise<void> {
    return this.inTurn(async () => {
      if (await this.closeNow()) this.changes.tellLibrary();
    });
  }

  /** Closes what is open. Whoever opens another in its place tells of both at once: no window must see none between. */
  private async closeNow(): Promise<boolean> {
    const closing = this.opened;
    this.opened = null;
    closing?.lists.stop();
    clearInterval(this.outsideWatch);
    await closing?.library.close();
    return closing !== null;
  }

  /** Reads the lists anew: after a restore, everything may be different. */
  refreshLists(): void {
    const { library, keptLog, lists } = this.current();
    lists.stop();
    this.opened = { library, lists: new LibraryLists(library), keptLog };
    void this.opened.lists.fillInTurn();
    this.changes.tellLibrary();
  }

  private async take(library: OpenLibrary, { passing = false, keptLog }: Taking = {}): Promise<void> {
    await this.closeNow();
    this.opened = { library, lists: new LibraryLists(library), keptLog: keptLog ?? null };
    void this.opened.lists.fillInTurn();
    // A sync tool may change the files at any time; polling also works on drives that report no changes.
    this.outsideWatch = setInterval(() => void library.checkOutside(), OUTSIDE_CHECK_MS).unref();
    this.trouble = null;
    this.troubleFolder = null;
    this.startFolder = null;
    if (!passing) this.places.remember(library.folder, this.now().toISOString());
    this.changes.tellLibrary();
  }
}

function refuseTaken(path: string): void {
  if (!existsSync(path) || isEmptyFolder(path)) return;
  throw new Problem({
    code: 'conflict',
    title: existsSync(join(path, LIBRARY_FILE))
      ? 'There is already a library of this name.'
      : 'There is already something in this place.',
    advice: 'Choose another name, or open the library that is there.',
  });
}

function isEmptyFolder(path: string): boolean {
  try {
    return readdirSync(path).length === 0;
  } catch {
    return false;
  }
}
