import { beginReading } from '@core/imports/begin-reading';
import { readRows } from '@core/imports/read-rows';
import { describe, expect, it } from 'vitest';
import { cellsOf, sheetOf, styles } from './hand-built';

const text = (words: string) => `<c t="inlineStr"><is><t>${words}</t></is></c>`;

describe('a number that a spreadsheet shows as money', () => {
  it('keeps the currency that its format shows, as the maker sees it', () => {
    const more = {
      'xl/styles.xml': styles('#,##0.00\\ [$€-407]', '[$$-409]#,##0.00', '"£"0.00', '#,##0.00'),
    };
    const cells =
      '<c s="0"><v>12.5</v></c><c s="1"><v>1200</v></c><c s="2"><v>-3.125</v></c><c s="3"><v>9.9</v></c>';
    expect(cellsOf(cells, more)).toEqual(['12.5 €', '1200 US$', '-3.1250 £', 9.9]);
  });

  const priced = (format: string, value: string, more = '') => {
    const rows = `<row>${text('Rohstoff')}${text('Preis')}${text('HLB')}</row><row>${text('Alba')}<c s="0"><v>${value}</v></c>${text('5,8')}</row>${more}`;
    const sheet = sheetOf(rows, { 'xl/styles.xml': styles(format) });
    const { head, columns, ways } = beginReading(sheet, {});
    const [row] = readRows(sheet.rows.slice(head + 1), columns, ways);
    return {
      price: row?.values['offer.price'],
      faults: row?.faults.map(({ message }) => message),
      mark: ways.mark,
    };
  };

  it('is a price in that currency, and not in the maker’s own', () => {
    expect(priced('[$$-409]#,##0.00', '12.5')).toMatchObject({
      price: { amount: 12.5, currency: 'USD' },
      faults: [],
    });
    expect(priced('0.00\\ "€"', '1234.5')).toMatchObject({ price: { amount: 1234.5, currency: 'EUR' } });
    expect(priced('0.00', '12.5')).toMatchObject({ price: { amount: 12.5, currency: null } });
  });

  it('stays in the maker’s own where the sign stands for several and the file does not say whose', () => {
    expect(priced('"$"0.00', '12.5')).toMatchObject({ price: { amount: 12.5, currency: null }, faults: [] });
  });

  it('tells nothing of the decimal mark of what is written beside it', () => {
    expect(priced('0.00\\ "€"', '12.5').mark).toBe(',');
    expect(priced('0.0%', '0.055').mark).toBe(',');
  });
});
