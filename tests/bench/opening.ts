import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { makeLibrary } from './bench-library';
import { coldStarts } from './cold-start';
import { figureFrom, type BenchFigure, type BenchSettings } from './measure';

const SIZES = [
  { materials: 5_000, atMost: 500 },
  { materials: 20_000, atMost: 1_000 },
  { materials: 100_000, atMost: 3_000 },
];

/** The host started cold on libraries of growing size, until its first list is answered. */
export async function benchOpening({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const figures: BenchFigure[] = [];
  for (const { materials, atMost } of quick ? SIZES.slice(0, 1) : SIZES) {
    const folder = await makeLibrary(materials, 0);
    const { toList } = await coldStarts(folder, quick ? 4 : 8);
    await rm(join(folder, '..'), { recursive: true, force: true });
    const name = `host started cold to first list, ${materials.toLocaleString('en')} materials`;
    figures.push(figureFrom(name, toList, { atMost }));
  }
  return figures;
}
