import type { Outcome } from '../threads/outcome';

/** Which body a stream message is of. */
export type Direction = 'request' | 'response';

/** Which stream: bodies of many requests share one port. */
export interface LaneKey {
  id: number;
  of: Direction;
}

export interface RequestHead {
  url: string;
  method: string;
  headers: [string, string][];
  hasBody: boolean;
}

export interface ResponseHead {
  status: number;
  statusText: string;
  headers: [string, string][];
  hasBody: boolean;
}

/** What travels of a body: pieces as they are asked for, its end, or that it broke off; and the reader's wishes. */
export type StreamMessage = { is: 'stream' } & LaneKey &
  (
    | { act: 'piece'; bytes: Uint8Array }
    | { act: 'end' }
    | { act: 'broke'; reason: string }
    | { act: 'more'; pieces: number }
    | { act: 'cancel' }
  );

/** From the host to the service. */
export type Asked =
  | { is: 'request'; id: number; head: RequestHead }
  | { is: 'abort'; id: number }
  | { is: 'call'; id: number; name: string; args: unknown[] }
  | StreamMessage;

/** From the service to the host. */
export type Answered =
  | { is: 'response'; id: number; head: ResponseHead }
  | { is: 'failed'; id: number; reason: string }
  | ({ is: 'answer'; id: number } & Outcome<unknown>)
  | { is: 'notice'; notice: unknown }
  | StreamMessage;

/** One end of a road for messages between two threads or processes. Messages arrive once, whole and in order. */
export interface Port<Sent, Heard> {
  post(message: Sent): void;
  /** Called once, before anything is posted. */
  listen(hear: (message: Heard) => void): void;
}
