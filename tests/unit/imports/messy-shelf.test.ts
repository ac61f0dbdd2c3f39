import { beginReading } from '@core/imports/begin-reading';
import type { Outcome } from '@core/imports/plan-row';
import { gatherRows, likelyKey, readRows, type KeyTarget } from '@core/imports/read-rows';
import type { TableRow } from '@core/imports/row';
import { refusedRowsCsv } from '@core/imports/refused-rows';
import { targetOf } from '@core/imports/targets';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { blankMaterial, type Material } from '@core/materials/material';
import { readCsv } from '@core/tables/csv';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from '../service/service-fixture';
import { BAD, germanShelf, ROWS } from './german-shelf';

const FILE = 'Rohstoffe.csv';

function read(text: string, key?: KeyTarget) {
  const sheet = readCsv(text, FILE);
  const reading = beginReading(sheet, {});
  const rows = readRows(sheet.rows.slice(reading.head + 1), reading.columns, reading.ways);
  const by = key ?? likelyKey(rows);
  return { sheet, reading, key: by, rows: gatherRows(rows, by, reading.columns) };
}

async function plan(ask: Ask, key: KeyTarget, rows: readonly TableRow[]) {
  const { id } = (await ask<{ id: string }>('POST', '/imports', { key, file: FILE })).body;
  const outcomes: Outcome[] = [];
  for (let at = 0; at < rows.length; at += 150)
    outcomes.push(
      ...(await ask<Outcome[]>('POST', `/imports/${id}/rows`, { at, rows: rows.slice(at, at + 150) })).body,
    );
  const count = (kind: Outcome['kind']) => outcomes.filter((one) => one.kind === kind).length;
  return { id, outcomes, count };
}

const materialsOf = async (ask: Ask, query = 'limit=1000') =>
  (await ask<ListPage<MaterialRow>>('GET', `/materials?${query}`)).body;
const full = async (ask: Ask, text: string) => {
  const { rows } = await materialsOf(ask, `text=${encodeURIComponent(text)}`);
  return (await ask<Material>('GET', `/materials/${rows[0]!.id}`)).body;
};

