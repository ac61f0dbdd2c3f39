import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { HostProcess } from '../e2e/host-process';

export interface ColdStarts {
  /** From the start of the process until each was answered, in ms. */
  toList: number[];
  toHome: number[];
  /** The most that the process held, as the system counts it, in bytes. */
  residentBytes: number;
}

/** What the first list asks for, and what the first screen asks for, as the page does. */
const LIST = '/api/materials?limit=50&counts=later';
const HOME = [
  '/api/library',
  '/api/formulas?sortBy=updatedAt&descending=true&limit=8&counts=later',
  '/api/batches?limit=8&counts=later',
];

/** From the start of the built host's process until its first list, and all that its first screen shows, is answered. */
export async function coldStarts(folder: string, rounds: number): Promise<ColdStarts> {
  const found: ColdStarts = { toList: [], toHome: [], residentBytes: 0 };
  // The first makes this process's own connection ready, and is not counted.
  for (let round = 0; round <= rounds; round++) {
    const start = performance.now();
    const host = await HostProcess.start({ args: ['--library', folder], folder: join(folder, '..') });
    try {
      await host.get(LIST);
      const toList = performance.now() - start;
      await Promise.all(HOME.map((path) => host.get(path)));
      const toHome = performance.now() - start;
      if (round === 0) continue;
      found.toList.push(toList);
      found.toHome.push(toHome);
      found.residentBytes = Math.max(found.residentBytes, residentBytesOf(host.pid));
    } finally {
      await host.stop();
    }
  }
  return found;
}

function residentBytesOf(pid: number): number {
  return Number(execFileSync('ps', ['-o', 'rss=', '-p', String(pid)], { encoding: 'utf8' })) * 1024;
}
