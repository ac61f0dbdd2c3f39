import { beginReading } from '@core/imports/begin-reading';
import type { Outcome } from '@core/imports/plan-row';
import { gatherRows, likelyKey, readRows } from '@core/imports/read-rows';
import { blankMaterial, type Material } from '@core/materials/material';
import { readCsv } from '@core/tables/csv';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from '../service/service-fixture';

async function takeIn(ask: Ask, text: string): Promise<Outcome[]> {
  const sheet = readCsv(text, 't.csv');
  const { head, columns, ways } = beginReading(sheet, {});
  const read = readRows(sheet.rows.slice(head + 1), columns, ways);
  const key = likelyKey(read);
  const rows = gatherRows(read, key, columns);
  const { id } = (await ask<{ id: string }>('POST', '/imports', { key, file: 't.csv' })).body;
  const outcomes = (await ask<Outcome[]>('POST', `/imports/${id}/rows`, { rows })).body;
  await ask('POST', `/imports/${id}/take-in`);
  return outcomes;
}

async function wax(): Promise<{ ask: Ask; read(): Promise<Material> }> {
  const { ask } = await serviceWith('empty');
  const { id } = (
    await ask<Material>('POST', '/materials', blankMaterial('Larkspur Wax', 'Cetearyl Alcohol'))
  ).body;
  return { ask, read: async () => (await ask<Material>('GET', `/materials/${id}`)).body };
}

describe('a table of prices', () => {
  const PRICES = [
    'Name;Supplier;Price (EUR/kg);Pack;Price date',
    'Larkspur Wax;Brookmill;18,40;1 kg;31.03.2026',
    'Larkspur Wax;Brookmill;15,90;25 kg;31.03.2026',
    'Larkspur Wax;Harrow;19,00;1 kg;31.03.2026',
    'Larkspur Oil;Harrow;7,00;1 kg;31.03.2026',
  ].join('\n');

  it('adds every offer of a material, once; one that is not on the shelf is refused', async () => {
    const { ask, read } = await wax();
    const outcomes = await takeIn(ask, PRICES);
    expect(outcomes.map(({ kind, name }) => [kind, name])).toEqual([
      ['changed', 'Larkspur Wax'],
      ['refused', 'Larkspur Oil'],
    ]);
    expect((await read()).offers.map((one) => [one.supplier, one.packMg, one.priceMinor])).toEqual([
      ['Brookmill', 1_000_000, 1840],
      ['Brookmill', 25_000_000, 39_750],
      ['Harrow', 1_000_000, 1900],
    ]);
    expect((await takeIn(ask, PRICES))[0]!.kind).toBe('same');
    expect((await read()).offers).toHaveLength(3);
  });
});

describe('a table of compositions', () => {
  it('gathers the INCI names of a material from its rows', async () => {
    const { ask, read } = await wax();
    const text = 'Name;INCI;Share %\nLarkspur Wax;Cetearyl Alcohol;75\nLarkspur Wax;Ceteareth-20;25';
    expect((await takeIn(ask, text))[0]!.kind).toBe('changed');
    expect((await read()).composition.map(({ inci, lowPpm }) => [inci, lowPpm])).toEqual([
      ['Cetearyl Alcohol', 750_000],
      ['Ceteareth-20', 250_000],
    ]);
    expect((await takeIn(ask, text))[0]!.kind).toBe('same');
  });

  it('still refuses a second row that says something else of the material', async () => {
    const { ask } = await wax();
    const outcomes = await takeIn(ask, 'Name;HLB\nLarkspur Wax;11,5\nLarkspur Wax;12,5');
    expect(outcomes.map(({ kind }) => kind)).toEqual(['changed', 'refused']);
  });
});
