import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { coldStarts } from './cold-start';
import { raceEdits } from './edits';
import { filledLibrary } from './fill-library';
import { figureFrom, type BenchFigure, type BenchSettings } from './measure';
import { fillRecord, MANY_VERSIONS, TWENTY_YEARS, type Extent } from './record-generator';

const MB = 1_000_000;

const makeRecord = (extent: Extent) => filledLibrary((engine) => fillRecord(engine, extent));

function sizeFigure(name: string, bytes: number, atMostMb: number): BenchFigure {
  const size = bytes / MB;
  return {
    name,
    p50: size,
    p95: size,
    unit: 'MB',
    peer: null,
    ratio: null,
    goal: `≤ ${atMostMb} MB`,
    ok: size <= atMostMb,
  };
}

/** The twenty-year library: its file, its start and its edits; and what ten thousand versions weigh. */
export async function benchTwentyYears(settings: BenchSettings): Promise<BenchFigure[]> {
  const versions = await makeRecord(MANY_VERSIONS);
  await rm(join(versions.folder, '..'), { recursive: true, force: true });
  const years = await makeRecord(TWENTY_YEARS);
  const { toList, toHome, residentBytes } = await coldStarts(years.folder, settings.quick ? 3 : 8);
  const edits = await raceEdits(years.folder, TWENTY_YEARS.materials, 'twenty-year library', settings);
  return [
    sizeFigure('10,000 versions of 20 lines over 500 materials: file', versions.bytes, 60),
    sizeFigure('twenty-year library: file', years.bytes, 250),
    sizeFigure('twenty-year library: process', residentBytes, 1_000),
    figureFrom('twenty-year library: process started to first list', toList, { atMost: 2_000 }),
    figureFrom('twenty-year library: process started to all of the first screen', toHome, { atMost: 2_000 }),
    ...edits,
  ];
}
