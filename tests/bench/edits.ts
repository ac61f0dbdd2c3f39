import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { materialContent, type Material } from '@core/materials/material';
import type { Reader } from '@db/database';
import { materials as shelf, readMaterial } from '@db/materials/materials';
import { makeLibrary, openBenchLibrary, type BenchLibrary } from './bench-library';
import { materialId } from './library-generator';
import { figureFrom, percentile, timeOf, type BenchFigure, type BenchSettings } from './measure';
import { openPeer, peerWriter } from './peer';
import { Seeded } from './seeded';

const WARM_UP = 50;

/** A maker's edit: a price comes in, a note grows, a usage changes. */
function edited(before: Material, number: number): Material {
  const price = { supplier: 'Velmora Trading', itemCode: '', packMg: 5_000_000, currency: 'EUR' as const };
  return {
    ...before,
    appearance: `${before.appearance.slice(0, 200)} seen ${number}`.trim(),
    notes: `${before.notes} edit${number}`.trim(),
    offers: [...before.offers.slice(0, 5), { ...price, priceMinor: 1_000 + number, date: '2026-01-15' }],
  };
}

function editedIds(materials: number, count: number): string[] {
  const chance = new Seeded(11);
  return Array.from({ length: count }, () => materialId(chance.whole(0, materials - 1)));
}

/** A changed material as the page sends it. */
function putOf(after: Material): [path: string, init: RequestInit] {
  const body = JSON.stringify({ revision: after.revision, content: materialContent.parse(after) });
  const headers = { 'content-type': 'application/json' };
  return [`/api/materials/${after.id}`, { method: 'PUT', headers, body }];
}

/** One edit of ours, request to response, in ms; it is in the log and flushed when its response comes. */
async function timeEdit(library: BenchLibrary, id: string, number: number): Promise<number> {
  const request = putOf(edited(found(library.session.current().library, id), number));
  return timeOf(async () => {
    const answer = await library.service.request(...request);
    const text = await answer.text();
    if (answer.status !== 200) throw new Error(`The edit answered ${answer.status}: ${text}`);
  });
}

function found(db: Reader, id: string): Material {
  const known = readMaterial(db, id);
  if (!known) throw new Error(`Material ${id} was not generated.`);
  return known;
}

interface PeerLibrary {
  /** Changes and commits the same rows, without any service around it; in ms. */
  timeEdit(id: string, number: number): Promise<number>;
  discard(): void;
}

/** The peer over a copy of a library's own file, so that both hold the very same rows. */
function makePeerLibrary(peerFolder: string, library: string): PeerLibrary {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-peer-'));
  const file = join(folder, 'peer.sqlite');
  copyFileSync(join(library, 'library.sqlite'), file);
  const peer = openPeer(peerFolder, file);
  peer.pragma('journal_mode = WAL');
  peer.pragma('synchronous = FULL');
  peer.pragma('foreign_keys = ON');
  const writer = peerWriter(peer);
  return {
    timeEdit: (id, number) => {
      const before = found(writer, id);
      const after = { ...edited(before, number), revision: before.revision + 1 };
      return timeOf(() => {
        peer.exec('BEGIN IMMEDIATE');
        shelf.update(writer, before, after);
        peer.exec('COMMIT');
      });
    },
    discard: () => {
      peer.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Edits while the whole file is being rewritten in its worker: only reported. */
async function editsDuringRewrite(
  library: BenchLibrary,
  ids: readonly string[],
  of: string,
): Promise<BenchFigure> {
  let rewriting = true;
  const rewrite = library.session
    .current()
    .library.rewrite()
    .finally(() => (rewriting = false));
  const times: number[] = [];
  for (let i = 0; rewriting && i < ids.length; i++) {
    times.push(await timeEdit(library, ids[i]!, i));
    await new Promise((next) => setImmediate(next));
  }
  await rewrite;
  return figureFrom(`acknowledged edit while the file is rewritten, ${of}`, times);
}

/** Edits of a made library by its service, turn about with the peer's; the library goes in the end. */
export async function raceEdits(
  folder: string,
  materials: number,
  of: string,
  settings: BenchSettings,
): Promise<BenchFigure[]> {
  const ids = editedIds(materials, WARM_UP + (settings.quick ? 100 : 500));
  const peer = settings.peerFolder ? makePeerLibrary(settings.peerFolder, folder) : null;
  const library = await openBenchLibrary(folder);
  try {
    const ours: number[] = [];
    const theirs: number[] = [];
    // Turn about, so that both meet the same disk and the same neighbours.
    for (const [number, id] of ids.entries()) {
      ours.push(await timeEdit(library, id, number));
      if (peer) theirs.push(await peer.timeEdit(id, number));
    }
    const peerP95 = peer ? percentile(theirs.slice(WARM_UP), 0.95) : null;
    const goals = { atMost: 3, ratioAtMost: 2.5, peer: peerP95 };
    return [
      figureFrom(`acknowledged edit, ${of}`, ours.slice(WARM_UP), goals),
      await editsDuringRewrite(library, ids, of),
    ];
  } finally {
    peer?.discard();
    await library.discard();
  }
}

async function editsAt(materials: number, formulas: number, settings: BenchSettings): Promise<BenchFigure[]> {
  const of = `${materials.toLocaleString('en')} materials + ${formulas.toLocaleString('en')} formulas`;
  return raceEdits(await makeLibrary(materials, formulas), materials, of, settings);
}

/** An edit of a material that is on the disk when the response comes. */
export async function benchEdits(settings: BenchSettings): Promise<BenchFigure[]> {
  const small = await editsAt(5_000, 1_000, settings);
  return settings.quick ? small : [...small, ...(await editsAt(100_000, 10_000, settings))];
}
