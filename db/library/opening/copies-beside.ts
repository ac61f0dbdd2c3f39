import { join } from 'node:path';
import type { Problem } from '@core/problems/problem';
import { headerProblem, openBytes } from '../file/library-bytes';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { decodeLog, type Position } from '../log/log-format';
import { endOf } from '../log/replay';
import type { Settled } from '../options';
import type { Loaded } from './loading';
import { wentThrough } from './memory';
import { copyBeside } from './opening-problems';

const LOG_START = 'stillroom-log ';

/**
 * Tells of files beside the library that are copies of it or of its log under other names, as synchronising programs
 * leave them where two computers changed it, and that hold what this library has not. Nothing is done to them.
 */
export async function copiesBeside(settled: Settled, loaded: Loaded): Promise<Problem[]> {
  const { fileSystem: fs, folder } = settled;
  const names = await fs.readdir(folder).catch(() => []);
  const found: Problem[] = [];
  for (const name of names.filter((each) => mayBeCopy(each)).sort()) {
    const end = await endOfCopy(settled, join(folder, name), loaded.meta.id).catch(() => undefined);
    if (end && !wentThrough(loaded, end)) found.push(copyBeside(name, end.sequence, loaded.meta.sequence));
  }
  return found;
}

function mayBeCopy(name: string): boolean {
  return name !== LIBRARY_FILE && name !== LOG_FILE && !name.startsWith('.');
}

/** Which change a copy of this library, or of its log, leads to; undefined for any other file. */
async function endOfCopy(settled: Settled, path: string, id: string): Promise<Position | undefined> {
  const { fileSystem: fs, migrations } = settled;
  const { isFile, size } = await fs.stat(path);
  if (!isFile) return undefined;
  const start = await fs.readStart(path, 100);
  if (Buffer.from(start).toString('latin1').startsWith(LOG_START)) {
    const log = decodeLog(await fs.readFile(path));
    return log.header.libraryId === id ? endOf(log) : undefined;
  }
  if (headerProblem(start, size, migrations.length)) return undefined;
  const { engine, meta } = await openBytes(await fs.readFile(path), migrations.length, { known: true });
  engine.close();
  return meta.id === id ? { sequence: meta.sequence, chain: meta.chain } : undefined;
}
