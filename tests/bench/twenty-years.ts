import { execFileSync } from 'node:child_process';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { HostProcess } from '../e2e/host-process';
import { openBenchLibrary } from './bench-library';
import { filledLibrary } from './fill-library';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';
import { fillRecord, MANY_VERSIONS, TWENTY_YEARS, type Extent } from './record-generator';

const MB = 1_000_000;
const ROUNDS = 5;
const EDITS = 200;

const makeRecord = (extent: Extent) => filledLibrary((engine) => fillRecord(engine, extent));

function sizeFigure(name: string, bytes: number, atMostMb: number): BenchFigure {
  const size = bytes / MB;
  return {
    name,
    p50: size,
    p95: size,
    unit: 'MB',
    peer: null,
    ratio: null,
    goal: `≤ ${atMostMb} MB`,
    ok: size <= atMostMb,
  };
}

/** Asks until the library is there: a host answers before it has read one. */
async function answered(url: string, headers: Record<string, string>): Promise<void> {
  while (!(await fetch(url, { headers })).ok) await new Promise((next) => setTimeout(next, 10));
}

/** What a process holds in memory, as the system counts it. */
function residentBytes(pid: number): number {
  return Number(execFileSync('ps', ['-o', 'rss=', '-p', String(pid)], { encoding: 'utf8' })) * 1024;
}

/** From the start of the built host's process until its first list is answered, and what the process holds then. */
async function coldStarts(folder: string): Promise<{ times: number[]; residentMb: number }> {
  const times: number[] = [];
  let residentMb = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    const host = await HostProcess.start({ args: ['--library', folder], folder: join(folder, '..') });
    const headers = { Cookie: await host.cookie() };
    await answered(`${host.origin}/api/materials?limit=50`, headers);
    times.push(performance.now() - start);
    residentMb = Math.max(residentMb, residentBytes(host.pid) / MB);
    await host.stop();
  }
  return { times, residentMb };
}

async function edits(folder: string): Promise<number[]> {
  const library = await openBenchLibrary(folder);
  const ask = async (path: string, init?: RequestInit): Promise<Record<string, unknown>> =>
    (await (await library.service.request(`/api${path}`, init)).json()) as Record<string, unknown>;
  try {
    const { rows } = (await ask('/materials?limit=50')) as { rows: { id: string }[] };
    const times: number[] = [];
    for (let number = 0; number < EDITS; number++) {
      const path = `/materials/${rows[number % rows.length]!.id}`;
      const { revision, ...content } = await ask(path);
      const body = JSON.stringify({ revision, content: { ...content, notes: `Edit ${number}` } });
      const headers = { 'Content-Type': 'application/json' };
      times.push(await timeOf(() => ask(path, { method: 'PUT', headers, body })));
    }
    return times;
  } finally {
    await library.session.close();
  }
}

/** The twenty-year library: its file, its start and its edits; and what ten thousand versions weigh. */
export async function benchTwentyYears(settings: BenchSettings): Promise<BenchFigure[]> {
  const versions = await makeRecord(MANY_VERSIONS);
  await rm(join(versions.folder, '..'), { recursive: true, force: true });
  const years = await makeRecord(TWENTY_YEARS);
  settings.note(`the twenty-year library’s file holds ${(years.bytes / MB).toFixed(0)} MB`);
  const { times, residentMb } = await coldStarts(years.folder);
  const edited = await edits(years.folder);
  await rm(join(years.folder, '..'), { recursive: true, force: true });
  return [
    sizeFigure('10,000 versions of 20 lines over 500 materials: file', versions.bytes, 60),
    sizeFigure('twenty-year library: file', years.bytes, 250),
    sizeFigure('twenty-year library: process', residentMb * MB, 1_000),
    figureFrom('twenty-year library: process started to first list', times, { atMost: 2_000 }),
    figureFrom('twenty-year library: acknowledged edit', edited, { atMost: 3 }),
  ];
}
