import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fieldColumns } from '@core/exports/field-columns';
import { savedTable, type TableFormat } from '@core/exports/saved-table';
import { beginReading } from '@core/imports/begin-reading';
import type { Outcome } from '@core/imports/plan-row';
import { gatherRows, readRows } from '@core/imports/read-rows';
import { readTableFile } from '@core/imports/read-table-file';
import { MATERIAL_FIELDS } from '@core/materials/fields';
import { makeLibrary, openBenchLibrary, type BenchLibrary } from './bench-library';
import { generateMaterials } from './library-generator';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const AT_ONCE = 100;

/** A shelf as a maker's table: as many columns as its fields have, and a code for every row to be known by. */
function tableOf(count: number, format: TableFormat): Uint8Array {
  const columns = fieldColumns(MATERIAL_FIELDS, 'en-GB');
  const coded = [...generateMaterials(count)].map((one, at) => ({ ...one, code: one.code || `NC-${at}` }));
  const rows = coded.map((one) => columns.map(({ cell }) => cell(one)));
  const head = columns.map(({ heading }) => heading);
  return savedTable([{ name: 'shelf', head, rows }], format, 'en-GB');
}

interface Taken {
  readMs: number;
  planMs: number;
  writeMs: number;
  /** The longest that another request waited meanwhile. */
  longestMs: number;
  memoryMb: number;
}

const PAUSE_MS = 25;
/** What other windows ask for meanwhile: something small, and the first page of the list. */
const ASKED = ['/api/settings', '/api/materials?limit=50&counts=later'];

/** Asks for little things all the while, from when each is due. @returns ends it, and says how long the slowest took */
function askAround({ service }: BenchLibrary): () => Promise<number> {
  let longest = 0;
  let over = false;
  const asking = (async () => {
    for (let at = 0; !over; at += 1) {
      const due = performance.now() + PAUSE_MS;
      await new Promise((done) => setTimeout(done, PAUSE_MS));
      const response = await service.request(ASKED[at % ASKED.length]!);
      if (!response.ok) throw new Error(await response.text());
      longest = Math.max(longest, performance.now() - due);
    }
    return longest;
  })();
  return () => {
    over = true;
    return asking;
  };
}

/** What is measured is taking in: rows that are refused would be none of the work. */
function refuseRefused(outcomes: unknown): void {
  const refused = (outcomes as Outcome[]).find(({ kind }) => kind === 'refused');
  if (refused) throw new Error(`Line ${refused.line} was refused: ${JSON.stringify(refused.faults)}`);
}

/** Takes a table in as the screen does: read and understood, planned some rows at a time, written as one. */
async function takeIn(library: BenchLibrary, name: string, bytes: Uint8Array): Promise<Taken> {
  const { service } = library;
  let most = 0;
  const before = process.memoryUsage().rss;
  const look = (): void => void (most = Math.max(most, process.memoryUsage().rss));
  const ask = async (path: string, body: unknown): Promise<unknown> => {
    const init = {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    };
    const response = await service.request(`/api${path}`, init);
    if (!response.ok) throw new Error(await response.text());
    look();
    return response.json();
  };
  let rows: ReturnType<typeof gatherRows> = [];
  const readMs = await timeOf(async () => {
    const [sheet] = await readTableFile(name, bytes);
    const { head, columns, ways } = beginReading(sheet!, {});
    rows = gatherRows(readRows(sheet!.rows.slice(head + 1), columns, ways), 'code', columns);
    look();
  });
  const asked = askAround(library);
  const { id } = (await ask('/imports', { key: 'code', file: name })) as { id: string };
  const planMs = await timeOf(async () => {
    // As the page does: one piece is on its way while the one before is looked at.
    let before: Promise<unknown> = Promise.resolve([]);
    for (let at = 0; at < rows.length; at += AT_ONCE) {
      const sent = ask(`/imports/${id}/rows`, { at, rows: rows.slice(at, at + AT_ONCE) });
      refuseRefused(await before);
      before = sent;
    }
    refuseRefused(await before);
  });
  const writeMs = await timeOf(() => ask(`/imports/${id}/take-in`, {}));
  return { readMs, planMs, writeMs, longestMs: await asked(), memoryMb: (most - before) / 1e6 };
}

/** How long the sqlite3 program takes to bring the same rows in; null where it is not installed. */
function peerMs(bytes: Uint8Array): number | null {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-bench-'));
  try {
    const file = join(folder, 'shelf.csv');
    writeFileSync(file, bytes);
    const start = performance.now();
    const ran = spawnSync('sqlite3', [join(folder, 'shelf.db'), '.mode csv', `.import ${file} shelf`]);
    return ran.status === 0 ? performance.now() - start : null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const MB = (name: string, mb: number): BenchFigure => ({
  ...{ name, p50: mb, p95: mb, unit: 'MB', peer: null, ratio: null, goal: '≤ 400 MB', ok: mb <= 400 },
});

/** A table of 10,000 materials taken in through the real service, as CSV and as XLSX. */
export async function benchTables({ quick, note }: BenchSettings): Promise<BenchFigure[]> {
  const figures: BenchFigure[] = [];
  const count = quick ? 2_000 : 10_000;
  for (const [format, atMost] of [
    ['csv', 3_000],
    ['xlsx', 8_000],
  ] as const) {
    const bytes = tableOf(count, format);
    const library = await openBenchLibrary(await makeLibrary(100, 1));
    try {
      // The first one is compiled while it runs.
      await takeIn(library, `warm.${format}`, tableOf(300, format));
      const { readMs, planMs, writeMs, longestMs, memoryMb } = await takeIn(
        library,
        `shelf.${format}`,
        bytes,
      );
      note(
        `${format}: read ${readMs.toFixed(0)}, planned ${planMs.toFixed(0)}, written ${writeMs.toFixed(0)} ms`,
      );
      const peer = format === 'csv' ? peerMs(bytes) : null;
      const goals = { atMost, ...(format === 'csv' && { ratioAtMost: 10 }), peer };
      const named = `${count} materials from ${format}`;
      figures.push(
        figureFrom(`${named}, validated and written`, [readMs + planMs + writeMs], goals),
        figureFrom(`${named}, longest that another request waited`, [longestMs], { atMost: 100 }),
        MB(`${named}, memory above the library`, memoryMb),
      );
    } finally {
      await library.discard();
    }
  }
  return figures;
}
