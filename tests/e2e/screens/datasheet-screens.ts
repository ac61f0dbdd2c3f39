import type { Screen } from './openers';
import { sheetPdf } from '../../unit/datasheets/sheet-pdf';
import { sampleFormula, title, twoColumns } from '../../unit/datasheets/layouts';

/** An invented sheet with something sure, something likely and something to look at first. */
export const larkspurSheet = () =>
  sheetPdf([
    title('Larkspur Wax Q'),
    twoColumns([
      ['Trade name', 'Larkspur Wax Q'],
      ['INCI name', 'Cetearyl Alcohol (72 %), Ceteareth-20 (28 %)'],
      ['Appearance', 'White to off-white pellets'],
      ['HLB value', '11.5'],
      ['pH (3 % in water)', '5.5 – 7.0'],
      ['Melting range', '58 – 62 °C'],
      ['Recommended use level', '2 – 5 %'],
      ['Storage temperature', '5 – 25 °C'],
    ]),
    sampleFormula(
      'Guide formula',
      ['Phase', 'INCI name', '%'],
      [['A', 'Aqua', '70.0']],
      ['Use level: 8 – 9 %'],
    ),
  ]);

/** Reading a supplier's data sheet: before one is chosen, and with the first of two read. */
export const DATASHEET_SCREENS: Screen[] = [
  { name: 'read a data sheet', route: 'data-sheet', address: () => '/data-sheet' },
  {
    name: 'read a data sheet, read',
    route: 'data-sheet',
    address: (records) => (records ? `/data-sheet?material=${records.materials[0]}` : '/data-sheet'),
    prepare: async (page) => {
      const sheet = { mimeType: 'application/pdf', buffer: Buffer.from(await larkspurSheet()) };
      const named = ['Larkspur Wax Q.pdf', 'Larkspur Oil, specification of spring.pdf'];
      await page
        .getByLabel('Data sheet', { exact: true })
        .setInputFiles(named.map((name) => ({ ...sheet, name })));
      await page.locator('canvas[data-drawn=yes]').waitFor();
    },
  },
];
