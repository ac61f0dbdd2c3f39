import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { benchBrowser } from './browser';
import { benchChecks } from './checks';
import { benchDataSheets } from './data-sheets';
import { benchDrag } from './drag';
import { benchEdits } from './edits';
import { benchHour } from './hour';
import { benchLists } from './lists';
import { fixedLoopMs, type BenchFigure, type BenchSettings } from './measure';
import { benchMerging } from './merging';
import { benchOpening } from './opening';
import { benchOptimise } from './optimise';
import { benchReformulate } from './reformulate';
import { benchRewrites } from './rewrites';
import { benchSearch } from './search';
import { benchSheets } from './sheets';
import { benchSystems } from './systems';
import { benchTables } from './tables';
import { benchTwentyYears } from './twenty-years';

const BENCHES: Record<string, (settings: BenchSettings) => Promise<BenchFigure[]>> = {
  search: benchSearch,
  edits: benchEdits,
  rewrites: benchRewrites,
  lists: benchLists,
  merging: benchMerging,
  opening: benchOpening,
  hour: benchHour,
  sheets: benchSheets,
  'data-sheets': benchDataSheets,
  tables: benchTables,
  optimiser: benchOptimise,
  reformulate: benchReformulate,
  systems: benchSystems,
  checks: benchChecks,
  years: benchTwentyYears,
  browser: benchBrowser,
  drag: benchDrag,
};

const HELP = `npm run bench -- [--quick] [--json FILE] [NAME …]    names: ${Object.keys(BENCHES).join(', ')}`;

const HEADINGS = ['what', 'p50', 'p95', 'unit', 'peer', 'ratio', 'goal', 'met', 'loop'];

function short(value: number | null): string {
  return value === null ? '' : value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

/** With the fixed loop's time just before and after: the slower of the two. */
type Measured = BenchFigure & { loopMs: number };

function printTable(figures: readonly Measured[]): void {
  const lines = figures.map((f) => [
    f.name,
    short(f.p50),
    short(f.p95),
    f.unit,
    short(f.peer),
    short(f.ratio),
    f.goal ?? '',
    f.ok === null ? '' : f.ok ? 'yes' : 'MISSED',
    short(f.loopMs),
  ]);
  const table = [HEADINGS, ...lines];
  const widths = HEADINGS.map((_, column) => Math.max(...table.map((line) => line[column]?.length ?? 0)));
  for (const line of table) {
    console.log(
      line
        .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join('  '),
    );
  }
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    options: {
      json: { type: 'string' },
      quick: { type: 'boolean', default: false },
      peer: { type: 'string' },
    },
    allowPositionals: true,
  });
  const unknown = positionals.filter((name) => !(name in BENCHES));
  if (unknown.length > 0) throw new Error(`There is no bench “${unknown.join(', ')}”.\n${HELP}`);
  const settings: BenchSettings = {
    quick: values.quick,
    peerFolder: values.peer ? resolve(values.peer) : null,
    note: (text) => console.log(`  · ${text}`),
  };
  if (!values.peer) console.log('better-sqlite3 could not be had: the peer’s figures are missing.');
  const figures: Measured[] = [];
  for (const [name, bench] of Object.entries(BENCHES)) {
    if (positionals.length > 0 && !positionals.includes(name)) continue;
    console.log(`▸ ${name}`);
    const before = fixedLoopMs();
    const found = await bench(settings).catch((error: unknown): BenchFigure[] => {
      // The others are measured all the same.
      console.error(error);
      process.exitCode = 1;
      return [];
    });
    const loopMs = Math.max(before, fixedLoopMs());
    figures.push(...found.map((figure) => ({ ...figure, loopMs })));
  }
  console.log('');
  printTable(figures);
  const missed = figures.filter(({ ok }) => ok === false);
  console.log(
    `\n${missed.length === 0 ? 'Every goal that could be judged is met.' : `Missed: ${missed.map(({ name }) => name).join('; ')}.`}` +
      '\n“loop” is the time of a fixed sum in ms, before or after the bench, whichever was longer: read absolute times against it.',
  );
  if (values.json) writeFileSync(values.json, `${JSON.stringify(figures, null, 2)}\n`);
}

await main();
process.exit();
