import type { RequestHandler } from '../security/hosted-app';
import { outcomeOf } from '../threads/outcome';
import type { Calls } from './ask';
import { receiveBody, sendBody, type ReceivingLane, type SendingLane } from './lane';
import type { Answered, Asked, Port, RequestHead, StreamMessage } from './messages';

/** The service's end of the bridge. */
export interface Answering {
  /** Tells the host something that it did not ask for: plain data. */
  notify(notice: unknown): void;
}

function requestOf(head: RequestHead, body: ReceivingLane | undefined, signal: AbortSignal): Request {
  const { url, method, headers } = head;
  // Half duplex is the only kind there is; without saying so a stream is refused.
  const init: RequestInit & { duplex: 'half' } = { method, headers, signal, duplex: 'half' };
  return new Request(url, body ? { ...init, body: body.body } : init);
}

/** Answers the requests and calls that come over a port, until the port closes. */
export function answerOver(port: Port<Answered, Asked>, handler: RequestHandler, calls: Calls): Answering {
  const underWay = new Map<number, AbortController>();
  const sending = new Map<number, SendingLane>();
  const receiving = new Map<number, ReceivingLane>();
  const post = (message: Answered): void => port.post(message);

  function giveUp(id: number): void {
    underWay.get(id)?.abort();
    underWay.delete(id);
    receiving.get(id)?.fail(new Error('The request was given up.'));
    sending.get(id)?.stop();
  }

  function hearStream(message: StreamMessage): void {
    if (message.act === 'cancel') giveUp(message.id);
    else if (message.act === 'more') sending.get(message.id)?.heard(message);
    else receiving.get(message.id)?.heard(message);
  }

  async function answer(id: number, head: RequestHead): Promise<void> {
    const control = new AbortController();
    underWay.set(id, control);
    const lane = head.hasBody
      ? receiveBody({ id, of: 'request' }, post, () => receiving.delete(id))
      : undefined;
    if (lane) receiving.set(id, lane);
    const response = await handler.fetch(requestOf(head, lane, control.signal));
    const { status, statusText, headers, body } = response;
    if (control.signal.aborted) return void body?.cancel();
    post({ is: 'response', id, head: { status, statusText, headers: [...headers], hasBody: body !== null } });
    const end = (): void => {
      sending.delete(id);
      underWay.delete(id);
      if (!receiving.has(id)) return;
      // Answered without reading all that was sent: the rest need not come.
      post({ is: 'stream', id, of: 'request', act: 'cancel' });
      receiving.get(id)?.fail(new Error('The request was answered already.'));
    };
    if (body) sending.set(id, sendBody({ id, of: 'response' }, body, post, end));
    else end();
  }

  async function perform(name: string, args: unknown[]): Promise<unknown> {
    const call = Object.hasOwn(calls, name) ? calls[name] : undefined;
    if (!call) throw new Error(`There is no call ${name}.`);
    return call(...(args as never[]));
  }

  port.listen((message) => {
    if (message.is === 'stream') return hearStream(message);
    if (message.is === 'abort') return giveUp(message.id);
    const { id } = message;
    if (message.is === 'call')
      return void outcomeOf(() => perform(message.name, message.args)).then((outcome) =>
        post({ is: 'answer', id, ...outcome }),
      );
    answer(id, message.head).catch((error: unknown) => {
      if (underWay.get(id)?.signal.aborted === false) console.error(error);
      underWay.delete(id);
      receiving.get(id)?.fail(new Error('The request failed.'));
      post({ is: 'failed', id, reason: error instanceof Error ? error.message : String(error) });
    });
  });
  return { notify: (notice) => post({ is: 'notice', notice }) };
}
