import { demoLibrary } from '@core/demo/demo-library';
import { readDocumentText, type LibraryDocument } from '@core/exchange/document';
import { LIBRARY_DOCUMENT_FILE, MANIFEST_FILE } from '@core/packs/pack';
import { checkContents } from '@db/library/file/library-bytes';
import { Engine } from '@db/library/sql/engine';
import { readPack } from '@db/packs/read-pack';
import { sealOf, shaOf, writePack } from '@db/packs/write-pack';
import { insertBatch } from '@db/batches/batches';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import { materials as shelf } from '@db/materials/materials';
import { performMeeting, type Applied, type MetRows } from '@service/meeting/meeting-job';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { AT, documentOf, emptyLibrary } from '../unit/merging/two-libraries';
import { damaged, readOrRefuse, someDamage } from './damage';

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

const DECISIONS = { rules: {}, records: {}, fields: {} };
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
