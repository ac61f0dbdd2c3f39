import { fieldColumns } from '@core/exports/field-columns';
import { savedTable } from '@core/exports/saved-table';
import { beginReading } from '@core/imports/begin-reading';
import { contentOf } from '@core/imports/content-of';
import { gatherRows, readRows } from '@core/imports/read-rows';
import type { ListPage } from '@core/lists/query';
import { MATERIAL_FIELDS } from '@core/materials/fields';
import type { MaterialRow } from '@core/materials/list';
import { blankMaterial, type Material, type MaterialContent } from '@core/materials/material';
import { readCsv } from '@core/tables/csv';
import type { Cell, Sheet } from '@core/tables/table';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';

type Saved = Record<string, unknown> & { noun: string; format: 'csv' | 'xlsx' };

async function saved(of: Awaited<ReturnType<typeof serviceWith>>, asked: Saved): Promise<Uint8Array> {
  const response = await of.service.request('/api/exports/table', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ query: '', ids: null, ...asked }),
  });
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
}

const headOf = (sheet: Sheet): Cell[] => sheet.rows[0]!.cells;
const TAKING = { source: 'x', today: '2026-01-01', currency: 'EUR' } as const;

describe('a list saved as a table', () => {
  it('holds what is filtered, in the order of the list; or what was picked', async () => {
    const of = await serviceWith('demonstration');
    const query = 'charge=cationic&sortBy=tradeName&descending=true';
    const page = (await of.ask<ListPage<MaterialRow>>('GET', `/materials?${query}`)).body;
    const [sheet] = readXlsx(await saved(of, { noun: 'materials', query, format: 'xlsx' }));
    expect(sheet!.rows.slice(1).map(({ cells }) => cells[0])).toEqual(page.rows.map((row) => row.tradeName));
    const ids = page.rows.slice(0, 2).map(({ id }) => id);
    const [two] = readXlsx(await saved(of, { noun: 'materials', ids, format: 'xlsx' }));
    expect(two!.rows).toHaveLength(3);
  });

  it('keeps numbers, days and yes apart from words, with units in the heads', async () => {
    const of = await serviceWith('demonstration');
    const [sheet] = readXlsx(await saved(of, { noun: 'materials', format: 'xlsx' }));
    const column = (heading: string): Cell[] => {
      const at = headOf(sheet!).indexOf(heading);
      expect(at, heading).toBeGreaterThanOrEqual(0);
      return sheet!.rows.slice(1).map(({ cells }) => cells[at] ?? null);
    };
    expect(column('HLB').some((cell) => typeof cell === 'number')).toBe(true);
    expect(column('Usage, highest (%)').some((cell) => typeof cell === 'number')).toBe(true);
    expect(column('Date of the price').every((cell) => cell === null || typeof cell === 'object')).toBe(true);
    expect(column('Needs neutralising').every((cell) => typeof cell === 'boolean')).toBe(true);
  });

  it.each(['formulas', 'batches', 'substances', 'limits'])('saves %s too', async (noun) => {
    const of = await serviceWith('demonstration');
    const [sheet] = readXlsx(await saved(of, { noun, format: 'xlsx' }));
    const head = headOf(sheet!);
    expect(new Set(head).size).toBe(head.length);
    expect(sheet!.rows.length).toBeGreaterThan(1);
    // No identifier of ours is of use in a spreadsheet.
    expect(JSON.stringify(sheet!.rows)).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-/);
  });

  it('gives the lines of formulas a row each, their shares making 100 %', async () => {
    const of = await serviceWith('demonstration');
    const bytes = await saved(of, { noun: 'formulas', format: 'csv', table: 1 });
    const sheet = readCsv(new TextDecoder().decode(bytes), 'lines');
    const [name, share] = [headOf(sheet).indexOf('Formula'), headOf(sheet).indexOf('Share (%)')];
    const sums = new Map<Cell, number>();
    for (const { cells } of sheet.rows.slice(1))
      sums.set(cells[name]!, (sums.get(cells[name]!) ?? 0) + Number(cells[share]));
    expect([...sums.values()].filter((sum) => Math.abs(sum - 100) < 1e-9).length).toBeGreaterThan(3);
  });

  it('says so where there is nothing to save', async () => {
    const { ask } = await serviceWith();
    const asked = { noun: 'materials', query: '', ids: null, format: 'csv' };
    expect((await ask('POST', '/exports/table', asked)).body).toMatchObject({
      title: 'There is nothing to save.',
    });
  });
});

/** What a table can hold of a material: one offer, no documents. */
function asTaken({ documents, photo, offers, figures, ...others }: MaterialContent): unknown {
  const told = Object.entries(figures).map(([kind, { low, value, high }]) => [
    kind,
    value === null ? { low, value, high } : { value },
  ]);
  const newest = [...offers].sort((a, b) => a.date.localeCompare(b.date)).slice(-1);
  return { ...others, figures: Object.fromEntries(told), offers: newest };
}

describe.each(['xlsx', 'csv'] as const)('a shelf saved as %s and taken in again', (format) => {
  it('says of every material what it said', async () => {
    const of = await serviceWith('demonstration');
    const bytes = await saved(of, { noun: 'materials', format });
    const sheet =
      format === 'xlsx' ? readXlsx(bytes)[0]! : readCsv(new TextDecoder().decode(bytes), 'materials.csv');
    const { columns, ways, head } = beginReading(sheet, {});
    const read = readRows(sheet.rows.slice(head + 1), columns, ways);
    const rows = gatherRows(read, 'tradeName', columns);
    expect(rows.flatMap(({ faults }) => faults)).toEqual([]);
    const page = (await of.ask<ListPage<MaterialRow>>('GET', '/materials?limit=500')).body;
    expect(rows).toHaveLength(page.total);
    for (const [at, { id }] of page.rows.entries()) {
      const was = (await of.ask<Material>('GET', `/materials/${id}`)).body;
      const { id: _i, revision: _r, createdAt: _c, updatedAt: _u, ...content } = was;
      expect(asTaken(contentOf(null, rows[at]!.values, TAKING))).toEqual(asTaken(content));
    }
  });
});

describe('what a spreadsheet would run', () => {
  it('is kept from running, and comes back as it was', () => {
    const text = fc.string({ minLength: 1 }).map((one) => `${one}`);
    const danger = fc
      .tuple(fc.constantFrom('=', '+', '-', '@', "'", "'=", '\t'), text)
      .map(([a, b]) => a + b);
    fc.assert(
      fc.property(fc.oneof(danger, text), (written) => {
        fc.pre(written.trim() !== '');
        const bytes = savedTable([{ name: 't', head: ['a', 'b'], rows: [[written, 'x']] }], 'csv', 'en-GB');
        const sheet = readCsv(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes), 't');
        expect(sheet.rows[1]!.cells).toEqual([written, 'x']);
        const cell = new TextDecoder().decode(bytes).split('\r\n').slice(1).join('\r\n');
        if (!/^"?[+-]?\d+([.,]\d+)?"?,/.test(cell)) expect(cell).not.toMatch(/^"?[=+\-@\t\r]/);
      }),
    );
  });

  it('has a head of its own for every field of a material', () => {
    const head = fieldColumns(MATERIAL_FIELDS, 'en-GB').map(({ heading }) => heading);
    expect(new Set(head).size).toBe(head.length);
    const content = blankMaterial('Larkspur Wax', 'Cetyl Alcohol');
    expect(fieldColumns(MATERIAL_FIELDS, 'en-GB')[0]!.cell({ ...content })).toBe('Larkspur Wax');
  });
});
