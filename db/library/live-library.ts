import type { Problem } from '@core/problems/problem';
import type { Database, SqlValue, Writer } from '../database';
import { Background } from './background';
import { Attachments } from './attachments/attachments';
import type { Backup } from './backups/backup-file';
import { listBackups, readBackup } from './backups/backups';
import { diskProblem } from './file/disk-problem';
import { foldAfter } from './folding/fold-after';
import { fold, foldWithBackup, restoreBackup, takeState, type StateReason } from './folding/folding';
import type { Loaded } from './opening/loading';
import type { LibraryLock } from './lock/lock';
import type { ChangeLog } from './log/log';
import type { Settled } from './options';
import { lookOutside, type Outside } from './file/outside';
import { changedOutside } from './folding/rewrite';
import { RewriteSchedule } from './folding/rewrite-schedule';
import { sha256Of } from './file/whole-file';
import { keepAside } from './opening/aside';
import { saveCopy } from './file/save-copy';
import {
  isReadOnly,
  libraryPath,
  noteOutside,
  refuseWhenClosed,
  rememberState,
  writableLog,
  type LibraryState,
} from './state';
import { runTransaction } from './sql/transaction';

/** What a screen shows about the library's safety. */
export interface LibraryStatus {
  id: string;
  folder: string;
  /** The last change; every change up to it is on the disk. */
  sequence: number;
  /** How often the file has been written whole. */
  revision: number;
  readOnly: boolean;
  /** Why nothing can be changed here: who has it open, what the disk says, that it was changed from outside. */
  readOnlyBecause?: Problem;
  /** A change was refused because the library was taken over just then; `saveCopyAs` includes it. */
  unsaved: boolean;
  /** What opening found that is to be told, though it stops nothing. */
  notes: readonly Problem[];
  /** How many changes are in the log and not yet in the file, and the log's length in bytes. */
  unfolded: number;
  logBytes: number;
  rewriting: boolean;
  /** Why the last rewrite or backup failed; the changes are safe in the log. */
  rewriteProblem?: Problem;
  changedOutside: boolean;
  /** What opening found: changes replayed from the log, bytes of an unfinished one dropped. */
  opening: { replayed: number; tornBytes: number };
}

export interface OpenLibrary extends Database {
  readonly id: string;
  readonly folder: string;
  readonly sequence: number;
  readonly readOnly: boolean;
  readonly attachments: Attachments;
  status(): LibraryStatus;
  /** Folds the log into library.sqlite. Calls during a rewrite share the one that follows. Throws Problem. */
  rewrite(): Promise<void>;
  /** Whether file and log are as we left them. Once 'changed', nothing is written any more. */
  checkOutside(): Promise<Outside>;
  /** Writes the library as it is here, under a new id, into another folder. Throws Problem. */
  saveCopyAs(folder: string): Promise<void>;
  /** Compares all attachments with their hashes when a week has passed; what is damaged or gone stands in `status().notes`. */
  checkAttachments(): Promise<void>;
  /** Keeps the library as it is here among the backups, before what is on the disk is read instead. Throws Problem. */
  keepAside(): Promise<string>;
  listBackups(): Promise<Backup[]>;
  /** Makes a backup now. Throws Problem. */
  backUp(): Promise<Backup>;
  /** Goes back to a backup, by its name; the present state is backed up first. Throws Problem. */
  restore(name: string): Promise<void>;
  /** The bytes of a backup, as they were written. Throws Problem not-found, library-damaged. */
  readBackup(name: string): Promise<Uint8Array>;
  /** The whole library as it is now, as the bytes of a library file, and the last change that it holds. */
  snapshot(): Promise<{ bytes: Uint8Array; sequence: number }>;
  /**
   * Puts a state that was made from a snapshot in the place of the present one, which is backed up first.
   * Returns that backup. Throws Problem conflict when more was changed since; the present then stands.
   * The bytes are handed over: they may be empty afterwards.
   */
  takeState(bytes: Uint8Array, from: number, reason: StateReason): Promise<Backup>;
  /** Writes the bytes of a library file into a folder of its own, under a new id, with our attachments. Throws Problem. */
  saveStateAs(bytes: Uint8Array, folder: string): Promise<void>;
  /** Folds what is left and lets go. A rewrite that fails here is told to `onProblem`: the log holds everything. */
  close(): Promise<void>;
}

