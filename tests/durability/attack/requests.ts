import { createConnection } from 'node:net';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { composeService } from '@service/compose';
import { RunKeys } from '@service/security/run-keys';
import { z } from 'zod';
import { serveLoopback } from '../../../electron/loopback/serve';
import { emptyTally, type Tally } from './sample';

/** Reads every row of every table from the outside, over file and log together. */
export type ReadTables = (folder: string, tables: Record<string, string[]>) => Promise<unknown>;

const refusal = z.object({ title: z.string().min(1), code: z.string().min(1) });
const METHODS = ['POST', 'PUT', 'PATCH', 'DELETE', 'GET'];

const anyOf = <T>(list: readonly T[]): T => list[Math.floor(Math.random() * list.length)] as T;

/** Values that no field expects, or only some do. */
const ODD: readonly unknown[] = [
  null,
  '',
  'x'.repeat(70_000),
  '\u0000',
  '\ud800',
  -1,
  1e308,
  0.1 + 0.2,
  Number.MAX_SAFE_INTEGER + 2,
  true,
  [],
  {},
  [[[[[[[[]]]]]]]],
  { __proto__: null, constructor: { prototype: { polluted: 1 } } },
  "'; DROP TABLE material; --",
  '../../etc/passwd',
  '2026-02-31',
  Array.from({ length: 3_000 }, () => 0),
];

/** The same with something in it replaced, left out, doubled or put where it does not belong. */
function spoilt(value: unknown): unknown {
  if (Math.random() < 0.15) return anyOf(ODD);
  if (Array.isArray(value)) {
    if (value.length === 0) return [anyOf(ODD)];
    const at = Math.floor(Math.random() * value.length);
    return Math.random() < 0.3
      ? [...(value as unknown[]), value[at]]
      : value.map((item: unknown, index) => (index === at ? spoilt(item) : item));
  }
  if (typeof value !== 'object' || value === null) return anyOf(ODD);
  const entries = Object.entries(value);
  if (entries.length === 0) return { [JSON.stringify(anyOf(ODD)).slice(0, 20)]: anyOf(ODD) };
  const [name] = anyOf(entries);
  if (Math.random() < 0.2) return Object.fromEntries(entries.filter(([each]) => each !== name));
  if (Math.random() < 0.1) return { ...value, unheardOf: anyOf(ODD) };
  return Object.fromEntries(entries.map(([each, held]) => [each, each === name ? spoilt(held) : held]));
}

/** A body that is not what it says: broken JSON, another encoding, none. */
function brokenBody(): string | Uint8Array {
  const text = JSON.stringify({ content: { tradeName: 'x' } });
  return anyOf<string | Uint8Array>([
    text.slice(0, Math.floor(Math.random() * text.length)),
    '['.repeat(20_000),
    Buffer.from(text, 'utf16le'),
    Buffer.from([0xff, 0xfe, 0x00, 0x80]),
    '',
    'NaN',
    `{"content":${'{"a":'.repeat(5_000)}1${'}'.repeat(5_000)}}`,
  ]);
}

/** Not HTTP at all, or hardly. */
const RAW = [
  'GET\r\n\r\n',
  '\u0000\u0001\u0002\r\n\r\n',
  'POST /api/materials HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: -5\r\n\r\nxx',
  'POST /api/materials HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n',
  `GET /${'a'.repeat(90_000)} HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n`,
  `GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n${'X: y\r\n'.repeat(4_000)}\r\n`,
  'GET http://[::1 HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n',
  'POST /api/library/close HTTP/1.1\r\nHost: evil.example\r\nContent-Length: 2\r\n\r\n{}',
];

function sendRaw(port: number, text: string): Promise<void> {
  return new Promise((done) => {
    const socket = createConnection({ port, host: '127.0.0.1' }, () => socket.end(text, 'latin1'));
    socket.setTimeout(2_000, () => socket.destroy());
    socket.on('error', () => undefined).on('close', () => done());
    socket.resume();
  });
}

/**
 * Sends malformed requests to a host as a browser would, and some that no browser would. None may be answered with a
 * fault of ours or without a reason, and file and log must then hold what the library itself says, and no more.
 */