describe('a messy German shelf of 400 rows', () => {
  const shelf = read(germanShelf());

  it('is understood by its headings, below a title; a lot number is not taken for a charge', () => {
    expect(shelf.reading.head).toBe(1);
    expect(Object.fromEntries(shelf.reading.columns.map(({ heading, target }) => [heading, target]))).toEqual(
      {
        'Artikel-Nr.': 'code',
        Handelsname: 'tradeName',
        'INCI-Bezeichnung': 'composition',
        Ladung: 'charge',
        Lieferform: 'form',
        Funktion: 'functions',
        'HLB-Wert': 'figures.hlb',
        'Einsatz min (%)': 'usage.minPpm',
        'Einsatz max (%)': 'usage.maxPpm',
        'Haltbarkeit (Monate)': 'storage.shelfLifeMonths',
        Lieferant: 'offer.supplier',
        Gebinde: 'offer.pack',
        Preis: 'offer.price',
        Charge: null,
      },
    );
    expect(shelf.reading.columns.at(-1)!.reason).toMatch(/would be Charge, but most of its cells are not/);
    expect(shelf.reading.ways.mark).toBe(',');
    expect(shelf.key).toBe('code');
  });

  it('comes in but for its 11 bad rows, each with its reason; a second time changes nothing; taken back as one', async () => {
    const { ask } = await serviceWith();
    const first = await plan(ask, shelf.key, shelf.rows);
    const refused = first.outcomes.filter(({ kind }) => kind === 'refused');
    expect(Object.keys(BAD)).toHaveLength(11);
    // Two lines stand above the first row.
    expect(refused.map(({ line }) => line - 3)).toEqual(Object.keys(BAD).map(Number));
    for (const { line, faults } of refused)
      expect(faults.map(({ message }) => message).join(' '), `row ${line - 3}`).toMatch(BAD[line - 3]!.why);
    expect([first.count('new'), first.count('changed'), first.count('same')]).toEqual([ROWS - 11, 0, 0]);
    expect((await materialsOf(ask)).total).toBe(0);

    expect((await ask('POST', `/imports/${first.id}/take-in`)).body).toEqual({
      added: ROWS - 11,
      changed: 0,
    });
    expect((await materialsOf(ask)).total).toBe(ROWS - 11);
    expect((await ask('POST', `/imports/${first.id}/take-in`)).status).toBe(409);

    const again = await plan(ask, shelf.key, shelf.rows);
    expect([again.count('new'), again.count('changed'), again.count('same')]).toEqual([0, 0, ROWS - 11]);
    expect((await ask('POST', `/imports/${again.id}/take-in`)).body).toEqual({ added: 0, changed: 0 });

    expect((await ask('POST', `/imports/${first.id}/take-back`)).status).toBe(200);
    expect((await materialsOf(ask)).total).toBe(0);
  });

  it('writes what the row says, with where it comes from', async () => {
    const { ask } = await serviceWith();
    const { id } = await plan(ask, shelf.key, shelf.rows);
    await ask('POST', `/imports/${id}/take-in`);
    // Row 5: kind 1, charge word 2 of 3, form 5, even month column, HLB as a range 4–8.
    const five = await full(ask, 'R-0005');
    expect(five).toMatchObject({
      code: 'R-0005',
      tradeName: 'Feldhaus Muster 5',
      charge: 'anionic',
      form: 'viscous liquid',
      functions: ['co-emulsifier', 'thickener'],
      composition: [
        { inci: 'Glyceryl Stearate', lowPpm: 600_000, highPpm: 600_000 },
        { inci: 'PEG-100 Stearate', lowPpm: 400_000, highPpm: 400_000 },
      ],
      usage: { minPpm: 5_000, maxPpm: 42_500, provenance: 'supplier', source: `taken in from ${FILE}` },
      storage: { shelfLifeMonths: 24 },
    });
    expect(five.figures.hlb).toEqual({
      low: 4,
      value: null,
      high: 8,
      provenance: 'supplier',
      source: `taken in from ${FILE}`,
    });
    expect(five.offers).toMatchObject([
      { supplier: 'Haus Erlenbach', packMg: 500_000, priceMinor: 1540, currency: 'EUR' },
    ]);
  });

  it('a changed price and a changed charge are told in words, and nothing else is touched', async () => {
    const { ask } = await serviceWith();
    const first = await plan(ask, shelf.key, shelf.rows);
    await ask('POST', `/imports/${first.id}/take-in`);
    const before = await full(ask, 'R-0004');
    await ask('PUT', `/materials/${before.id}`, {
      revision: 1,
      content: { ...before, notes: 'Riecht nach Heu.' },
    });
    const changed = read(
      germanShelf((row, n) => (n === 4 ? { ...row, charge: 'anionisch', price: '99,00 €' } : row)),
    );
    const second = await plan(ask, changed.key, changed.rows);
    const [four] = second.outcomes.filter(({ kind }) => kind === 'changed');
    expect(second.count('changed')).toBe(1);
    expect(four!.differences.map(({ label }) => label)).toEqual(['Charge', 'Suppliers and prices']);
    expect(four!.differences[0]).toMatchObject({ before: 'Non-ionic', after: 'Anionic' });
    await ask('POST', `/imports/${second.id}/take-in`);
    const after = await full(ask, 'R-0004');
    expect(after).toMatchObject({ charge: 'anionic', notes: 'Riecht nach Heu.', form: before.form });
    expect(after.offers.map(({ priceMinor }) => priceMinor)).toEqual([1440, 9900]);
    await ask('POST', `/imports/${second.id}/take-back`);
    expect(await full(ask, 'R-0004')).toMatchObject({ charge: 'non-ionic', notes: 'Riecht nach Heu.' });
  });

  it('gives the refused rows back as CSV, each as it stood, with why', async () => {
    const { ask } = await serviceWith();
    const { outcomes } = await plan(ask, shelf.key, shelf.rows);
    const { rows } = readCsv(refusedRowsCsv(shelf.sheet, shelf.reading.head, outcomes), 'refused');
    expect(rows).toHaveLength(1 + 11);
    expect(rows[0]!.cells.slice(0, 4)).toEqual(['Line', 'Why it was refused', 'Artikel-Nr.', 'Handelsname']);
    expect(rows[1]!.cells).toEqual(
      expect.arrayContaining(['R-0007', 'Feldhaus Muster 7', 'hoch']) as unknown[],
    );
  });
});

