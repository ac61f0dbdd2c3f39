import { readDataSheet } from '@core/datasheets/read-data-sheet';
import { describe, expect, it } from 'vitest';
import { pagesOf, sheetPdf } from './sheet-pdf';
import { ENGLISH } from './sheets/english';
import { ENGLISH_ODD } from './sheets/english-odd';
import { FRENCH } from './sheets/french';
import { GERMAN } from './sheets/german';
import { SPANISH } from './sheets/spanish';

const SHEETS = [...ENGLISH, ...ENGLISH_ODD, ...GERMAN, ...FRENCH, ...SPANISH];

describe('invented data sheets of differing layouts', () => {
  it('are thirty at least', () => {
    expect(SHEETS.length).toBeGreaterThanOrEqual(30);
  });

  it.each(SHEETS.map((sheet) => [sheet.name, sheet] as const))('%s', async (_name, sheet) => {
    const { proposals } = readDataSheet(await pagesOf(await sheetPdf(sheet.content)));
    const taken = proposals.filter(({ sure }) => sure !== 'unsure');
    expect(Object.fromEntries(taken.map(({ key, value }) => [key, value]))).toEqual(sheet.found);
    const asked = new Set(proposals.flatMap(({ sure, key }) => (sure === 'unsure' ? [key] : [])));
    expect([...asked].sort()).toEqual([...(sheet.unsure ?? [])].sort());
  });
});

it('leaves to the maker whether what burns is a base or an acid', async () => {
  const pages = await pagesOf(
    await sheetPdf('Hazard statements: H314 Causes severe skin burns and eye damage.'),
  );
  const found = readDataSheet(pages).proposals.filter(({ key }) => key === 'hazards');
  expect(found).toMatchObject([
    { value: ['caustic'], sure: 'unsure', note: expect.stringContaining('strong acid') as string },
  ]);
});
