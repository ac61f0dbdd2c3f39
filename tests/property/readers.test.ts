import { readDataSheet } from '@core/datasheets/read-data-sheet';
import type { PageText } from '@core/datasheets/lines';
import { beginReading } from '@core/imports/begin-reading';
import { gatherFormulas } from '@core/imports/formula-rows';
import { gatherRows, likelyKey, readRows } from '@core/imports/read-rows';
import { readTableFile } from '@core/imports/read-table-file';
import { SUBJECTS } from '@core/imports/subjects';
import { readPicture } from '@service/attachments/pictures/read-picture';
import { strToU8 } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetPdf, pagesOf } from '../unit/datasheets/sheet-pdf';
import { GERMAN } from '../unit/datasheets/sheets/german';
import { germanShelf } from '../unit/imports/german-shelf';
import { damaged, readOrRefuse, someDamage } from './damage';

/** All that the page does with a table before it asks the service. */
async function understood(bytes: Uint8Array): Promise<void> {
  for (const sheet of await readTableFile('a.csv', bytes))
    for (const about of SUBJECTS) {
      const { head, columns, ways } = beginReading(sheet, {}, undefined, about);
      const rows = readRows(sheet.rows.slice(head + 1), columns, ways);
      if (about === 'formulas') gatherFormulas(rows);
      else gatherRows(rows, likelyKey(rows), columns);
    }
}

describe('a table', () => {
  it('of any bytes is read or refused', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        await readOrRefuse(() => understood(bytes));
      }),
      { numRuns: 200 },
    );
  });

  it('of cells that look like something is read or refused', async () => {
    const piece = fc.constantFrom(
      ...[
        'Name',
        'HLB',
        'INCI',
        'Preis €/kg',
        '1,5',
        '1.200',
        '-',
        'n/a',
        '5–25 °C',
        '1e308',
        '31.02.2026',
        '12/12/12',
      ],
      ...[
        '#DIV/0!',
        '=cmd',
        '"',
        '""',
        "'",
        ';',
        ',',
        '\t',
        '|',
        '\n',
        '\r\n',
        '%',
        '0x10',
        '٣',
        '½',
        '<',
        '>',
        '≤ 5',
      ],
      ...[
        'Glycerin (and) Aqua (50–60 %)',
        'a'.repeat(300),
        '\u0000',
        '\ud800',
        'ß',
        'sep=;\n',
        'Phase',
        'q.s.',
        'ad 100',
      ],
    );
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 40 }), async (pieces) => {
        await readOrRefuse(() => understood(strToU8(pieces.join(''))));
      }),
      { numRuns: 300 },
    );
  });

  it('of a maker, damaged, is read or refused', async () => {
    const shelf = strToU8(germanShelf().split('\n').slice(0, 60).join('\n'));
    await fc.assert(
      fc.asyncProperty(someDamage, async (damage) => {
        await readOrRefuse(() => understood(damaged(shelf, damage)));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a supplier’s data sheet', () => {
  const someItem = fc.record({
    text: fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.constantFrom(
        ...[
          'HLB',
          'HLB:',
          'pH (10 %)',
          '4.5 – 6.5',
          '11',
          'CAS',
          '56-81-5',
          'INCI',
          'Glycerin',
          '25 °C',
          'Melting point',
          '≤',
        ],
        ...[
          'Composition',
          '%',
          '50-60',
          'Säurezahl',
          'mg KOH/g',
          'Valeur',
          'Density',
          '1,02 g/ml',
          'H314',
          ':',
          '.',
          '–',
        ],
      ),
    ),
    x: fc.oneof(fc.double({ min: 0, max: 600 }), fc.double()),
    y: fc.oneof(fc.double({ min: 0, max: 800 }), fc.double()),
    width: fc.oneof(fc.double({ min: 0, max: 200 }), fc.double()),
    height: fc.oneof(fc.constant(10), fc.double()),
  });

  it('is read wherever its text lies', async () => {
    const somePage = fc.array(someItem, { maxLength: 60 });
    await fc.assert(
      fc.asyncProperty(fc.array(somePage, { maxLength: 3 }), async (pages) => {
        const sheet = pages.map((items, at): PageText => ({
          number: at + 1,
          width: 595,
          height: 842,
          items,
        }));
        await readOrRefuse(() => readDataSheet(sheet));
      }),
      { numRuns: 300 },
    );
  });

  it('that is damaged ends in an answer of the reader of PDF', async () => {
    const pdf = await sheetPdf(GERMAN[0]!.content);
    await fc.assert(
      fc.asyncProperty(someDamage, async (damage) => {
        const pages = await pagesOf(new Uint8Array(damaged(pdf, damage))).catch((error: unknown) => {
          // What pdf.js refuses comes as an error of its own, which the screen puts into words.
          expect(error).toBeInstanceOf(Error);
          return [];
        });
        await readOrRefuse(() => readDataSheet(pages));
      }),
      { numRuns: 15 },
    );
  });
});

describe('a picture', () => {
  it('of any bytes behind its first ones is read or refused', async () => {
    const heads = {
      'image/png': [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
      'image/jpeg': [0xff, 0xd8, 0xff],
      'image/webp': [...strToU8('RIFF\x10\0\0\0WEBPVP8 ')],
    } as const;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...(Object.keys(heads) as (keyof typeof heads)[])),
        fc.uint8Array({ maxLength: 120 }),
        async (type, rest) => {
          await readOrRefuse(() => readPicture(Uint8Array.from([...heads[type], ...rest]), type));
        },
      ),
      { numRuns: 300 },
    );
  });
});
