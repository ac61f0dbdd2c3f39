import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { blankMaterial } from '@core/materials/material';
import { writeCsv } from '@core/tables/csv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../unit/service/service-fixture';

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

const yesNo = (column: string): string => `CASE ${column} WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END`;
const figure = (kind: string): string => {
  const ends = `CASE WHEN low IS NULL OR high IS NULL THEN NULL ELSE format('%.15g–%.15g', low, high) END`;
  return `(SELECT coalesce(value, ${ends}) FROM material_figure WHERE material_id = m.id AND kind = '${kind}')`;
};
const words = (list: string): string =>
  `(SELECT group_concat(word, ', ') FROM (SELECT word FROM material_word WHERE material_id = m.id AND list = '${list}' ORDER BY position))`;
const offer = (column: string): string =>
  `(SELECT ${column} FROM material_offer WHERE material_id = m.id ORDER BY date DESC, position DESC LIMIT 1)`;
const sourceOf = (kind: string, column: string): string =>
  `(SELECT ${column} FROM material_figure WHERE material_id = m.id AND kind = '${kind}')`;

/** What a table's columns hold, asked of the library's own tables; as its schema has them. */
const HELD: Readonly<
  Record<string, { from: string; columns: Record<string, string>; noun?: string; table?: number }>
> = {
  materials: {
    from: "material m WHERE status <> 'archived'",
    columns: {
      ...{ 'Trade name': 'trade_name', Code: 'code', Status: 'status', Charge: 'charge', Form: 'form' },
      ...{ Architecture: 'architecture', 'Emulsion type': 'emulsion_type', 'Usual phase': 'phase_of_use' },
      ...{ 'Consistency when cold': 'consistency', Appearance: 'appearance', 'Body it builds': 'body' },
      'Tolerance to electrolyte': 'electrolyte_tolerance',
      'Needs neutralising': yesNo('needs_neutralising'),
      'Works cold': yesNo('cold_processable'),
      'Certified organic': yesNo('certified_organic'),
      ...{ Functions: words('function'), 'Dissolves in': words('soluble in'), Hazards: words('hazard') },
      ...{ 'Keep from': words('keep from'), Origin: 'origin', Notes: 'notes', Handling: 'handling' },
      'Usage, lowest (%)': 'usage_min_ppm / 10000.0',
      'Usage, typical (%)': 'usage_typical_ppm / 10000.0',
      'Usage, highest (%)': 'usage_max_ppm / 10000.0',
      ...{ 'How the usage is known': 'usage_provenance', 'Source of the usage range': 'usage_source' },
      ...{ HLB: figure('hlb'), EACN: figure('eacn'), 'Acid value (mg KOH/g)': figure('acidValue') },
      ...{ 'Density (g/mL)': figure('density'), 'Molar mass (g/mol)': figure('molarMass') },
      ...{ 'How HLB is known': sourceOf('hlb', 'provenance'), 'Source of HLB': sourceOf('hlb', 'source') },
      'Melting or drop point (°C)': figure('meltingPoint'),
      'Source of Melting or drop point': sourceOf('meltingPoint', 'source'),
      ...{ 'Not colder than (°C)': 'storage_min_c', 'Not warmer than (°C)': 'storage_max_c' },
      ...{ 'Shelf life (months)': 'shelf_life_months', 'After opening (months)': 'after_opening_months' },
      'Legal limit in the finished product (%)': 'limit_ppm / 10000.0',
      'Legal limit: text and date': 'limit_source',
      ...{ Supplier: offer('supplier'), 'Supplier’s item code': offer('item_code') },
      ...{
        'Pack (kg)': offer('pack_mg / 1e6'),
        Currency: offer('currency'),
        'Date of the price': offer('date'),
      },
      'Price of the pack': offer('price_minor / 100.0'),
      Changed: 'substr(updated_at, 1, 10)',
    },
  },
  formulas: {
    from: 'formula f WHERE archived = 0',
    columns: {
      ...{ Name: 'name', Code: 'code', 'Product type': 'product_type', Use: 'use', Purpose: 'purpose' },
      Phases: '(SELECT count(*) FROM formula_phase WHERE formula_id = f.id)',
      Lines: '(SELECT count(*) FROM formula_line WHERE formula_id = f.id)',
      ...{ Notes: 'notes', Archived: yesNo('archived'), Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  lines: {
    ...{ noun: 'formulas', table: 1 },
    from: `(SELECT l.*, f.code AS f_code, f.name AS f_name, p.position AS p_at, p.title, m.trade_name, m.code AS m_code,
        1000000 - sum(CASE l.to_hundred WHEN 1 THEN 0 ELSE l.ppm END) OVER (PARTITION BY l.formula_id) AS rest
      FROM formula_line l JOIN formula f ON f.id = l.formula_id JOIN formula_phase p ON p.id = l.phase_id AND p.formula_id = f.id
      JOIN material m ON m.id = l.material_id WHERE f.archived = 0)`,
    columns: {
      ...{ 'Formula code': 'f_code', Formula: 'f_name', Phase: 'char(65 + p_at)', 'Phase title': 'title' },
      ...{ Material: 'trade_name', 'Material code': 'm_code', Note: 'note' },
      'Share (%)': 'CASE to_hundred WHEN 1 THEN max(rest, 0) ELSE ppm END / 10000.0',
      'q.s. to 100 %': "CASE to_hundred WHEN 1 THEN 'yes' END",
    },
  },
  batches: {
    from: `batch b JOIN formula_version v ON v.id = b.version_id JOIN formula f ON f.id = v.formula_id
      LEFT JOIN batch_outcome o ON o.seq = (SELECT max(seq) FROM batch_outcome WHERE batch_id = b.id)`,
    columns: {
      ...{ Batch: 'b.number', 'Formula code': 'f.code', Version: 'v.number', Note: 'b.note' },
      ...{ 'Planned on': 'substr(b.created_at, 1, 10)', 'Weighed in (kg)': 'b.total_mg / 1e6' },
      ...{ 'Finished on': 'o.finished_on', 'Obtained (kg)': 'o.obtained_mg / 1e6' },
      ...{ 'Units filled': 'o.units_filled', 'Recorded by': 'o.by', Remarks: 'o.remarks' },
    },
  },
  trials: {
    from: 'trial_series s',
    columns: {
      ...{ Title: 'title', 'Target HLB': "content ->> '$.targetHlb'", Notes: "content ->> '$.notes'" },
      'Made for': "(SELECT name FROM formula WHERE id = content ->> '$.formulaId')",
      'Each batch (g)': "(content ->> '$.batchMg') / 1e3",
      'Balance readability (g)': "(content ->> '$.readabilityMg') / 1e3",
      Trials: "json_array_length(content, '$.trials')",
      'Chosen trial': `(SELECT t.value ->> '$.label' FROM json_each(s.content, '$.trials') t
        WHERE t.key = s.content ->> '$.chosen')`,
      ...{ 'Made on': 'substr(created_at, 1, 10)', Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  'trials of series': {
    ...{ noun: 'trials', table: 1 },
    from: "trial_series s, json_each(s.content, '$.trials') t",
    columns: {
      ...{ Series: 'title', Trial: "t.value ->> '$.label'", HLB: "t.value ->> '$.hlb'" },
      'Emulsifiers together (%)': "(t.value ->> '$.levelPpm') / 10000.0",
      Chosen: "CASE WHEN t.key = (s.content ->> '$.chosen') THEN 'yes' END",
      Observations: "t.value ->> '$.result'",
    },
  },
  'lines of trials': {
    ...{ noun: 'trials', table: 2 },
    from: `trial_series s, json_each(s.content, '$.trials') t, json_each(t.value, '$.lines') l
      JOIN material m ON m.id = (l.value ->> '$.materialId')`,
    columns: {
      ...{ Series: 's.title', Trial: "t.value ->> '$.label'", Part: "l.value ->> '$.part'" },
      ...{ Material: 'm.trade_name', 'Material code': 'm.code' },
      'Share (%)': "(l.value ->> '$.ppm') / 10000.0",
      'Mass (g)': "(l.value ->> '$.mg') / 1e3",
    },
  },
  substances: {
    from: 'substance s',
    columns: {
      ...{ 'INCI or EU common name': 'name', 'US name, where it differs': 'us_name', 'CAS numbers': 'cas' },
      ...{ 'CI number': 'colour_index', 'Chemical formula': 'formula', 'Declared as': 'allergen_label' },
      'Point of departure (mg/kg body weight per day)': 'pod',
      'Source of these figures': 'safety_source',
      ...{ 'Hansen parameter, polar (MPa½)': 'hansen_p', 'Source of the parameters': 'hansen_source' },
      ...{ Notes: 'notes', Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  limits: {
    from: 'legal_limit',
    columns: {
      ...{ 'Substance or group': 'subject', 'That is': 'subject_kind', 'In the product as': 'purpose' },
      ...{ 'Limit (% of the product)': 'percent', 'Least, of an active (% of the product)': 'min_percent' },
      ...{ 'pH from': 'ph_low', 'pH to': 'ph_high', Use: 'use', 'Text and entry': 'source' },
      ...{ Rule: 'rule', 'Counted as': 'expressed_as', 'Words that the label must carry': 'label_phrase' },
    },
  },
};

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

/** Two series of trials: one for a formula with a trial chosen, one put together at the bench. */
async function seriesOf({ ask }: Of): Promise<object[]> {
  type Rows = { rows: { id: string }[] };
  const { body: found } = await ask<Rows>('GET', '/materials?limit=3');
  const { body: formulas } = await ask<Rows>('GET', '/formulas?limit=1');
  const lines = (levelPpm: number) =>
    found.rows.map(({ id: materialId }, at) => {
      const ppm = at < 2 ? levelPpm / 2 : 1_000_000 - levelPpm;
      return { materialId, part: at < 2 ? 'emulsifier' : 'other', ppm, mg: Math.round((ppm * 50_000) / 1e6) };
    });
  const trial = (label: string, hlb: number | null, levelPpm: number, result: string) => ({
    ...{ label, hlb, levelPpm, result },
    lines: lines(levelPpm),
  });
  const own = { batchMg: 50_000, readabilityMg: 10 };
  return [
    {
      ...{
        ...own,
        title: 'HLB 9 to 11; “fine”',
        formulaId: formulas.rows[0]!.id,
        targetHlb: 10.25,
        chosen: 1,
      },
      trials: [
        trial('HLB 9', 9, 35_002, '-thin-,\nparts "overnight"'),
        trial('HLB 11.5', 11.5, 40_000, '=good'),
      ],
      notes: 'Stirred by hand, 5 min; then left',
    },
    {
      ...{ ...own, title: 'Levels', formulaId: null, targetHlb: null, chosen: null, readabilityMg: 1 },
      trials: [trial('3 %', null, 30_000, '')],
      notes: '',
    },
  ];
}

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
