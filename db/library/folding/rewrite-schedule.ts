import type { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';

interface Limits {
  /** A rewrite waits for a pause of so many ms. */
  idleMs: number;
  /** How long the log may be without one, in bytes. */
  logBytes: () => number;
}

const RETRY_MS = 60_000;
/** However little is changed, a day's work is in the file, and in a backup, the day after. */
const DAY_MS = 86_400_000;

/** Decides when the log is folded in, and keeps all work on the library file one after another. */
export class RewriteSchedule {
  readonly #fold: () => Promise<void>;
  readonly #limits: Limits;
  readonly #onFailure: (problem: Problem) => void;
  /** Settles when all work so far has; never rejects, so that one failure does not silence what follows. */
  #tail: Promise<void> = Promise.resolve();
  #waiting: Promise<void> | undefined;
  #timer: NodeJS.Timeout | undefined;
  #daily: NodeJS.Timeout | undefined;
  #jobs = 0;
  /** After a failure the disk gets some rest, whatever the maker does meanwhile. */
  #resting = false;
  #stopped = false;

  constructor(fold: () => Promise<void>, limits: Limits, onFailure: (problem: Problem) => void) {
    this.#fold = fold;
    this.#limits = limits;
    this.#onFailure = onFailure;
  }

  get busy(): boolean {
    return this.#jobs > 0;
  }

  /** Runs `work` when all earlier work on the file is done. */
  exclusive<T>(work: () => Promise<T>): Promise<T> {
    this.#jobs += 1;
    const turn = this.#tail.then(work).finally(() => (this.#jobs -= 1));
    this.#tail = turn.then(
      () => undefined,
      () => undefined,
    );
    return turn;
  }

  /** One rewrite at a time; whoever asks while one runs shares the one that follows. */
  rewrite(): Promise<void> {
    this.#waiting ??= this.exclusive(() => {
      this.#waiting = undefined;
      clearTimeout(this.#daily);
      this.#daily = undefined;
      return this.#fold();
    });
    return this.#waiting;
  }

  /** A change was logged: once the log is long a rewrite follows in a pause, and at once when it is twice as long. */
  changed(logLength: number): void {
    if (this.#resting || this.#stopped) return;
    this.#daily ??= setTimeout(() => this.#rewriteInBackground(), DAY_MS).unref();
    const long = this.#limits.logBytes();
    if (logLength < long) return;
    if (logLength < 2 * long) this.#rewriteIn(this.#limits.idleMs);
    else if (!this.#waiting) this.#rewriteInBackground();
  }

  /** No more rewrites of its own accord; resolves when work under way is done. */
  async stop(): Promise<void> {
    this.#stopped = true;
    clearTimeout(this.#timer);
    clearTimeout(this.#daily);
    await this.#tail;
  }

  #rewriteIn(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#rewriteInBackground(), ms).unref();
  }

  #rewriteInBackground(): void {
    clearTimeout(this.#timer);
    this.#resting = false;
    this.rewrite().catch((error: unknown) => {
      this.#onFailure(diskProblem(error, 'write the library file'));
      if (this.#stopped) return;
      this.#resting = true;
      this.#rewriteIn(RETRY_MS);
    });
  }
}
