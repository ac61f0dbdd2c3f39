import { Hono } from 'hono';
import { streamSSE, type SSEStreamingApi } from 'hono/streaming';
import type { ServiceContext } from '../context';
import type { Changes } from './changes';

/** A window that hears nothing for longer knows that the service is gone, and looks for it again. */
const HEARTBEAT_MS = 15_000;

/** Sends what is told, from the position of the first message on, until the window or the service ends. */
function carry(stream: SSEStreamingApi, changes: Changes): Promise<void> {
  return new Promise((ended) => {
    // What cannot be written goes to a window that is gone: its own end says so.
    const send = (event: string, data: unknown): void =>
      void stream.writeSSE({ event, data: JSON.stringify(data) }).catch(() => undefined);
    const beat = setInterval(() => send('beat', changes.position()), HEARTBEAT_MS);
    const finish = (): void => {
      clearInterval(beat);
      stop();
      ended();
    };
    const stop = changes.listen({ hear: (told) => send('change', told), end: finish });
    stream.onAbort(finish);
    send('hello', changes.position());
  });
}

/** Which records change, as they do (server-sent events): `hello` with the position, then each `change`. */
export function changesRoutes({ session }: ServiceContext) {
  return new Hono().get('/', (c) => {
    const response = streamSSE(c, (stream) => carry(stream, session.changes));
    // How a body travels is the host's to say; within a window's own scheme there are no chunks.
    response.headers.delete('Transfer-Encoding');
    return response;
  });
}
