import { join } from 'node:path';
import type { Problem } from '@core/problems/problem';
import { checkWeekly, damagedAttachments } from './attachments/weekly-check';
import { diskProblem } from './file/disk-problem';
import { checkFile, refreshLock } from './folding/folding';
import type { RewriteSchedule } from './folding/rewrite-schedule';
import { LOCK_REFRESH_MS } from './lock/lock';
import { isReadOnly, type LibraryState } from './state';

/** The first screen comes first; then the file is looked through. */
const CHECK_AFTER_MS = 5_000;
/** Attachments are looked through later still, once a week. */
const ATTACHMENTS_AFTER_MS = 60_000;
/** In a pause of this length, room is made in the log for the changes to come. */
const ROOM_AFTER_MS = 100;

/** What an open library does by itself while nobody waits for it. */
export class Background {
  readonly #state: LibraryState;
  readonly #schedule: RewriteSchedule;
  readonly #onProblem: (problem: Problem) => void;
  readonly #timers: NodeJS.Timeout[];
  #roomTimer: NodeJS.Timeout | undefined;
  #damaged: readonly string[] = [];

  constructor(state: LibraryState, schedule: RewriteSchedule, onProblem: (problem: Problem) => void) {
    this.#state = state;
    this.#schedule = schedule;
    this.#onProblem = onProblem;
    this.#timers = [
      setTimeout(() => this.#check(), CHECK_AFTER_MS).unref(),
      setTimeout(() => void this.checkAttachments(), ATTACHMENTS_AFTER_MS).unref(),
      setInterval(() => refreshLock(state), LOCK_REFRESH_MS).unref(),
    ];
  }

  /** A change was made: in the pause after it there is time for the next. */
  changed(): void {
    this.#roomTimer ??= setTimeout(() => this.#makeRoom(), ROOM_AFTER_MS).unref();
  }

  /** What was found that is to be told. */
  notes(): Problem[] {
    return this.#damaged.length > 0 ? [damagedAttachments(this.#damaged)] : [];
  }

  async checkAttachments(): Promise<void> {
    const { fileSystem: fs, folder, now } = this.#state.settled;
    const isOver = () => this.#state.closed || isReadOnly(this.#state);
    if (isOver()) return;
    try {
      const found = await checkWeekly({ fs, folder: join(folder, 'attachments'), now, isOver });
      this.#damaged = found ?? this.#damaged;
    } catch (error) {
      this.#onProblem(diskProblem(error, 'check the attachments'));
    }
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
