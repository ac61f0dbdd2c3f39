import { limitsCsv, readLimitsCsv } from '@core/limits/csv';
import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import { limitContent } from '@core/limits/limit';
import { describe, expect, it } from 'vitest';

describe('limits from a CSV file', () => {
  it('reads what it wrote, every example', () => {
    const read = readLimitsCsv(limitsCsv(STARTER_LIMITS));
    expect(read.refused).toBeNull();
    expect(read.rows.flatMap(({ faults }) => faults)).toEqual([]);
    expect(read.rows.map(({ limit }) => limit)).toEqual(STARTER_LIMITS);
  });

  it('matches heads, takes a decimal comma and semicolons, and says why a row is refused', () => {
    const text = [
      'Substance or group;Limit;Region;Text and entry;Counted as;Remark',
      'Phenoxyethanol;1,0;EU | Great Britain;Annex V, 29;;mine',
      'Benzoates;five;EU;Annex V, 1;Benzoic Acid;',
      'Sorbates;0.6;Atlantis;Annex V, 4;;',
      ';1;EU;Annex;;',
      'Wide;120;EU;Annex;;',
    ].join('\n');
    const { rows, unknown } = readLimitsCsv(text);
    expect(unknown).toEqual(['Remark']);
    expect(rows[0]?.limit).toMatchObject({ percent: 1, regions: ['EU', 'Great Britain'] });
    expect(rows.slice(1).map(({ line, limit }) => [line, limit])).toEqual([
      [3, null],
      [4, null],
      [5, null],
      [6, null],
    ]);
    expect(rows[1]?.faults.join()).toContain('number');
    expect(rows[2]?.faults.join()).toContain('Atlantis');
    expect(rows[3]?.faults.join()).toContain('substance or group');
    expect(rows[4]?.faults.join()).toContain('100');
  });

  it('refuses a file without its columns, an open quotation mark, and an empty one', () => {
    expect(readLimitsCsv('a,b\n1,2').refused).toContain('column is missing');
    expect(readLimitsCsv('').refused).toContain('empty');
    expect(readLimitsCsv('Substance or group,Region,Text and entry\n"open,EU,x').refused).toContain(
      'quotation',
    );
    expect(readLimitsCsv('Substance or group,Region,Text and entry').refused).toContain('No row');
  });
});

describe('the starter set of limits', () => {
  it('may be entered as it is', () => {
    for (const one of STARTER_LIMITS)
      expect(limitContent.safeParse(one).error?.issues ?? [], `${one.subject} ${one.source}`).toEqual([]);
    expect(STARTER_LIMITS.every(({ checked }) => checked === 'example: check the current law')).toBe(true);
  });
});
