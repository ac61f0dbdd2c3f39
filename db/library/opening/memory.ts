import type { Problem } from '@core/problems/problem';
import type { Position } from '../log/log-format';
import type { Loaded } from './loading';
import { anotherThanHere, changedElsewhere, olderThanHere } from './opening-problems';

/** How a library stood when it was last open for writing on this computer. */
export interface Remembered extends Position {
  id: string;
}

/**
 * What a host keeps of libraries outside of their folders: what is replaced there as a whole, by older files or by those
 * of another computer, is noticed by nothing else.
 */
export interface LibraryMemory {
  recall(folder: string): Remembered | undefined;
  remember(folder: string, remembered: Remembered): void;
}

/** Whether a state is one that the library is known to have gone through. */
export function wentThrough({ meta, inFile, log }: Loaded, { sequence, chain }: Position): boolean {
  const known = [meta, inFile, ...(log ? [log.header, ...log.records] : [])];
  return known.some((state) => state.sequence === sequence && state.chain === chain);
}

/** What is to be told when the library does not go on from how it was left here. */
export function differsFromMemory(loaded: Loaded, remembered: Remembered | undefined): Problem | undefined {
  const { meta, inFile, log } = loaded;
  if (remembered?.id !== meta.id) return undefined;
  if (remembered.sequence > meta.sequence) return olderThanHere(remembered.sequence, meta.sequence);
  const reachesBack = Math.min(inFile.sequence, log?.header.sequence ?? inFile.sequence);
  if (remembered.sequence < reachesBack) return changedElsewhere(remembered.sequence, meta.sequence);
  return wentThrough(loaded, remembered) ? undefined : anotherThanHere(remembered.sequence);
}
