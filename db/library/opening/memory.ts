import type { Problem } from '@core/problems/problem';
import { NO_CHAIN, type LockHolder } from '../lock/lock-holder';
import type { Position } from '../log/log-format';
import type { Loaded } from './loading';
import type { Remembered } from './remembered';
import { anotherThanHere, changedElsewhere, olderThanHere } from './opening-problems';

/** Whether a state is one that the library is known to have gone through. */
export function wentThrough({ meta, inFile, log }: Loaded, { sequence, chain }: Position): boolean {
  const known = [meta, inFile, ...(log ? [log.header, ...log.records] : [])];
  return known.some((state) => state.sequence === sequence && state.chain === chain);
}

/** What is to be told when the library does not go on from how it was left here. */
export function differsFromMemory(loaded: Loaded, remembered: Remembered | undefined): Problem | undefined {
  const { meta } = loaded;
  if (remembered?.id !== meta.id) return undefined;
  if (remembered.sequence > meta.sequence) return olderThanHere(remembered.sequence, meta.sequence);
  if (remembered.sequence < startOf(loaded)) return changedElsewhere(remembered.sequence, meta.sequence);
  return wentThrough(loaded, remembered) ? undefined : anotherThanHere(remembered.sequence);
}

/** The same by the lock that a stopped opener left. That changes are missing altogether is told elsewhere. */
export function differsFromLock(loaded: Loaded, left: LockHolder | undefined): Problem | undefined {
  if (!left || left.chain === NO_CHAIN) return undefined;
  const { acknowledged: sequence, chain } = left;
  const isKnown = sequence >= startOf(loaded) && sequence <= loaded.meta.sequence;
  return isKnown && !wentThrough(loaded, { sequence, chain }) ? anotherThanHere(sequence) : undefined;
}

/** From which change on file and log tell what the library went through. */
function startOf({ inFile, log }: Loaded): number {
  return Math.min(inFile.sequence, log?.header.sequence ?? inFile.sequence);
}
