import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import type { LibraryDocument } from '@core/exchange/document';
import { beginReading } from '@core/imports/begin-reading';
import { readRows } from '@core/imports/read-rows';
import { blankMaterial } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import { readCsv } from '@core/tables/csv';
import { stateOf } from '@db/record/state';
import { expect, test } from './fixtures';
import { HostProcess, leftovers, removeFolder, temporaryFolder } from './host-process';

/*
 * The host of a library is killed while a long table is taken in, and while another library is merged into it: then all
 * of it is there, or nothing. `STILLROOM_KILLS=40` kills it so often in each.
 */

const KILLS = Number(process.env.STILLROOM_KILLS ?? 3);
const ROWS = 1_500;
const AT = '2026-06-01T10:00:00.000Z';

test.use({ opening: 'nothing' });

const idOf = (at: number): string => `0195c7a0-0000-7000-8000-${String(at).padStart(12, '0')}`;

/** A document of new materials. */
function makeDocument(): Uint8Array {
  const records = Array.from({ length: ROWS }, (_, at): LibraryDocument['records'][number] => {
    const content = { ...blankMaterial(`Larkspur ${at}`, 'Cetyl Alcohol') };
    const { hash, format } = stateOf(MATERIAL, idOf(at), MATERIAL.read(content));
    const times = { createdAt: AT, updatedAt: AT };
    return { kind: 'material', id: idOf(at), revision: 1, ...times, format, state: hash, past: [], content };
  });
  const whole: LibraryDocument = {
    ...{ stillroom: 'library', format: 1, writtenAt: AT, withheld: {}, settings: null },
    library: { id: idOf(999_999), name: 'North Bench' },
    ...{
      records,
      history: [],
      states: [],
      versions: [],
      batches: [],
      issues: [],
      numbers: [],
      attachments: [],
    },
  };
  return new TextEncoder().encode(JSON.stringify(whole));
}

let made: Uint8Array | undefined;
/** The same document each time, made when it is first asked for. */
const document = (): Uint8Array => (made ??= makeDocument());

/** Compares the library of a host with the document, and answers where its merge is asked for. */
async function meet(host: HostProcess): Promise<string> {
  const response = await fetch(`${host.origin}/api/meetings/file?name=North`, {
    method: 'POST',
    headers: {
      Connection: 'close',
      'Content-Type': 'application/octet-stream',
      Origin: host.origin,
      Cookie: await host.cookie(),
    },
    body: document() as BodyInit,
  });
  const { id, relations } = (await response.json()) as { id: string; relations: Record<string, number> };
  expect(relations).toMatchObject({ new: ROWS });
  return `/api/meetings/${id}/apply`;
}

/** Plans a table at a host, and answers where taking it in is asked for. */
async function plan(host: HostProcess): Promise<string> {
  const rows = Array.from({ length: ROWS }, (_, at) => `Larkspur ${at};Cetyl Alcohol;11`);
  const sheet = readCsv(['Name;INCI;HLB', ...rows].join('\n'), 't.csv');
  const { head, columns, ways } = beginReading(sheet, {});
  const read = readRows(sheet.rows.slice(head + 1), columns, ways);
  const asked = { about: 'materials', key: 'tradeName', file: 't.csv' };
  const { id } = (await host.post('/api/imports', asked)) as { id: string };
  for (let at = 0; at < read.length; at += 300)
    await host.post(`/api/imports/${id}/rows`, { at, rows: read.slice(at, at + 300) });
  return `/api/imports/${id}/take-in`;
}

/** How many materials are in the library of a host, which opened without anything to tell. */
async function countIn(host: HostProcess): Promise<number> {
  // Answered once the library is open.
  await host.get('/api/materials?limit=1');
  const { open, trouble } = (await host.get('/api/library')) as {
    open: { materials: number; readOnly: string | null; notes: unknown[] };
    trouble: unknown;
  };
  expect(trouble).toBeNull();
  expect(open).toMatchObject({ readOnly: null, notes: [] });
  return open.materials;
}

const started = (folder: string): Promise<HostProcess> =>
  HostProcess.start({ args: ['--library', join(folder, 'library')], folder });

/** What another program says of the file, where it is there: see build/steps/checkers.mjs. */
function outsideOf(library: string): string[] {
  if (spawnSync('sqlite3', ['--version']).error) return ['ok'];
  return execFileSync('sqlite3', [
    join(library, 'library.sqlite'),
    'PRAGMA integrity_check; PRAGMA foreign_key_check',
  ])
    .toString()
    .trim()
    .split('\n');
}

interface Work {
  ready: (host: HostProcess) => Promise<string>;
  body: object;
}

/** Does the work once to its end, and says how long that took. */
async function whole(base: string, { ready, body }: Work): Promise<number> {
  const folder = temporaryFolder();
  cpSync(base, folder, { recursive: true });
  const host = await started(folder);
  const path = await ready(host);
  const began = performance.now();
  await host.post(path, body);
  const took = performance.now() - began;
  expect(await countIn(host)).toBe(ROWS);
  await host.stop();
  removeFolder(folder);
  return took;
}

/** Kills the host `after` so many ms of the work; answers how many of its records are there then. */
async function killed(base: string, { ready, body }: Work, after: number): Promise<number> {
  const folder = temporaryFolder();
  cpSync(base, folder, { recursive: true });
  const library = join(folder, 'library');
  const first = await started(folder);
  const path = await ready(first);
  const answered = first.post(path, body).then(
    () => true,
    () => false,
  );
  await new Promise((done) => setTimeout(done, after));
  await first.kill();
  const said = await answered;

  const second = await started(folder);
  const there = await countIn(second);
  if (said) expect(there, 'what was said to be in is in').toBe(ROWS);
  // Where nothing came in, it comes in now.
  if (there === 0) await second.post(await ready(second), body);
  expect(await countIn(second)).toBe(ROWS);
  expect(await second.stop()).toBe(0);
  expect(leftovers(library)).toEqual([]);
  expect(outsideOf(library)).toEqual(['ok']);
  removeFolder(folder);
  return there;
}

for (const [name, work] of [
  ['a long table is taken in', { ready: plan, body: {} }],
  ['another library is merged', { ready: meet, body: { rules: {}, records: {} } }],
] as const)
  test(`the host is killed while ${name}: all of it is there, or nothing, and the library opens`, async () => {
    test.setTimeout(120_000 + KILLS * 60_000);
    const base = temporaryFolder();
    const maker = await started(base);
    await maker.post('/api/library/create', { name: 'library', kind: 'empty' });
    await maker.stop();
    const took = await whole(base, work);
    const found = new Set<number>();
    for (let kill = 0; kill < KILLS; kill += 1)
      found.add(await killed(base, work, ((kill + 0.5) / KILLS) * took));
    // The earliest kill comes long before the end, unless the machine was busier when the whole was timed.
    for (let sooner = took / (4 * KILLS); !found.has(0) && sooner > 1; sooner /= 2)
      found.add(await killed(base, work, sooner));
    expect([...found].filter((count) => count !== ROWS)).toEqual([0]);
    removeFolder(base);
  });
