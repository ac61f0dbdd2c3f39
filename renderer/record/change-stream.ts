import { changesPosition, recordChange, type ChangesPosition, type RecordChange } from '@core/record/change';
import { EventSourceParserStream } from 'eventsource-parser/stream';
import { z } from 'zod';

/** What a window hears of the library's records. `missed`: some changes went by unheard, so all must be read anew. */
export type Heard =
  | { is: 'change'; change: RecordChange; position: ChangesPosition }
  | { is: 'missed'; position: ChangesPosition }
  | { is: 'connected' }
  | { is: 'lost' };

const told = z.object({ change: recordChange, position: changesPosition });

/** The service sends something at least every 15 s. */
const SILENCE_MS = 40_000;
const FIRST_PAUSE_MS = 300;
const LONGEST_PAUSE_MS = 5_000;

export interface StreamParts {
  /** Asks for the stream of changes; the page's own fetch, which every host answers. */
  connect(signal: AbortSignal): Promise<Response>;
  /** How far this window has heard, or null when it has heard nothing yet. */
  position(): ChangesPosition | null;
  hear(heard: Heard): void;
}

function pause(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener('abort', () => (clearTimeout(timer), resolve()), { once: true });
  });
}

/** Hears one connection to its end. @throws when it breaks off or stays silent */
async function hearOnce(parts: StreamParts, stop: AbortSignal, connected: () => void): Promise<void> {
  const silence = new AbortController();
  let watch: ReturnType<typeof setTimeout> | undefined;
  const alive = (): void => {
    clearTimeout(watch);
    watch = setTimeout(() => silence.abort(), SILENCE_MS);
  };
  alive();
  try {
    const response = await parts.connect(AbortSignal.any([stop, silence.signal]));
    if (!response.ok || !response.body) throw new Error(`The changes cannot be heard (${response.status}).`);
    const messages = response.body
      .pipeThrough(new TextDecoderStream())
      .pipeThrough(new EventSourceParserStream())
      .getReader();
    for (;;) {
      const { done, value } = await messages.read();
      if (done) return;
      alive();
      if (value.event === 'hello') {
        connected();
        const now = changesPosition.parse(JSON.parse(value.data));
        const known = parts.position();
        parts.hear({ is: 'connected' });
        if (known?.run !== now.run || known.told !== now.told) parts.hear({ is: 'missed', position: now });
      } else if (value.event === 'change') {
        parts.hear({ is: 'change', ...told.parse(JSON.parse(value.data)) });
      }
    }
  } finally {
    clearTimeout(watch);
  }
}

/** Hears of every change until told to stop; a connection that is lost is looked for again, ever less often. */
export async function hearChanges(parts: StreamParts, stop: AbortSignal): Promise<void> {
  let wait = FIRST_PAUSE_MS;
  while (!stop.aborted) {
    // Any end but our own is a loss: the host restarts, or the machine slept.
    await hearOnce(parts, stop, () => (wait = FIRST_PAUSE_MS)).catch(() => undefined);
    if (stop.aborted) return;
    parts.hear({ is: 'lost' });
    await pause(wait, stop);
    wait = Math.min(wait * 2, LONGEST_PAUSE_MS);
  }
}
