import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { blankMaterial } from '@core/materials/material';
import { writeCsv } from '@core/tables/csv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../unit/service/service-fixture';
import { HELD } from './saved-columns';
import { seriesOf } from './saved-series';

/*
 * What is saved, read by programs that share no code with Stillroom: CSV by the csv module of Python, in its strict mode,
 * and by the import of the sqlite3 program; a copy of the library by the sqlite3 program.
 */

const isMissing = (program: string): boolean => spawnSync(program, ['--version']).error !== undefined;
const NO_PYTHON = '!! the python3 program is not installed !!';
const NO_SQLITE = '!! the sqlite3 program is not installed !!';

const READ = `
import csv, io, json, sys
tables = json.load(io.TextIOWrapper(sys.stdin.buffer, encoding="utf-8"))
read = [list(csv.reader(io.StringIO(t["text"].removeprefix("\\ufeff"), newline=""), delimiter=t["mark"], strict=True)) for t in tables]
sys.stdout.buffer.write(json.dumps(read).encode("ascii"))
`;
interface Text {
  text: string;
  mark: ',' | ';';
}
const byPython = (tables: readonly Text[]): string[][][] =>
  JSON.parse(
    execFileSync('python3', ['-c', READ], { input: JSON.stringify(tables), maxBuffer: 1e9 }).toString(),
  ) as string[][][];

/** What the sqlite3 program answers, a row an object. */
function bySqlite<Row>(file: string, sql: string): Row[] {
  const told = execFileSync('sqlite3', ['-json', file, sql], { maxBuffer: 1e9 }).toString();
  return told === '' ? [] : (JSON.parse(told) as Row[]);
}

