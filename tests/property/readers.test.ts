import { readDataSheet } from '@core/datasheets/read-data-sheet';
import type { PageText } from '@core/datasheets/lines';
import { demoLibrary } from '@core/demo/demo-library';
import { readDocumentText, type LibraryDocument } from '@core/exchange/document';
import { beginReading } from '@core/imports/begin-reading';
import { gatherFormulas } from '@core/imports/formula-rows';
import { gatherRows, likelyKey, readRows } from '@core/imports/read-rows';
import { readTableFile } from '@core/imports/read-table-file';
import { SUBJECTS } from '@core/imports/subjects';
import { LIBRARY_DOCUMENT_FILE, MANIFEST_FILE } from '@core/packs/pack';
import { Problem } from '@core/problems/problem';
import { checkContents } from '@db/library/file/library-bytes';
import { Engine } from '@db/library/sql/engine';
import { readPack } from '@db/packs/read-pack';
import { sealOf, shaOf, writePack } from '@db/packs/write-pack';
import { insertBatch } from '@db/batches/batches';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import { materials as shelf } from '@db/materials/materials';
import { readPicture } from '@service/attachments/pictures/read-picture';
import { performMeeting, type Applied, type MetRows } from '@service/meeting/meeting-job';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { sheetPdf, pagesOf } from '../unit/datasheets/sheet-pdf';
import { GERMAN } from '../unit/datasheets/sheets/german';
import { germanShelf } from '../unit/imports/german-shelf';
import { AT, documentOf, emptyLibrary } from '../unit/merging/two-libraries';

/* Whatever stands in a file that comes from outside: it is read, or refused with a reason, in bounded time. */

const LONGEST_MS = 5_000;
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Reads; what is refused says what is wrong and what to do. Anything else that is thrown is a defect. */
async function readOrRefuse<T>(read: () => T | Promise<T>): Promise<T | null> {
  const began = cpuMs();
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    expect(error.code).not.toBe('internal');
    expect(error.message).toMatch(/^[A-Z“].*[.?!”]$/s);
    expect(error.advice).not.toBe('');
    return null;
  } finally {
    expect(cpuMs() - began).toBeLessThan(LONGEST_MS);
  }
}

/** Bytes changed here and there, a stretch gone or there twice, or something put in. */
const someDamage = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('flip' as const), at: fc.nat(), by: fc.integer({ min: 1, max: 255 }) }),
    fc.record({ kind: fc.constant('cut' as const), at: fc.nat(), by: fc.nat({ max: 400 }) }),
    fc.record({ kind: fc.constant('twice' as const), at: fc.nat(), by: fc.nat({ max: 400 }) }),
    fc.record({
      kind: fc.constant('put' as const),
      at: fc.nat(),
      bytes: fc.oneof(
        fc.uint8Array({ maxLength: 12 }),
        fc.constantFrom('"', '\r', '\0', ';;;', '=1+1', '-', '1e999', '\ufeff', '\ud83d', '∞').map(strToU8),
      ),
    }),
  ),
  { minLength: 1, maxLength: 6 },
);
type Damage = typeof someDamage extends fc.Arbitrary<infer D> ? D : never;

function damaged(bytes: Uint8Array, damage: Damage): Uint8Array {
  return damage.reduce((now: Uint8Array, one): Uint8Array => {
    const at = now.length === 0 ? 0 : one.at % now.length;
    if (one.kind === 'flip') {
      const copy = now.slice();
      if (copy.length > 0) copy[at]! ^= one.by;
      return copy;
    }
    if (one.kind === 'put') return Buffer.concat([now.subarray(0, at), one.bytes, now.subarray(at)]);
    const to = one.kind === 'cut' ? at + one.by : Math.max(0, at - one.by);
    return Buffer.concat([now.subarray(0, at), now.subarray(to)]);
  }, bytes);
}

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

let document: LibraryDocument;
let pack: Uint8Array;
let ours: Uint8Array;

beforeAll(async () => {
  const { materials, formulas, versions, batches } = demoLibrary();
  const engine = await emptyLibrary();
  const formula = formulas.find(({ id }) => versions.some(({ formulaId }) => formulaId === id))!;
  const own = versions.filter(({ formulaId }) => formulaId === formula.id);
  const used = new Set([
    ...formula.phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId)),
    ...own.flatMap((version) => Object.keys(version.materials)),
  ]);
  engine.control('BEGIN');
  for (const one of materials) if (used.has(one.id)) shelf.insert(engine, one);
  writeFormula(engine, formula);
  for (const one of own) insertVersion(engine, one);
  for (const one of batches) if (own.some(({ id }) => id === one.versionId)) insertBatch(engine, one);
  engine.control('COMMIT');
  document = JSON.parse(JSON.stringify(documentOf(engine))) as LibraryDocument;
  engine.close();
  pack = writePack({ document, title: 'Spring', by: '', attachments: new Map() });
  const mine = await emptyLibrary();
  for (const one of materials.slice(0, 3)) shelf.insert(mine, { ...one, notes: 'ours' });
  ours = mine.exportBytes();
  mine.close();
});

interface Place {
  holder: Record<string, unknown>;
  key: string;
}