export interface LiveParts {
  settled: Settled;
  loaded: Loaded;
  log?: ChangeLog;
  lock?: LibraryLock;
  readOnlyBecause?: Problem;
}

export class LiveLibrary implements OpenLibrary {
  readonly id: string;
  readonly folder: string;
  readonly attachments: Attachments;
  readonly #state: LibraryState;
  readonly #opening: Pick<LibraryStatus, 'opening' | 'notes'>;
  readonly #schedule: RewriteSchedule;
  readonly #background: Background;
  #inTransaction = false;
  #closing: Promise<void> | undefined;

  constructor(parts: LiveParts) {
    const { settled, loaded, log } = parts;
    this.#state = startingState(parts);
    const { replayed, tornBytes, notes } = loaded;
    this.#opening = { opening: { replayed, tornBytes }, notes };
    this.id = loaded.meta.id;
    this.folder = settled.folder;
    this.attachments = new Attachments(
      settled.fileSystem,
      settled.folder,
      () => writableLog(this.#state),
      (sha256) => this.#background.attached(sha256),
    );
    this.#schedule = new RewriteSchedule(
      () => fold(this.#state),
      {
        idleMs: settled.rewriteAfterIdleMs,
        logBytes: () => settled.rewriteAfterLogBytes ?? foldAfter(this.#state.identity.size),
      },
      (problem) => this.#note(problem),
    );
    if (log && loaded.replayed > 0) this.#schedule.changed(log.length);
    this.#background = new Background(this.#state, this.#schedule, (problem) => this.#note(problem));
  }

  get sequence(): number {
    return this.#state.position.sequence;
  }

  get readOnly(): boolean {
    return isReadOnly(this.#state);
  }

  all<Row>(sql: string, ...values: SqlValue[]): Row[] {
    refuseWhenClosed(this.#state);
    return this.#state.engine.all<Row>(sql, ...values);
  }

  get<Row>(sql: string, ...values: SqlValue[]): Row | undefined {
    refuseWhenClosed(this.#state);
    return this.#state.engine.get<Row>(sql, ...values);
  }

  transaction<T>(work: (tx: Writer) => T): T {
    const state = this.#state;
    const log = writableLog(state);
    if (this.#inTransaction) throw new Error('Transactions do not nest.');
    this.#inTransaction = true;
    try {
      const { engine, position, settled } = state;
      const onUnsaved = (statements: LibraryState['unsaved']) => (state.unsaved ??= statements);
      const done = runTransaction({ engine, log, position, now: settled.now, onUnsaved }, work);
      state.position = done.position;
      if (done.position !== position) {
        state.lock?.acknowledge(done.position);
        this.#schedule.changed(log.length);
        this.#background.changed();
      }
      return done.result;
    } catch (error) {
      noteOutside(state, error);
      throw error;
    } finally {
      this.#inTransaction = false;
    }
  }

  status(): LibraryStatus {
    const { id, position, revision, folded, log, rewriteProblem, readOnlyBecause } = this.#state;
    return {
      id,
      folder: this.folder,
      sequence: position.sequence,
      revision,
      readOnly: this.readOnly,
      readOnlyBecause:
        readOnlyBecause ??
        (this.#state.changedOutside ? changedOutside(libraryPath(this.#state)) : undefined),
      unfolded: position.sequence - folded,
      logBytes: log?.length ?? 0,
      rewriting: this.#schedule.busy,
      rewriteProblem,
      changedOutside: this.#state.changedOutside,
      unsaved: this.#state.unsaved !== undefined,
      opening: this.#opening.opening,
      notes: [...this.#opening.notes, ...this.#background.notes()],
    };
  }

  rewrite(): Promise<void> {
    return this.#schedule.rewrite();
  }

  checkOutside(): Promise<Outside> {
    return this.#schedule.exclusive(async () => {
      refuseWhenClosed(this.#state);
      const { verdict, identity } = await lookOutside(
        this.#state.settled.fileSystem,
        this.folder,
        this.#state,
      );
      if (identity) this.#state.identity = identity;
      if (verdict === 'changed') this.#state.changedOutside = true;
      return verdict;
    });
  }

  saveCopyAs(folder: string): Promise<void> {
    return this.#schedule.exclusive(() => {
      refuseWhenClosed(this.#state);
      const { settled, engine, unsaved } = this.#state;
      return saveCopy(settled, engine.exportBytes(), unsaved ?? [], folder);
    });
  }

  keepAside(): Promise<string> {
    return this.#schedule.exclusive(() => {
      refuseWhenClosed(this.#state);
      const { settled, engine } = this.#state;
      return keepAside(settled, engine.exportBytes(), 'as it was open here.sqlite').catch(
        (error: unknown) => {
          throw diskProblem(error, 'keep what is open here among the backups');
        },
      );
    });
  }

  listBackups(): Promise<Backup[]> {
    return listBackups(this.#state.settled.fileSystem, this.#state.settled.backupFolder);
  }

  backUp(): Promise<Backup> {
    return this.#schedule.exclusive(() => foldWithBackup(this.#state, 'request'));
  }

  restore(name: string): Promise<void> {
    return this.#schedule.exclusive(() => restoreBackup(this.#state, name));
  }

  readBackup(name: string): Promise<Uint8Array> {
    const { fileSystem, backupFolder } = this.#state.settled;
    return readBackup(fileSystem, backupFolder, name);
  }

  snapshot(): Promise<{ bytes: Uint8Array; sequence: number }> {
    return this.#schedule.exclusive(() => {
      refuseWhenClosed(this.#state);
      return Promise.resolve({ bytes: this.#state.engine.exportBytes(), sequence: this.sequence });
    });
  }

  takeState(bytes: Uint8Array, from: number, reason: StateReason): Promise<Backup> {
    return this.#schedule.exclusive(() => takeState(this.#state, bytes, from, reason));
  }

  saveStateAs(bytes: Uint8Array, folder: string): Promise<void> {
    return saveCopy(this.#state.settled, bytes, [], folder);
  }

  close(): Promise<void> {
    this.#closing ??= this.#closeNow();
    return this.#closing;
  }

  async #closeNow(): Promise<void> {
    const state = this.#state;
    await this.#schedule.stop();
    // Exclusive, so that a change made while a rewrite ran is folded as well.
    await this.#schedule
      .rewrite()
      .catch((error: unknown) => this.#note(diskProblem(error, 'write the library file')));
    if (!this.readOnly) rememberState(state);
    state.closed = true;
    this.#background.stop();
    state.log?.close();
    state.lock?.release();
    state.engine.close();
  }

  checkAttachments(): Promise<void> {
    return this.#background.checkAttachments();
  }

  #note(problem: Problem): void {
    this.#state.rewriteProblem = problem;
    this.#state.settled.onProblem(problem);
  }
}

function startingState({ settled, loaded, log, lock, readOnlyBecause }: LiveParts): LibraryState {
  const { engine, identity, meta, replayed } = loaded;
  return {
    settled,
    id: meta.id,
    log,
    lock,
    logSha256: loaded.log && sha256Of(loaded.log.bytes),
    engine,
    identity,
    files: loaded.log?.files ?? [],
    unsaved: undefined,
    position: { sequence: meta.sequence, chain: meta.chain },
    folded: meta.sequence - replayed,
    revision: meta.revision,
    readOnlyBecause,
    rewriteProblem: undefined,
    changedOutside: false,
    // One that the log does not vouch for is looked through while it is opened.
    checked: !loaded.vouched,
    replacing: false,
    closed: false,
  };
}
