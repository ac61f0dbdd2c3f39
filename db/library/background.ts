import { join } from 'node:path';
import type { Problem } from '@core/problems/problem';
import { checkWeekly, faultyAttachments, type FaultyAttachment } from './attachments/weekly-check';
import { diskProblem } from './file/disk-problem';
import { checkFile, refreshLock } from './folding/folding';
import type { RewriteSchedule } from './folding/rewrite-schedule';
import { LOCK_REFRESH_MS } from './lock/lock';
import { isReadOnly, type LibraryState } from './state';

/** The first screen comes first; then the file is looked through. */
const CHECK_AFTER_MS = 5_000;
/** Attachments are looked through later still, once a week: on each day it is asked whether that is due. */
const ATTACHMENTS_AFTER_MS = 15_000;
const ATTACHMENTS_AGAIN_MS = 86_400_000;
/** Whoever made a change so many ms ago is at work. */
const AT_WORK_MS = 5_000;
/** In a pause of this length, room is made in the log for the changes to come. */
const ROOM_AFTER_MS = 100;

/** What an open library does by itself while nobody waits for it. */
export class Background {
  readonly #state: LibraryState;
  readonly #schedule: RewriteSchedule;
  readonly #onProblem: (problem: Problem) => void;
  readonly #timers: NodeJS.Timeout[];
  #roomTimer: NodeJS.Timeout | undefined;
  #faulty: readonly FaultyAttachment[] = [];
  #lastChange = Number.NEGATIVE_INFINITY;

  constructor(state: LibraryState, schedule: RewriteSchedule, onProblem: (problem: Problem) => void) {
    this.#state = state;
    this.#schedule = schedule;
    this.#onProblem = onProblem;
    this.#timers = [
      setTimeout(() => this.#check(), CHECK_AFTER_MS).unref(),
      setTimeout(() => void this.checkAttachments(), ATTACHMENTS_AFTER_MS).unref(),
      setInterval(() => void this.checkAttachments(), ATTACHMENTS_AGAIN_MS).unref(),
      setInterval(() => refreshLock(state), LOCK_REFRESH_MS).unref(),
    ];
  }

  /** A change was made: in the pause after it there is time for the next. */
  changed(): void {
    this.#lastChange = performance.now();
    this.#roomTimer ??= setTimeout(() => this.#makeRoom(), ROOM_AFTER_MS).unref();
  }

  /** What was found that is to be told. */
  notes(): Problem[] {
    return this.#faulty.length > 0 ? [faultyAttachments(this.#faulty)] : [];
  }

  async checkAttachments(): Promise<void> {
    const { settled, engine } = this.#state;
    const { fileSystem: fs, folder, now, attachmentsInUse, onNote } = settled;
    const isOver = () => this.#state.closed || isReadOnly(this.#state);
    const isBusy = () => performance.now() - this.#lastChange < AT_WORK_MS;
    if (isOver()) return;
    try {
      const inUse = () => attachmentsInUse(engine);
      const place = join(folder, 'attachments');
      const found = await checkWeekly({ fs, folder: place, now, inUse, isOver, isBusy });
      if (!found) return;
      const isNews = found.length > 0 || this.#faulty.length > 0;
      this.#faulty = found;
      if (isNews) onNote();
    } catch (error) {
      this.#onProblem(diskProblem(error, 'check the attachments'));
    }
  }

  /** An attachment was added again: it is whole now. */
  attached(sha256: string): void {
    const before = this.#faulty.length;
    this.#faulty = this.#faulty.filter((each) => each.sha256 !== sha256);
    if (this.#faulty.length < before) this.#state.settled.onNote();
  }

  stop(): void {
    for (const timer of [...this.#timers, this.#roomTimer]) clearTimeout(timer);
  }

  #check(): void {
    this.#schedule
      .exclusive(() => checkFile(this.#state))
      .catch((error: unknown) => this.#onProblem(diskProblem(error, 'check the library file')));
  }

  #makeRoom(): void {
    this.#roomTimer = undefined;
    if (!this.#state.closed && !isReadOnly(this.#state)) this.#state.log?.makeRoom();
  }
}
