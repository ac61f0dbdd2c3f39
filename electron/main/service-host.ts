import { Asking } from '@service/bridge/ask';
import type { Answered } from '@service/bridge/messages';
import type { AskedAtStart } from '@service/open-at-start';
import { Problem } from '@service/problems/problem';
import type { RequestHandler } from '@service/security/hosted-app';
import { refusalResponse } from '@service/security/refusal';
import type { UtilityProcess } from 'electron';
import { boundedBy } from './bounded';
import type { OpenedNotice, ServiceCalls } from './service-calls';

/** The part of a utility process that is used. */
export type ServiceChild = Pick<UtilityProcess, 'postMessage' | 'on' | 'kill'>;

/** How it was lost. */
export interface Lost {
  code: number;
  /** Whether it was started again by itself; else it was lost too often, and waits to be asked. */
  startedAgain: boolean;
}

/** As often as it may be lost within a minute before it is left alone. */
const MOST_LOSSES = 3;
const A_MINUTE = 60_000;

const STOPPED = {
  code: 'internal',
  title: 'The part of Stillroom that keeps your library stopped.',
  advice:
    'What was shown as saved is in the library. Check that your last change is there, and make it again if not.',
} as const;

/**
 * The service in a process of its own, started again should it be lost. Whatever it acknowledged stands in the
 * library's log by then, so that opening it again loses nothing.
 */
export class ServiceHost implements RequestHandler {
  private asking: Asking<ServiceCalls> | undefined;
  private child: ServiceChild | undefined;
  private losses: number[] = [];
  private open: string | null = null;
  private ending = false;

  /**
   * @param fork starts the process
   * @param tell is told when it was lost
   */
  constructor(
    private readonly fork: (asked: AskedAtStart) => ServiceChild,
    private readonly tell: (lost: Lost) => void,
    private readonly now: () => number = Date.now,
  ) {}

  /** Starts the process and opens what was asked for. @throws what stands in the way of a demonstration library */
  async start(asked: AskedAtStart): Promise<void> {
    const child = this.fork(asked);
    const asking = new Asking<ServiceCalls>(
      {
        post: (message) => child.postMessage(message),
        listen: (hear) => void child.on('message', (message: Answered) => hear(message)),
      },
      (notice) => (this.open = (notice as OpenedNotice).folder),
    );
    child.on('exit', (code) => this.lose(asking, asked, code));
    this.child = child;
    this.asking = asking;
    try {
      this.open = await asking.call('open', asked);
    } catch (error) {
      // Lost meanwhile: that is told, and answered by starting again.
      if (asking === this.asking) throw error;
    }
  }

  /** Starts it once more, after it was lost too often. */
  startAgain(): Promise<void> {
    this.losses = [];
    return this.start({ library: this.open ?? undefined, demo: false });
  }

  /** The folder of the library that is open, or null. */
  opened(): string | null {
    return this.open;
  }

  /** Opens another library, or a fresh demonstration one. @throws Problem when it cannot be opened */
  async openOther(asked: AskedAtStart): Promise<void> {
    this.open = await this.calls().call('openOther', asked);
  }

  async fetch(request: Request): Promise<Response> {
    const { asking } = this;
    const { pathname } = new URL(request.url);
    const refused = (): Response => refusalResponse({ status: 503, ...STOPPED }, pathname);
    if (!asking) return refused();
    try {
      return await asking.fetch(request);
    } catch (error) {
      if (asking === this.asking || request.signal.aborted) throw error;
      // Reading changes nothing, so it may be asked once more; whether a change was kept is for its maker to see.
      return request.method === 'GET' && this.asking ? this.asking.fetch(request) : refused();
    }
  }

  offer = (folder: string): Promise<string> => this.calls().call('offer', folder);
  folder = (token: string): Promise<string | null> => this.calls().call('folder', token);
  fold = (): Promise<void> => this.calls().call('fold');

  /** Folds and closes the library and ends the process. @throws Problem when that fails or takes longer than the limit */
  async close(limitMs: number): Promise<void> {
    this.ending = true;
    try {
      if (this.asking) await boundedBy(limitMs, this.asking.call('close'));
    } finally {
      this.child?.kill();
    }
  }

  private calls(): Asking<ServiceCalls> {
    if (this.asking) return this.asking;
    throw new Problem(STOPPED);
  }

  private lose(asking: Asking<ServiceCalls>, asked: AskedAtStart, code: number): void {
    this.asking = undefined;
    this.child = undefined;
    if (!this.ending) this.startOver(asked, code);
    asking.fail(new Error(`The service’s process ended (${code}).`));
  }

  private startOver(asked: AskedAtStart, code: number): void {
    const now = this.now();
    this.losses = [...this.losses.filter((at) => now - at < A_MINUTE), now];
    const startedAgain = this.losses.length <= MOST_LOSSES;
    if (startedAgain)
      this.start(this.open === null ? asked : { library: this.open, demo: false }).catch((error: unknown) =>
        console.error('The library could not be opened again.', error),
      );
    this.tell({ code, startedAgain });
  }
}