function placesIn(value: unknown, found: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return found;
  const holder = value as Record<string, unknown>;
  for (const key of Object.keys(holder)) {
    found.push({ holder, key });
    placesIn(holder[key], found);
  }
  return found;
}

const someValue = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    0,
    -1,
    1e300,
    true,
    [],
    {},
    'x'.repeat(500),
    '\u0000',
    '\ud800',
    '2026-13-45',
  ),
  fc.constantFrom<unknown>(
    'material',
    'formula',
    'settings',
    '__proto__',
    '../../x',
    '<script>',
    'a'.repeat(64),
  ),
  fc.jsonValue({ maxDepth: 2 }),
);
const someChanges = fc.array(
  fc.record({
    at: fc.nat(),
    how: fc.constantFrom('set' as const, 'drop' as const, 'twice' as const, 'swap' as const),
    value: someValue,
    other: fc.nat(),
  }),
  { minLength: 1, maxLength: 4 },
);
type Changes = typeof someChanges extends fc.Arbitrary<infer C> ? C : never;

/** A document in which values are other ones, missing, there twice, or in each other's place. */
function changed(changes: Changes): unknown {
  const copy = structuredClone(document) as unknown;
  for (const { at, how, value, other } of changes) {
    const places = placesIn(copy);
    if (places.length === 0) break;
    const { holder, key } = places[at % places.length]!;
    const second = places[other % places.length]!;
    if (how === 'set') holder[key] = value;
    else if (how === 'drop' && Array.isArray(holder)) holder.splice(Number(key), 1);
    else if (how === 'drop') delete holder[key];
    else if (how === 'twice' && Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
    else holder[key] = structuredClone(second.holder[second.key]);
  }
  return copy;
}

const DECISIONS = { rules: {}, records: {} };
const DOING = { by: '', at: AT, why: 'merged', library: 'ours' };

/** Meets what came, looks at all of it and takes it in. What comes out must be a whole library. */
async function metAndTaken(bytes: Uint8Array): Promise<void> {
  const meeting = 'fuzz';
  const other = { kind: 'file' as const, bytes, name: 'x' };
  await performMeeting({ kind: 'begin', meeting, ours: ours.slice(), other, at: AT });
  const ask = { relation: null, offset: 0, limit: 20 };
  const met = (await performMeeting({ kind: 'rows', meeting, decisions: DECISIONS, ask })) as MetRows;
  for (const { key } of met.rows.slice(0, 3))
    await performMeeting({ kind: 'fields', meeting, key, region: 'en-GB' });
  await performMeeting({ kind: 'files', meeting, decisions: null });
  const applied = await performMeeting({ kind: 'apply', meeting, decisions: DECISIONS, doing: DOING });
  const engine = await Engine.open((applied as Applied).bytes);
  try {
    checkContents(engine);
    documentOf(engine);
  } finally {
    engine.close();
  }
}

describe('a document (JSON)', () => {
  it('of anything at all is refused with a reason', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.json()), async (text) => {
        expect(await readOrRefuse(() => readDocumentText(text))).toBeNull();
      }),
    );
  });

  it('in which something is changed is taken in whole, or refused with a reason', async () => {
    await fc.assert(
      fc.asyncProperty(someChanges, async (changes) => {
        await readOrRefuse(() => metAndTaken(strToU8(JSON.stringify(changed(changes)))));
      }),
      { numRuns: 40 },
    );
  });

  it('cut short or damaged is refused, or taken in whole', async () => {
    const text = strToU8(JSON.stringify(document));
    await fc.assert(
      fc.asyncProperty(someDamage, async (damage) => {
        await readOrRefuse(() => metAndTaken(damaged(text, damage)));
      }),
      { numRuns: 40 },
    );
  });
});

describe('a pack', () => {
  it('that is damaged is refused, or what it was', async () => {
    await fc.assert(
      fc.asyncProperty(someDamage, async (damage) => {
        const read = await readOrRefuse(() => readPack(damaged(pack, damage)));
        if (read) expect(read.document).toEqual(document);
      }),
      { numRuns: 150 },
    );
  });

  // As somebody would make one who knows the format: hashes and seal are right, what it says is not.
  it('sealed anew over what was changed is taken in whole, or refused with a reason', async () => {
    const parts = unzipSync(pack);
    await fc.assert(
      fc.asyncProperty(someChanges, async (changes) => {
        const bytes = strToU8(JSON.stringify(changed(changes)));
        const manifest = JSON.parse(strFromU8(parts[MANIFEST_FILE]!)) as Parameters<typeof sealOf>[0] & {
          seal: string;
        };
        const files = manifest.files.map((file) =>
          file.path === LIBRARY_DOCUMENT_FILE ? { ...file, sha256: shaOf(bytes), bytes: bytes.length } : file,
        );
        const next = { ...manifest, files };
        const sealed = strToU8(JSON.stringify({ ...next, seal: sealOf(next) }));
        await readOrRefuse(() =>
          metAndTaken(zipSync({ ...parts, [MANIFEST_FILE]: sealed, [LIBRARY_DOCUMENT_FILE]: bytes })),
        );
      }),
      { numRuns: 25 },
    );
  });
});
