const DELAY_MS = 300;

interface Round {
  resolve: () => void;
  reject: (error: unknown) => void;
}

export interface Saving {
  /** Sends all that can be sent, and looks for what is newer; never throws: what it met is told by `left`. */
  send(): Promise<void>;
  /** Why something is still not in the library, or null when everything is. */
  left(): Error | null;
  /** Follows a promise from the first unsaved edit until all is acknowledged, so that "Saved" is true. */
  follow(whole: Promise<void>): void;
}

/** When a draft is saved: soon after an edit, or at once when asked; one round at a time. */
export function saveRounds({ send, left, follow }: Saving) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let underWay: Promise<void> | null = null;
  let round: Round | null = null;

  function open(): void {
    if (round) return;
    follow(new Promise<void>((resolve, reject) => (round = { resolve, reject })));
  }

  function close(): void {
    const ended = round;
    round = null;
    const why = left();
    if (why) ended?.reject(why);
    else ended?.resolve();
  }

  async function run(): Promise<void> {
    if (left()) open();
    await send();
    underWay = null;
    // Something typed while this round ended has its own timer, and this round goes on.
    if (timer === undefined) close();
  }

  /** Saves what is waiting now, with what is under way. */
  async function now(): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    if (underWay) await underWay;
    underWay ??= run();
    await underWay;
  }

  /** Saves soon. */
  function later(): void {
    open();
    clearTimeout(timer);
    timer = setTimeout(() => void now(), DELAY_MS);
  }

  /** Forgets what is waiting. */
  function stop(): void {
    clearTimeout(timer);
    timer = undefined;
    round?.resolve();
    round = null;
  }

  return { now, later, stop };
}