describe('what stands in the way', () => {
  it('a material changed, or come, between looking and taking in: nothing is written', async () => {
    const { ask } = await serviceWith();
    const { rows, key } = read('Name;INCI;HLB\nA;Glycerin;5,5\nB;Aqua;6,5');
    const { body: a } = await ask<Material>('POST', '/materials', blankMaterial('A', 'Glycerin'));
    const planned = await plan(ask, key, rows);
    expect(planned.outcomes.map(({ kind }) => kind)).toEqual(['changed', 'new']);
    await ask('PUT', `/materials/${a.id}`, { revision: 1, content: { ...a, notes: 'x' } });
    const refused = await ask<ProblemDetails>('POST', `/imports/${planned.id}/take-in`);
    expect([refused.status, refused.body.title]).toEqual([409, '“A” was changed meanwhile.']);
    expect((await materialsOf(ask)).total).toBe(1);
    const second = await plan(ask, key, rows);
    await ask('POST', '/materials', blankMaterial('B', 'Aqua'));
    expect((await ask<ProblemDetails>('POST', `/imports/${second.id}/take-in`)).body.title).toMatch(
      /“B” has come/,
    );
  });

  it('what was changed since is not taken back over', async () => {
    const { ask } = await serviceWith();
    const { rows, key } = read('Name;INCI;HLB\nA;Glycerin;5,5\nB;Aqua;6,5');
    const { id } = await plan(ask, key, rows);
    await ask('POST', `/imports/${id}/take-in`);
    const a = await full(ask, 'A');
    await ask('PUT', `/materials/${a.id}`, { revision: 1, content: { ...a, notes: 'mine' } });
    const refused = await ask<ProblemDetails>('POST', `/imports/${id}/take-back`);
    expect([refused.status, refused.body.title]).toEqual([409, '“A” was changed after it was taken in.']);
    expect((await materialsOf(ask)).total).toBe(2);
  });

  it('blends of one table that would come to hold each other: nothing is written', async () => {
    const { ask } = await serviceWith();
    const { rows, key } = read('Name;INCI;HLB\nInner;Outer;5,5\nOuter;Inner;6,5');
    const { id, outcomes } = await plan(ask, key, rows);
    expect(outcomes.map(({ kind }) => kind)).toEqual(['new', 'new']);
    expect((await ask('POST', `/imports/${id}/take-in`)).status).toBe(422);
    expect((await materialsOf(ask)).total).toBe(0);
  });

  it('two materials of one name, a row without its key, a key twice in the file', async () => {
    const { ask } = await serviceWith();
    for (const inci of ['Glycerin', 'Aqua']) await ask('POST', '/materials', blankMaterial('Twin', inci));
    const { rows } = read('Name;INCI;HLB\ntwin;Glycerin;5,5\n;Aqua;6,5\nC;Aqua;1,5\nc;Aqua;1,5', 'tradeName');
    const { outcomes } = await plan(ask, 'tradeName', rows);
    expect(outcomes.map(({ faults }) => faults[0]?.message ?? '')).toEqual([
      expect.stringMatching(/^2 materials of the library have this trade name/),
      'The row has no trade name to be known by.',
      '',
      '“c” is already in line 4.',
    ]);
  });

  it('rows that no page of ours would send', async () => {
    const { ask } = await serviceWith();
    const { id } = (await ask<{ id: string }>('POST', '/imports', { key: 'code', file: FILE })).body;
    const send = (values: object) =>
      ask('POST', `/imports/${id}/rows`, { rows: [{ line: 1, values, faults: [] }] });
    expect((await send({ photo: 'x' })).status).toBe(422);
    expect((await send({ 'figures.hlb': 5 })).status).toBe(422);
    expect((await send({ id: 'x' })).status).toBe(422);
    expect((await ask('POST', '/imports/other/rows', { rows: [] })).status).toBe(404);
  });
});

describe('compositions over several rows', () => {
  const text =
    'Code;Name;INCI;Anteil %;HLB\nX1;Blend;Glycerin;60;5,5\nX1;Blend;Aqua;40;\nX2;Pure;Squalane;100;';
  it('are the INCI names of one material, with their shares', async () => {
    const { ask } = await serviceWith();
    const { rows, key } = read(text);
    const { id, outcomes } = await plan(ask, key, rows);
    expect(outcomes.map(({ kind }) => kind)).toEqual(['new', 'new']);
    await ask('POST', `/imports/${id}/take-in`);
    expect((await full(ask, 'X1')).composition).toEqual([
      { inci: 'Glycerin', lowPpm: 600_000, highPpm: 600_000 },
      { inci: 'Aqua', lowPpm: 400_000, highPpm: 400_000 },
    ]);
  });
  it('must agree in all else', () => {
    const { rows } = read(text.replace('X1;Blend;Aqua', 'X1;Other;Aqua'));
    expect(rows[0]!.faults.map(({ message }) => message)).toEqual([
      `Line 3 gives another value for ${targetOf('tradeName').label}. A material has one.`,
    ]);
  });
});