export async function sendMalformed(
  _folder: string,
  { rounds, readTables }: { rounds: number; readTables: ReadTables | undefined },
): Promise<Tally & { accepted: number }> {
  const tally = { ...emptyTally(), accepted: 0 };
  const base = mkdtempSync(join(tmpdir(), 'stillroom-requests-'));
  const { service, session } = composeService({
    documents: join(base, 'documents'),
    config: join(base, 'config'),
  });
  const folder = join(base, 'documents', 'Shelf');
  await session.create(folder, 'demonstration');
  const loopback = await serveLoopback({ service, rendererFolder: base, port: 0, keys: new RunKeys() });
  const visit = await fetch(loopback.newAddress(), { redirect: 'manual' });
  const cookie = (visit.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const origin = `http://127.0.0.1:${loopback.port}`;
  const ask = (method: string, path: string, body?: unknown) =>
    fetch(origin + path, {
      method,
      headers: { 'Content-Type': 'application/json', Origin: origin, Cookie: cookie },
      ...(body === undefined || method === 'GET' ? {} : { body: body as BodyInit }),
      signal: AbortSignal.timeout(60_000),
    });
  const { library } = session.current();
  const idsOf = (table: string) => library.all<{ id: string }>(`SELECT id FROM ${table}`).map(({ id }) => id);
  const ids = [
    ...idsOf('material'),
    ...idsOf('formula'),
    'x',
    '../..',
    '%00',
    '0190a6b0-0000-7000-8000-000000000001',
  ];
  const paths = [...new Set(service.routes.map(({ path }) => path))].filter(
    // These open, close or leave the library, or wait for what is told: they are tried by themselves.
    (path) =>
      !path.includes('*') && !/changes|library\/(open|close|create|reload|copy|recover|take-over)/.test(path),
  );
  const bodies: unknown[] = [];
  for (const path of [
    '/api/settings',
    ...ids.slice(0, 6).map((id) => `/api/materials/${id}`),
    ...idsOf('formula')
      .slice(0, 4)
      .map((id) => `/api/formulas/${id}`),
  ])
    bodies.push(await (await ask('GET', path)).json());

  for (; tally.rounds < rounds; tally.rounds += 1) {
    if (Math.random() < 0.05) {
      await sendRaw(loopback.port, anyOf(RAW));
      continue;
    }
    const path = anyOf(paths).replace(/:[a-zA-Z]+(\{[^}]*\})?/g, () => encodeURIComponent(anyOf(ids)));
    const body = Math.random() < 0.15 ? brokenBody() : JSON.stringify(spoilt(anyOf(bodies)));
    const method = anyOf(METHODS);
    const answer = await ask(method, path, body).catch((error: unknown) => String(error));
    if (typeof answer === 'string') {
      tally.silent.push(`${method} ${path}: ${answer}`);
      continue;
    }
    const text = await answer.text();
    if (answer.ok) tally.accepted += 1;
    else if (answer.status < 500 && isRefusal(text)) tally.told += 1;
    else
      tally.silent.push(
        `${method} ${path} with ${String(body).slice(0, 300)}: ${answer.status} ${text.slice(0, 200)}`,
      );
  }
  const tables = tablesOf(library);
  const own = asText(contentOf(library, tables));
  const seen = await readTables?.(folder, tables);
  if (seen !== undefined && asText(seen) !== own)
    tally.silent.push(`file and log hold something else (${base})`);
  await loopback.close();
  await session.close();
  const closed = await readTables?.(folder, tables);
  if (closed !== undefined && asText(closed) !== own)
    tally.silent.push(`closed, they hold something else (${base})`);
  if (tally.silent.length === 0) rmSync(base, { recursive: true, force: true });
  return tally;
}

function isRefusal(text: string): boolean {
  try {
    return refusal.safeParse(JSON.parse(text)).success;
  } catch {
    return false;
  }
}

/** Numbers to fifteen digits, as many as older sqlite3 programs write. */
function asText(value: unknown): string {
  return JSON.stringify(value, (_, held: unknown) =>
    typeof held === 'number' ? Number(held.toPrecision(15)) : held,
  );
}

type Reading = { all<Row>(sql: string): Row[] };

function tablesOf(library: Reading): Record<string, string[]> {
  const names = library.all<{ name: string }>(
    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'library_%' ORDER BY name",
  );
  return Object.fromEntries(
    names.map(({ name }) => [
      name,
      library
        .all<{ name: string }>(`SELECT name FROM pragma_table_info('${name}')`)
        .map((column) => column.name),
    ]),
  );
}

/** Every row of every table, as the reader from the outside gives it. */
function contentOf(library: Reading, tables: Record<string, string[]>): unknown {
  return Object.entries(tables).map(([table, columns]) =>
    library
      .all<Record<string, unknown>>(
        `SELECT ${columns.join(', ')} FROM "${table}" ORDER BY ${columns.join(', ')}`,
      )
      .map((row) => columns.map((column) => row[column])),
  );
}
