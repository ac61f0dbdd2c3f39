import type { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';

interface Limits {
  rewriteAfterIdleMs: number;
  rewriteAfterLogBytes: number;
}

const RETRY_MS = 60_000;

/** Decides when the log is folded in, and keeps all work on the library file one after another. */
export class RewriteSchedule {
  readonly #fold: () => Promise<void>;
  readonly #limits: Limits;
  readonly #onFailure: (problem: Problem) => void;
  /** Settles when all work so far has; never rejects, so that one failure does not silence what follows. */
  #tail: Promise<void> = Promise.resolve();
  #waiting: Promise<void> | undefined;
  #timer: NodeJS.Timeout | undefined;
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
      return this.#fold();
    });
    return this.#waiting;
  }

  /** A change was logged: a rewrite follows after a pause, or at once when the log is long. */
  changed(logLength: number): void {
    if (this.#resting || this.#stopped) return;
    if (logLength < this.#limits.rewriteAfterLogBytes) this.#rewriteIn(this.#limits.rewriteAfterIdleMs);
    else if (!this.#waiting) this.#rewriteInBackground();
  }

  /** No more rewrites of its own accord; resolves when work under way is done. */
  async stop(): Promise<void> {
    this.#stopped = true;
    clearTimeout(this.#timer);
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
