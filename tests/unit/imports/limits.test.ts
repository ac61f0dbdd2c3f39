import { fieldColumns } from '@core/exports/field-columns';
import { savedTable } from '@core/exports/saved-table';
import { beginReading } from '@core/imports/begin-reading';
import { limitFrom } from '@core/imports/limit-targets';
import type { Outcome } from '@core/imports/plan-row';
import { readRows } from '@core/imports/read-rows';
import { LIMIT_FIELDS } from '@core/limits/fields';
import { blankLimit, limitContent, type LimitContent } from '@core/limits/limit';
import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import { readCsv } from '@core/tables/csv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';

function rowsOf(text: string) {
  const sheet = readCsv(text, 'limits.csv');
  const reading = beginReading(sheet, {}, undefined, 'limits');
  return { reading, rows: readRows(sheet.rows.slice(reading.head + 1), reading.columns, reading.ways) };
}

function csvOf(limits: readonly LimitContent[]): string {
  const columns = fieldColumns(LIMIT_FIELDS, 'en-GB');
  const rows = limits.map((one) => columns.map(({ cell }) => cell(one)));
  const head = columns.map(({ heading }) => heading);
  return new TextDecoder().decode(savedTable([{ name: 'limits', head, rows }], 'csv', 'en-GB'));
}

describe('a table of limits', () => {
  it('that was saved from the list comes in as it went, every example', () => {
    const { rows } = rowsOf(csvOf(STARTER_LIMITS));
    expect(rows.flatMap(({ faults }) => faults)).toEqual([]);
    expect(rows.map(({ values }) => limitFrom(values).content)).toEqual(STARTER_LIMITS);
  });

  it('matches heads, takes a decimal comma and lists, and says why a row is refused', () => {
    const { reading, rows } = rowsOf(
      [
        'Substance or group;Limit, % of the product;Region;Text and entry;Counted as;Remark',
        'Phenoxyethanol;1,0;EU | Great Britain;Annex V, 29;;mine',
        'Benzoates;five;EU;Annex V, 1;Benzoic Acid;',
        'Sorbates;0,6;Atlantis;Annex V, 4;;',
        ';1;EU;Annex;;',
        'Wide;120;EU;Annex;;',
      ].join('\n'),
    );
    expect(reading.columns.filter(({ target }) => target === null).map(({ heading }) => heading)).toEqual([
      'Remark',
    ]);
    expect(limitFrom(rows[0]!.values).content).toMatchObject({
      percent: 1,
      regions: ['EU', 'Great Britain'],
    });
    const why = rows
      .slice(1)
      .map((row) => [...row.faults, ...limitFrom(row.values).faults].map((one) => one.message).join(' '));
    expect(why[0]).toContain('number');
    expect(why[1]).toContain('Atlantis');
    expect(why[2]).toContain('substance or group');
    expect(why[3]).toContain('100');
  });

  const words = fc.string({ unit: fc.constantFrom('a', 'é', '"', ',', ';', '=', '%', '’'), maxLength: 20 });
  const written = fc
    .record({
      subject: words.map((one) => `S ${one}`),
      percent: fc.integer({ min: 0, max: 1_000_000_000 }).map((one) => one / 1e7),
      condition: words,
      rule: fc.constantFrom('at most' as const, 'less than' as const),
      regions: fc.constantFrom<LimitContent['regions']>(['EU'], ['EU', 'US']),
      use: fc.constantFrom('leave-on' as const, 'rinse-off' as const, null),
      phLow: fc.constantFrom(null, 0, 3.5),
      until: fc.constantFrom('', '2030-12-31'),
    })
    .map((parts): LimitContent => ({ ...blankLimit(''), source: 'Annex, 1', ...parts }))
    // What only says that nothing is known is taken for nothing.
    .filter(({ condition }) => /[aé%=]/.test(condition) || condition === '');

  it('is read back as it was written, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.array(written, { minLength: 1, maxLength: 5 }), (limits) => {
        const entered = limits.map((one) => limitContent.parse(one));
        const { rows } = rowsOf(csvOf(entered));
        expect(rows.map(({ values, faults }) => [faults, limitFrom(values).content])).toEqual(
          entered.map((one) => [[], one]),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('is taken in whole, without those that the library holds, and taken back', async () => {
    const { ask } = await serviceWith('empty');
    await ask('POST', '/limits', {
      ...blankLimit('Inventium'),
      percent: 1,
      regions: ['EU'],
      source: 'a text',
    });
    const before = (await ask<{ total: number }>('GET', '/limits')).body.total;
    const { rows } = rowsOf(
      'Subject;Percent;Regions;Source\nInventium;1;EU;a text\nFictol;2;EU;a text\nFictol;2;EU;a text\nNullol;;EU;a text',
    );
    const { id } = (
      await ask<{ id: string }>('POST', '/imports', { about: 'limits', key: 'code', file: 'l.csv' })
    ).body;
    const outcomes = (await ask<Outcome[]>('POST', `/imports/${id}/rows`, { rows })).body;
    expect(outcomes.map(({ kind }) => kind)).toEqual(['same', 'new', 'refused', 'refused']);
    expect((await ask('POST', `/imports/${id}/take-in`)).body).toEqual({ added: 1, changed: 0 });
    expect((await ask<{ total: number }>('GET', '/limits')).body.total).toBe(before + 1);
    expect((await ask('POST', `/imports/${id}/take-back`)).status).toBe(200);
    expect((await ask<{ total: number }>('GET', '/limits')).body.total).toBe(before);
  });
});