/** Text that a spreadsheet would run stands behind an apostrophe; what is a number is none. */
const kept = (cell: string): string =>
  /^'*[=+\-@\t\r]/.test(cell) && !/^[+-]?\d+([.,]\d+)?$/.test(cell) ? `'${cell}` : cell;

describe('a CSV file that was saved', () => {
  it('says in Python what was written, whatever letters its cells hold (RFC 4180)', ({ skip }) => {
    if (isMissing('python3')) return skip(NO_PYTHON);
    // From the points 5 to 7 of section 2: marks, quotation marks and line breaks within a cell.
    const cases = [
      ...['aaa', 'b "bb"', 'c,cc', 'd;dd', 'e\r\nee', 'f\nff', '"', '""', '","', ' g ', ''],
      ...[
        '=1+1',
        '-5',
        '-5,5',
        '+h',
        '@i',
        "'=j",
        '\tk',
        'l\t',
        'Behénique',
        '水',
        '😀',
        '1,234.5',
        '\u2028',
      ],
    ];
    const cell = fc.oneof(fc.constantFrom(...cases), fc.string(), fc.string({ unit: 'grapheme' }));
    const rows = fc
      .integer({ min: 2, max: 4 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
      );
    const samples = fc.sample(rows, { numRuns: 300, seed: 1 });
    // A head without rows is one line.
    samples.push(
      [['a', 'b']],
      cases.map((one) => [one, 'x']),
      cases.map((one) => ['x', one]),
    );
    const written = samples.flatMap((all): Text[] => {
      const [head = [], ...rest] = all;
      return ([',', ';'] as const).map((mark) => ({ text: writeCsv(head, rest, mark), mark }));
    });
    const read = byPython(written);
    expect(read).toHaveLength(written.length);
    read.forEach((told, at) => {
      const wanted = samples[Math.floor(at / 2)]!.map((cells) => cells.map(kept));
      expect(told, written[at]!.text).toEqual(wanted);
    });
  });
});

type Of = Awaited<ReturnType<typeof serviceWith>>;
type Value = string | number | null;
type Held = Record<string, Value>;

async function savedCsv(of: Of, noun: string, table = 0): Promise<string> {
  const response = await of.service.request('/api/exports/table', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ query: '', ids: null, noun, table, format: 'csv' }),
  });
  expect(response.status).toBe(200);
  return response.text();
}

const asCell = (value: Value | undefined): string => String(value ?? '');
/** A number by its figure, with the region's decimal mark; all else by its letters. */
function figured(text: string, comma: boolean): string | number {
  const number = comma ? /^-?\d+(,\d+)?$/ : /^-?\d+(\.\d+)?$/;
  return number.test(text) ? Number(text.replace(',', '.')) : text;
}
/** A value of the library as a cell is to say it. */
function wanted(value: Value | undefined, comma: boolean): string | number {
  if (typeof value === 'number') return value;
  const text = kept(asCell(value));
  return figured(comma && /^[\d.]+–[\d.]+$/.test(text) ? text.replaceAll('.', ',') : text, comma);
}
type Cells = (string | number)[];
/** Rows in an order of their own, whatever order a list has. */
const inOrder = (rows: Cells[]): Cells[] =>
  [...rows].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));

async function shelf(): Promise<{ of: Of; copy: string }> {
  const of = await serviceWith('demonstration');
  // Letters that a table must not trip over.
  const odd = {
    ...blankMaterial('Larkspur, “5 %”; the "best"', 'Cetyl Alcohol'),
    ...{
      code: 'X-1',
      notes: 'First line, with a comma;\nsecond "line"',
      appearance: '=1+1',
      handling: '-cold-',
    },
  };
  expect((await of.ask('POST', '/materials', odd)).status).toBe(201);
  for (const series of await seriesOf(of)) expect((await of.ask('POST', '/trials', series)).status).toBe(201);
  const copy = join(of.folder, 'copy');
  await of.session.current().library.saveCopyAs(copy);
  return { of, copy: join(copy, 'library.sqlite') };
}

describe('the lists of a library, saved as CSV', () => {
  it.for(['en-GB', 'de-DE'])(
    'say of every record what the library holds, in %s',
    async (region, { skip }) => {
      if (isMissing('python3')) return skip(NO_PYTHON);
      if (isMissing('sqlite3')) return skip(NO_SQLITE);
      const { of, copy } = await shelf();
      expect((await of.ask('PATCH', '/settings', { languageRegion: region })).status).toBe(200);
      const comma = region === 'de-DE';
      let cells = 0;
      for (const [name, { from, columns, noun = name, table }] of Object.entries(HELD)) {
        const text = await savedCsv(of, noun, table);
        const [[head = [], ...rows] = []] = byPython([{ text, mark: comma ? ';' : ',' }]);
        const asked = Object.entries(columns).map(([heading, sql]) => `${sql} AS "${heading}"`);
        const held = bySqlite<Held>(copy, `SELECT ${asked.join(', ')} FROM ${from}`);
        expect(rows.length, name).toBeGreaterThan(0);
        expect(rows, name).toHaveLength(held.length);
        const headings = Object.keys(columns);
        // A column in which nothing stands is left out.
        const at = headings.map((heading) => head.indexOf(heading));
        const told = rows.map((row) => at.map((place) => figured(row[place] ?? '', comma)));
        const is = held.map((row) => headings.map((heading) => wanted(row[heading], comma)));
        const [ordered, wantedRows] = [inOrder(told), inOrder(is)];
        ordered.forEach((row, place) => expect(row, `${name}: ${row[0]}`).toEqual(wantedRows[place]));
        cells += told.length * headings.length;
      }
      expect(cells).toBeGreaterThan(10_000);
    },
  );

  it('come into another database by its own import, cell by cell', async ({ skip }) => {
    if (isMissing('sqlite3')) return skip(NO_SQLITE);
    const { of, copy } = await shelf();
    const file = join(of.folder, 'materials.csv');
    writeFileSync(file, (await savedCsv(of, 'materials')).replace(/^\uFEFF/, ''));
    const database = join(of.folder, 'imported.sqlite');
    execFileSync('sqlite3', [database, `.import --csv ${file} shelf`]);
    const rows = bySqlite<Held>(database, 'SELECT * FROM shelf');
    const held = bySqlite<Held>(
      copy,
      "SELECT trade_name, code, notes, usage_max_ppm FROM material WHERE status <> 'archived'",
    );
    expect(rows.map((row) => [row['Trade name'], row.Code, row.Notes]).sort()).toEqual(
      held.map((row) => [row.trade_name, row.code, kept(asCell(row.notes))]).sort(),
    );
    const sum = (all: readonly Held[], column: string): number =>
      all.reduce((total, row) => total + Number(row[column] ?? 0), 0);
    expect(Math.round(sum(rows, 'Usage, highest (%)') * 10_000)).toBe(sum(held, 'usage_max_ppm'));
  });
});

describe('a saved copy of a library', () => {
  it('is a whole SQLite file with every record, as the sqlite3 program reads it', async ({ skip }) => {
    if (isMissing('sqlite3')) return skip(NO_SQLITE);
    const { of, copy } = await shelf();
    const said = execFileSync('sqlite3', [copy, 'PRAGMA integrity_check; PRAGMA foreign_key_check']);
    expect(said.toString().trim()).toBe('ok');
    const count = (table: string): number =>
      bySqlite<{ n: number }>(copy, `SELECT count(*) AS n FROM ${table}`)[0]?.n ?? 0;
    const { open } = (await of.ask<{ open: Record<string, number> }>('GET', '/library')).body;
    expect([count('material'), count('formula'), count('batch')]).toEqual([
      ...[open.materials, open.formulas, open.batches],
    ]);
    const rows = bySqlite<{ id: string; trade_name: string; usage_max_ppm: number | null; notes: string }>(
      copy,
      'SELECT id, trade_name, usage_max_ppm, notes FROM material ORDER BY id',
    );
    interface Told {
      tradeName: string;
      notes: string;
      usage: { maxPpm: number | null } | null;
    }
    for (const row of rows.filter((_, at) => at % 10 === 0 || at === rows.length - 1)) {
      const { body } = await of.ask<Told>('GET', `/materials/${row.id}`);
      expect([body.tradeName, body.usage?.maxPpm ?? null, body.notes]).toEqual([
        ...[row.trade_name, row.usage_max_ppm, row.notes],
      ]);
    }
  });
});
