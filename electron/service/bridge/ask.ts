import type { RequestHandler } from '../security/hosted-app';
import { errorOf, type Outcome } from '../threads/outcome';
import { receiveBody, sendBody, type ReceivingLane, type SendingLane } from './lane';
import type { Answered, Asked, Port, ResponseHead, StreamMessage } from './messages';

/** Functions at the service's end, by name: plain data in and out. */
export type Calls = Record<string, (...args: never[]) => unknown>;

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

/** The host's end of the bridge: carries requests and calls to whatever answers at the other end of a port. */
export class Asking<C extends Calls> implements RequestHandler {
  private readonly responses = new Map<number, Waiting<Response>>();
  private readonly answers = new Map<number, Waiting<unknown>>();
  private readonly sending = new Map<number, SendingLane>();
  private readonly receiving = new Map<number, ReceivingLane>();
  private last = 0;
  private gone: Error | undefined;

  constructor(
    private readonly port: Port<Asked, Answered>,
    private readonly onNotice: (notice: unknown) => void = () => undefined,
  ) {
    port.listen((message) => this.hear(message));
  }

  fetch(request: Request): Promise<Response> {
    return new Promise((resolve, reject) => {
      if (this.gone) return reject(this.gone);
      if (request.signal.aborted) return reject(aborted());
      this.last += 1;
      const id = this.last;
      this.responses.set(id, { resolve, reject });
      request.signal.addEventListener('abort', () => this.giveUp(id));
      const { url, method, headers, body } = request;
      this.post({ is: 'request', id, head: { url, method, headers: [...headers], hasBody: body !== null } });
      if (!body) return;
      const lane = sendBody({ id, of: 'request' }, body, this.post, () => this.sending.delete(id));
      this.sending.set(id, lane);
    });
  }

  /** Calls a function at the other end. @throws what it throws; a Problem stays one */
  call<Name extends keyof C & string>(
    name: Name,
    ...args: Parameters<C[Name]>
  ): Promise<Awaited<ReturnType<C[Name]>>> {
    return new Promise((resolve, reject) => {
      if (this.gone) return reject(this.gone);
      this.last += 1;
      // The names and types of both ends are those of C; what crosses is plain data.
      this.answers.set(this.last, { resolve: resolve as (value: unknown) => void, reject });
      this.post({ is: 'call', id: this.last, name, args });
    });
  }

  /** The other end is gone: breaks off all that is under way, and whatever is asked later. */
  fail(error: Error): void {
    if (this.gone) return;
    this.gone = error;
    for (const waiting of [...this.responses.values(), ...this.answers.values()]) waiting.reject(error);
    for (const lane of [...this.receiving.values()]) lane.fail(error);
    for (const lane of [...this.sending.values()]) lane.stop();
    this.responses.clear();
    this.answers.clear();
  }

  private readonly post = (message: Asked): void => {
    if (!this.gone) this.port.post(message);
  };

  private giveUp(id: number): void {
    this.post({ is: 'abort', id });
    this.receiving.get(id)?.fail(aborted());
    this.refuse(id, aborted());
  }

  private refuse(id: number, error: Error): void {
    this.responses.get(id)?.reject(error);
    this.responses.delete(id);
    this.sending.get(id)?.stop();
  }

  private hear(message: Answered): void {
    if (message.is === 'stream') this.hearStream(message);
    else if (message.is === 'response') this.hearResponse(message.id, message.head);
    else if (message.is === 'notice') this.onNotice(message.notice);
    else if (message.is === 'failed') this.refuse(message.id, new Error(message.reason));
    else this.hearAnswer(message.id, message);
  }

  private hearStream(message: StreamMessage): void {
    if (message.act === 'more' || message.act === 'cancel') this.sending.get(message.id)?.heard(message);
    else this.receiving.get(message.id)?.heard(message);
  }

  private hearResponse(id: number, head: ResponseHead): void {
    const waiting = this.responses.get(id);
    if (!waiting) return;
    this.responses.delete(id);
    const lane = head.hasBody
      ? receiveBody({ id, of: 'response' }, this.post, () => this.receiving.delete(id))
      : undefined;
    if (lane) this.receiving.set(id, lane);
    waiting.resolve(responseOf(head, lane));
  }

  private hearAnswer(id: number, outcome: Outcome<unknown>): void {
    const waiting = this.answers.get(id);
    this.answers.delete(id);
    if ('result' in outcome) waiting?.resolve(outcome.result);
    else waiting?.reject(errorOf(outcome));
  }
}
