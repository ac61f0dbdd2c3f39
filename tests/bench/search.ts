import { deepStrictEqual } from 'node:assert';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toParams } from '@core/lists/address';
import type { ListPage, ListQuery } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry, type MaterialRow } from '@core/materials/list';
import { readMaterialEntries } from '@db/materials/list';
import { openBenchLibrary, makeLibrary, type BenchLibrary } from './bench-library';
import { figureFrom, percentile, timeOf, type BenchFigure, type BenchSettings } from './measure';
import { openPeer } from './peer';
import { fillPeerShelf, peerSearch, type Found } from './peer-search';
import { mistypedWorkload, searchWorkload } from './search-workload';

async function ask(library: BenchLibrary, query: ListQuery): Promise<string> {
  const answer = await library.service.request(
    `/api/materials?${toParams(MATERIALS_LIST, query).toString()}`,
  );
  if (answer.status !== 200) throw new Error(`The search answered ${answer.status}.`);
  return answer.text();
}

/** What both answer; what else could be asked for where nothing is found is ours alone. */
function foundIn({ total, offset, rows, counts }: ListPage<MaterialRow>): Found {
  return { total, offset, rows, counts };
}

interface PeerShelf {
  search(query: ListQuery): Found;
  discard(): void;
}

function makePeerShelf(peerFolder: string, entries: readonly MaterialEntry[]): PeerShelf {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-peer-'));
  const peer = openPeer(peerFolder, join(folder, 'peer.sqlite'));
  // All of it in memory, so that the race is about searching and not about the disk.
  peer.pragma('cache_size = -400000');
  peer.pragma('mmap_size = 2000000000');
  peer.pragma('temp_store = MEMORY');
  fillPeerShelf(peer, entries);
  return {
    search: peerSearch(peer),
    discard: () => {
      peer.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function searchAt(materials: number, settings: BenchSettings): Promise<BenchFigure[]> {
  const library = await openBenchLibrary(await makeLibrary(materials, 0));
  const entries = readMaterialEntries(library.session.current().library);
  const peer = settings.peerFolder ? makePeerShelf(settings.peerFolder, entries) : null;
  try {
    settings.note(`library of ${materials} materials opened in ${library.openedInMs.toFixed(0)} ms`);
    const queries = searchWorkload(entries, settings.quick ? 60 : 300);
    // Warms both up, and asks for the same answer: a race to different answers would be void.
    for (const query of queries) {
      const answer = JSON.parse(await ask(library, query)) as ListPage<MaterialRow>;
      if (peer) deepStrictEqual(peer.search(query), foundIn(answer));
    }
    const ours: number[] = [];
    const theirs: number[] = [];
    for (const query of queries) {
      ours.push(await timeOf(() => ask(library, query)));
      if (peer) theirs.push(await timeOf(() => peer.search(query)));
    }
    const name = `search with text and filters, ${materials.toLocaleString('en')} materials`;
    const plain = figureFrom(name, ours, {
      atMost: 8,
      ratioAtMost: 2,
      peer: peer ? percentile(theirs, 0.95) : null,
    });
    return [plain, await mistypedAt(library, entries, queries.length)];
  } finally {
    peer?.discard();
    await library.discard();
  }
}

/** The same with a word of each search mistyped; the peer knows no such search. */
async function mistypedAt(
  library: BenchLibrary,
  entries: readonly MaterialEntry[],
  count: number,
): Promise<BenchFigure> {
  const queries = mistypedWorkload(entries, count);
  for (const query of queries) await ask(library, query);
  const times: number[] = [];
  for (const query of queries) times.push(await timeOf(() => ask(library, query)));
  return figureFrom(`search with a typo, ${entries.length.toLocaleString('en')} materials`, times, {
    atMost: 8,
  });
}

/** Search with filters and text, request to response through the service. */
export async function benchSearch(settings: BenchSettings): Promise<BenchFigure[]> {
  const figures: BenchFigure[] = [];
  for (const materials of settings.quick ? [5_000] : [5_000, 100_000]) {
    figures.push(...(await searchAt(materials, settings)));
  }
  return figures;
}
