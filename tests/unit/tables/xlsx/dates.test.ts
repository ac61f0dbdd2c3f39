import { kindOfCode } from '@core/tables/xlsx/number-formats';
import { dateOfSerial, serialOfDate, timeOfSerial } from '@core/tables/xlsx/serial-dates';
import { describe, expect, it } from 'vitest';
import { cellsOf, parts, sheetEntry, sheetOf, styles, workbook, worksheet, zipped } from './hand-built';
import { readXlsx } from '@core/tables/xlsx/read-xlsx';

describe('a serial number', () => {
  // Source: ECMA-376 Part 1, 18.17.4.1, its examples and bounds of the two backward-compatible systems.
  it.each([
    [1, false, '1900-01-01'],
    [3687, false, '1910-02-03'],
    [38749, false, '2006-02-01'],
    [2958465, false, '9999-12-31'],
    [0, true, '1904-01-01'],
    [2225, true, '1910-02-03'],
    [37287, true, '2006-02-01'],
    [2957003, true, '9999-12-31'],
  ])('%d (since 1904: %s) is %s', (serial, from1904, date) => {
    expect(dateOfSerial(serial, from1904, false)).toBe(date);
  });

  it('of the 1900 system counts a 29 February 1900 that never was', () => {
    expect(dateOfSerial(59, false, false)).toBe('1900-02-28');
    expect(dateOfSerial(60, false, false)).toBeNull();
    expect(dateOfSerial(61, false, false)).toBe('1900-03-01');
  });

  it('outside of the calendar is no day', () => {
    for (const serial of [0, 0.99, 2958466, 1e300]) expect(dateOfSerial(serial, false, false)).toBeNull();
    for (const serial of [-1, 2957004]) expect(dateOfSerial(serial, true, false)).toBeNull();
  });

  it('has its time to the second', () => {
    expect(dateOfSerial(38749.5, false, false)).toBe('2006-02-01T12:00:00');
    expect(dateOfSerial(38749 + 86399 / 86400, false, false)).toBe('2006-02-01T23:59:59');
    expect(dateOfSerial(38748.9999999999, false, false)).toBe('2006-02-01');
    expect(dateOfSerial(38749, false, true)).toBe('2006-02-01T00:00:00');
    expect(timeOfSerial(0.395833333333333)).toBe('09:30');
    expect(timeOfSerial(1.5 + 5 / 86400)).toBe('36:00:05');
  });

  it('comes of a day, or of none where programs differ', () => {
    expect(serialOfDate('1900-03-01')).toBe(61);
    expect(serialOfDate('2006-02-01T12:00:00')).toBe(38749.5);
    expect(serialOfDate('9999-12-31')).toBe(2958465);
    for (const date of [
      '1900-02-28',
      '2026-02-29',
      '2026-13-01',
      '0000-00-00',
      'soon',
      '2026-03-01T24:00:00',
    ])
      expect(serialOfDate(date)).toBeNull();
  });
});

describe('a number format', () => {
  it.each([
    ['General', 'plain'],
    ['0.00E+00', 'plain'],
    ['#,##0.00\\ "€"', 'money €'],
    ['#,##0.00\\ [$€-407]', 'money €'],
    ['[$$-409]#,##0.00', 'money US$'],
    ['[$$-1009]#,##0.00', 'money CA$'],
    ['[$$-0C09]#,##0.00', 'money A$'],
    ['#,##0.00\\ [$kr-41D]', 'money SEK'],
    ['[$¥-411]#,##0', 'money JPY'],
    ['[$¥-804]#,##0.00', 'plain'],
    ['[$CHF]\\ #,##0.00', 'money CHF'],
    ['£#,##0.00;[Red]-£#,##0.00', 'money £'],
    ['"USD" 0.00', 'money USD'],
    ['"$"#,##0.00_);\\("$"#,##0.00\\)', 'plain'],
    ['0.00 "kg"', 'plain'],
    ['0 "PCS"', 'plain'],
    ['[Red]#,##0;[Blue]-#,##0', 'plain'],
    ['[$-407]#,##0.00', 'plain'],
    ['0.0 "mg/day"', 'plain'],
    ['0\\d', 'plain'],
    ['0_d*s', 'plain'],
    ['0;dd', 'plain'],
    ['@', 'plain'],
    ['[', 'plain'],
    ['', 'plain'],
    ['dd.mm.yyyy', 'date'],
    ['[$-F800]dddd\\,\\ mmmm\\ dd\\,\\ yyyy', 'date'],
    ['[$-407]TT', 'plain'],
    ['mmm', 'date'],
    ['mm', 'date'],
    ['YYYY"年"M"月"', 'date'],
    ['yyyy\\-mm\\-dd;@', 'date'],
    ['m/d/yy h:mm AM/PM', 'moment'],
    ['yyyy-mm-dd"T"hh:mm:ss.000', 'moment'],
    ['h:mm', 'time'],
    ['mm:ss.0', 'time'],
    ['[$-F400]h:mm:ss\\ AM/PM', 'time'],
    ['[h]:mm:ss', 'elapsed'],
    ['[mm]:ss', 'elapsed'],
    ['0.0%', 'percent'],
    ['0"%"', 'plain'],
  ])('%s makes it a %s', (code, kind) => {
    expect(kindOfCode(code)).toBe(kind);
  });

  it('of the built-in ones is known by its number', () => {
    const more = { 'xl/styles.xml': styles(14, 22, 20, 46, 34, 1) };
    const cells =
      '<c s="0"><v>46082</v></c><c s="1"><v>46082</v></c><c s="2"><v>0.25</v></c><c s="3"><v>1.25</v></c>';
    const either =
      '<c s="4"><v>46082</v></c><c s="4"><v>0.25</v></c><c s="5"><v>46082</v></c><c s="77"><v>3</v></c>';
    expect(cellsOf(cells + either, more)).toEqual([
      { date: '2026-03-01' },
      { date: '2026-03-01T00:00:00' },
      '06:00',
      '30:00',
      { date: '2026-03-01' },
      '06:00',
      46082,
      3,
    ]);
  });
});

describe('a date cell', () => {
  const dated = { 'xl/styles.xml': styles('yyyy-mm-dd') };

  it('is read by the date system of its workbook', () => {
    const book = workbook(sheetEntry('Stock', 's1'), '<workbookPr date1904="1"/>');
    const sheet = worksheet('<row><c s="0"><v>44620</v></c></row>');
    const [read] = readXlsx(zipped(parts(sheet, { ...dated, 'xl/workbook.xml': book })));
    expect(read!.rows[0]!.cells).toEqual([{ date: '2026-03-01' }]);
  });

  it('keeps a time of day that its format hides', () => {
    expect(cellsOf('<c s="0"><v>46082.5</v></c>', dated)).toEqual([{ date: '2026-03-01T12:00:00' }]);
  });

  it('that is no day stays a number, and the note says where', () => {
    const sheet = sheetOf('<row r="3"><c r="B3" s="0"><v>60</v></c><c s="0"><v>-2</v></c></row>', dated);
    expect(sheet.rows[0]!.cells).toEqual([null, 60, -2]);
    expect(sheet.notes).toEqual([
      '2 numbers are shown as dates, but are no days, the first in B3; they are read as numbers.',
    ]);
  });

  it('holds a formula’s day too', () => {
    expect(cellsOf('<c s="0"><f>TODAY()</f><v>46082</v></c>', dated)).toEqual([{ date: '2026-03-01' }]);
  });
});
