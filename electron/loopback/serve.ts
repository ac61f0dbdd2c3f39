import { createAdaptorServer } from '@hono/node-server';
import { Problem } from '@service/problems/problem';
import { loopbackGate } from '@service/security/loopback-gate';
import type { RunKeys } from '@service/security/run-keys';
import { hostedApp, type RequestHandler } from '@service/security/hosted-app';
import type { AddressInfo } from 'node:net';
import type { Server } from 'node:http';

export interface Loopback {
  /** `http://127.0.0.1:PORT/?key=…` with a new key, which works once; one not used yet is void. */
  newAddress(): string;
  port: number;
  /** Takes no more requests, lets those under way finish (five seconds at most), and lets the port go. */
  close(): Promise<void>;
}

const GRACE_MS = 5_000;

function listen(server: Server, port: number): Promise<number> {
  return new Promise((done, fail) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const taken = error.code === 'EADDRINUSE';
      const title = taken
        ? `Port ${port} is in use.`
        : `Stillroom cannot serve on port ${port}: ${error.message}.`;
      const advice = 'Give another with --port, or leave --port out and a free one is chosen.';
      fail(new Problem({ code: 'conflict', title, advice }, { cause: error }));
    });
    // The loopback address only: other machines cannot reach it.
    server.listen(port, '127.0.0.1', () => done((server.address() as AddressInfo).port));
  });
}

function closeServer(server: Server): Promise<void> {
  return new Promise((done) => {
    const timer = setTimeout(() => server.closeAllConnections(), GRACE_MS);
    server.close(() => {
      clearTimeout(timer);
      done();
    });
    server.closeIdleConnections();
  });
}

export interface Serving {
  service: RequestHandler;
  rendererFolder: string;
  /** 0 lets the system choose. */
  port: number;
  keys: RunKeys;
  /** Called when an address was used. */
  opened?: () => void;
}

/** Serves the page and the service behind the loopback gate. Throws `conflict` when the port cannot be had. */
export async function serveLoopback({ service, rendererFolder, port, ...doors }: Serving): Promise<Loopback> {
  let listening = port;
  const gate = loopbackGate({ port: () => listening, ...doors });
  const app = hostedApp({ service, rendererFolder, gate });
  const server = createAdaptorServer({ fetch: app.fetch }) as Server;
  listening = await listen(server, port);
  return {
    newAddress: () => `http://127.0.0.1:${listening}/?key=${doors.keys.issue()}`,
    port: listening,
    close: () => closeServer(server),
  };
}
