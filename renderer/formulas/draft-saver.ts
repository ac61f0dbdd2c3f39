const DELAY_MS = 300;

interface Round {
  resolve: () => void;
  reject: (error: unknown) => void;
}

/**
 * Saves the newest state of a draft, one request at a time: soon after an edit, or at once when asked. A state that
 * could not be saved stays waiting.
 *
 * @param send saves one state; throws when it was refused
 * @param follow is given a promise from the first unsaved edit until all is acknowledged, for "Saved" to be true
 */
export function draftSaver<T>(
  send: (state: T) => Promise<void>,
  follow: (whole: Promise<void>) => Promise<void>,
) {
  let waiting: { state: T } | null = null;
  let sending = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let underWay: Promise<boolean> | null = null;
  let round: Round | null = null;

  function openRound(): void {
    if (round) return;
    const whole = new Promise<void>((resolve, reject) => (round = { resolve, reject }));
    // The refusal is shown where the draft is; here it is only followed.
    void follow(whole).catch(() => undefined);
  }

  async function drain(): Promise<boolean> {
    while (waiting) {
      const { state } = waiting;
      waiting = null;
      sending = true;
      try {
        await send(state);
      } catch (error) {
        waiting ??= { state };
        round?.reject(error);
        round = null;
        return false;
      } finally {
        sending = false;
      }
    }
    round?.resolve();
    round = null;
    return true;
  }

  /** Saves what is waiting now. False when it was refused; it is still waiting then. */
  function now(): Promise<boolean> {
    clearTimeout(timer);
    if (waiting) openRound();
    underWay ??= drain().finally(() => (underWay = null));
    return underWay;
  }

  function later(state: T): void {
    waiting = { state };
    openRound();
    clearTimeout(timer);
    timer = setTimeout(() => void now(), DELAY_MS);
  }

  /** Forgets what is waiting, because another state has taken its place. */
  function drop(): void {
    clearTimeout(timer);
    waiting = null;
    round?.resolve();
    round = null;
  }

  return { later, now, drop, unsaved: () => waiting !== null || sending };
}
