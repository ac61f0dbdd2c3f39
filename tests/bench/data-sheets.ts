import { readDataSheet } from '@core/datasheets/read-data-sheet';
import { heading, prose, table, title, twoColumns } from '../unit/datasheets/layouts';
import { pagesOf, sheetPdf } from '../unit/datasheets/sheet-pdf';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const GRID = [
  ['Property', 'Unit', 'Specification', 'Typical value', 'Method'],
  ['Acid value', 'mg KOH/g', 'max. 3.0', '1.2', 'ISO 660'],
  ['Saponification value', 'mg KOH/g', '160 – 175', '168', 'ISO 3657'],
  ['Iodine value', 'g I2/100 g', 'max. 2', '0.8', 'ISO 3961'],
];
const WARM_UP = 2;
const WORDS =
  'Larkspur Wax is a wax-like emulsifier for creams, lotions and milks of every kind of skin, and is pleasant to work with. ';

/** Four full pages: two of running text, a page of labels, a page of tables. */
function fourPages() {
  const next = { text: '', pageBreak: 'after' as const };
  return [
    title('Larkspur Wax Q'),
    prose(...Array.from({ length: 9 }, () => WORDS.repeat(4))),
    next,
    prose(...Array.from({ length: 9 }, () => WORDS.repeat(4))),
    next,
    twoColumns(
      Array.from({ length: 30 }, (_, at) => [`Remark ${at}`, 'None is known']).concat([['HLB', '11.5']]),
    ),
    next,
    heading('Specification'),
    ...Array.from({ length: 6 }, () => table(GRID, [130, 70, 90, 80, '*'])),
  ];
}

/** How long a data sheet of four pages takes from its bytes to what it proposes, by the reader that the page uses. */
export async function benchDataSheets({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const bytes = await sheetPdf(fourPages());
  const took: number[] = [];
  // The first ones load the reader of PDF and compile both.
  for (let round = -WARM_UP; round < (quick ? 10 : 30); round += 1) {
    const time = await timeOf(async () => void readDataSheet(await pagesOf(bytes)));
    if (round >= 0) took.push(time);
  }
  return [figureFrom('data sheet of 4 pages read', took, { atMost: 1000 })];
}
