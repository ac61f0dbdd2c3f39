import type { LaneKey, StreamMessage } from './messages';

/** Pieces that may be under way unasked, so that a small body needs no question. Both ends count from it. */
const UNASKED = 4;
const LARGEST_PIECE = 1024 * 1024;

type Post = (message: StreamMessage) => void;
type Wish = Extract<StreamMessage, { act: 'more' | 'cancel' }>;
type Part = Extract<StreamMessage, { act: 'piece' | 'end' | 'broke' }>;

/** The sending end of a body. */
export interface SendingLane {
  /** What the reader wishes. */
  heard(wish: Wish): void;
  /** Stops reading: nobody listens any more. */
  stop(): void;
}

/** Copies of the bytes alone: a view would carry all of the memory behind it across. */
function* piecesOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += LARGEST_PIECE) yield bytes.slice(at, at + LARGEST_PIECE);
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Sends a body piece by piece, never more than the reader has room for. `done` is called at its end, however it ends. */
export function sendBody(
  key: LaneKey,
  body: ReadableStream<Uint8Array>,
  post: Post,
  done: () => void,
): SendingLane {
  const reader = body.getReader();
  let room = UNASKED;
  let wake: (() => void) | undefined;
  let stopped = false;

  const roomForOne = async (): Promise<void> => {
    while (room === 0 && !stopped) await new Promise<void>((resume) => (wake = resume));
    room -= 1;
  };
  const send = async (): Promise<void> => {
    for (;;) {
      const { done: atEnd, value } = await reader.read();
      if (stopped) return;
      if (atEnd) return post({ is: 'stream', ...key, act: 'end' });
      for (const bytes of piecesOf(value)) {
        await roomForOne();
        if (stopped) return;
        post({ is: 'stream', ...key, act: 'piece', bytes });
      }
    }
  };
  const stop = (): void => {
    if (stopped) return;
    stopped = true;
    wake?.();
    // A source that will not be cancelled has already ended by itself.
    reader.cancel().catch(() => undefined);
  };
  send()
    .catch((error: unknown) => {
      if (!stopped) post({ is: 'stream', ...key, act: 'broke', reason: wordsOf(error) });
    })
    .finally(done);
  return {
    heard(wish) {
      if (wish.act === 'cancel') return stop();
      room += wish.pieces;
      wake?.();
    },
    stop,
  };
}

/** The receiving end of a body. */
export interface ReceivingLane {
  body: ReadableStream<Uint8Array<ArrayBuffer>>;
  heard(part: Part): void;
  /** Breaks the body off: the other end is gone, or the request was given up. */
  fail(error: Error): void;
}

/** A body whose pieces arrive by messages. `done` is called at its end, however it ends. */
export function receiveBody(key: LaneKey, post: Post, done: () => void): ReceivingLane {
  let controller!: ReadableStreamDefaultController<Uint8Array<ArrayBuffer>>;
  let coming = UNASKED;
  let open = true;
  const close = (how: () => void): void => {
    if (!open) return;
    open = false;
    how();
    done();
  };
  const body = new ReadableStream<Uint8Array<ArrayBuffer>>(
    {
      start: (given) => {
        controller = given;
      },
      pull: () => {
        const pieces = (controller.desiredSize ?? 0) - coming;
        if (!open || pieces <= 0) return;
        coming += pieces;
        post({ is: 'stream', ...key, act: 'more', pieces });
      },
      cancel: () => close(() => post({ is: 'stream', ...key, act: 'cancel' })),
    },
    new CountQueuingStrategy({ highWaterMark: UNASKED }),
  );
  return {
    body,
    heard(part) {
      if (!open) return;
      if (part.act === 'end') return close(() => controller.close());
      if (part.act === 'broke') return close(() => controller.error(new Error(part.reason)));
      coming -= 1;
      // What crossed a port lies in memory of its own.
      controller.enqueue(part.bytes as Uint8Array<ArrayBuffer>);
    },
    fail: (error) => close(() => controller.error(error)),
  };
}
