import type { RequestHandler } from '../security/hosted-app';
import { errorOf } from '../threads/outcome';
import { receiveBody, sendBody, type ReceivingLane, type SendingLane } from './lane';
import type { Answered, Asked, Port, ResponseHead, StreamMessage } from './messages';

/** Functions at the service's end, by name: plain data in and out. */
export type Calls = Record<string, (...args: never[]) => unknown>;

/** The host's end of the bridge. */
export interface Asking<C extends Calls> extends RequestHandler {
  fetch(request: Request): Promise<Response>;
  /** Calls a function at the other end. @throws what it throws; a Problem stays one */
  call<Name extends keyof C & string>(
    name: Name,
    ...args: Parameters<C[Name]>
  ): Promise<Awaited<ReturnType<C[Name]>>>;
  /** The other end is gone: breaks off all that is under way, and whatever is asked later. */
  fail(error: Error): void;
}

interface Waiting<T> {
  resolve(value: T): void;
  reject(error: Error): void;
}

function responseOf(
  { status, statusText, headers }: ResponseHead,
  body: ReceivingLane | undefined,
): Response {
  return new Response(body?.body ?? null, { status, statusText, headers });
}

const aborted = (): Error => new DOMException('The request was given up.', 'AbortError');

/** Carries requests and calls to whatever answers at the other end of a port. */
export function askOver<C extends Calls>(
  port: Port<Asked, Answered>,
  onNotice: (notice: unknown) => void = () => undefined,
): Asking<C> {
  const responses = new Map<number, Waiting<Response>>();
  const answers = new Map<number, Waiting<unknown>>();
  const sending = new Map<number, SendingLane>();
  const receiving = new Map<number, ReceivingLane>();
  let last = 0;
  let gone: Error | undefined;

  const post = (message: Asked): void => {
    if (!gone) port.post(message);
  };
  const forget = (id: number): void => {
    responses.delete(id);
    sending.get(id)?.stop();
  };

  function hearStream(message: StreamMessage): void {
    if (message.act === 'more' || message.act === 'cancel') sending.get(message.id)?.heard(message);
    else receiving.get(message.id)?.heard(message);
  }

  function hearResponse(id: number, head: ResponseHead): void {
    const waiting = responses.get(id);
    if (!waiting) return;
    responses.delete(id);
    const lane = head.hasBody
      ? receiveBody({ id, of: 'response' }, post, () => receiving.delete(id))
      : undefined;
    if (lane) receiving.set(id, lane);
    waiting.resolve(responseOf(head, lane));
  }

  port.listen((message) => {
    if (message.is === 'stream') return hearStream(message);
    if (message.is === 'response') return hearResponse(message.id, message.head);
    if (message.is === 'notice') return onNotice(message.notice);
    if (message.is === 'failed') {
      const waiting = responses.get(message.id);
      forget(message.id);
      return waiting?.reject(new Error(message.reason));
    }
    const waiting = answers.get(message.id);
    answers.delete(message.id);
    if ('result' in message) waiting?.resolve(message.result);
    else waiting?.reject(errorOf(message));
  });

  function fetch(request: Request): Promise<Response> {
    return new Promise((resolve, reject) => {
      if (gone) return reject(gone);
      if (request.signal.aborted) return reject(aborted());
      last += 1;
      const id = last;
      responses.set(id, { resolve, reject });
      request.signal.addEventListener('abort', () => {
        post({ is: 'abort', id });
        forget(id);
        receiving.get(id)?.fail(aborted());
        reject(aborted());
      });
      const { url, method, headers, body } = request;
      post({ is: 'request', id, head: { url, method, headers: [...headers], hasBody: body !== null } });
      if (body)
        sending.set(
          id,
          sendBody({ id, of: 'request' }, body, post, () => sending.delete(id)),
        );
    });
  }

  return {
    fetch,
    call: (name, ...args) =>
      new Promise((resolve, reject) => {
        if (gone) return reject(gone);
        last += 1;
        // The names and types of both ends are those of C; what crosses is plain data.
        answers.set(last, { resolve: resolve as (value: unknown) => void, reject });
        post({ is: 'call', id: last, name, args });
      }),
    fail(error) {
      if (gone) return;
      gone = error;
      for (const waiting of [...responses.values(), ...answers.values()]) waiting.reject(error);
      for (const lane of [...receiving.values()]) lane.fail(error);
      for (const lane of [...sending.values()]) lane.stop();
      responses.clear();
      answers.clear();
    },
  };
}
