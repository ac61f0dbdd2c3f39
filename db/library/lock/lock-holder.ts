import { hostname } from 'node:os';
import { Problem } from '@core/problems/problem';
import { isMissing, type FileSystem } from '../file/file-system';

/** Who has a library open for writing, as the lock file says. */
export interface LockHolder {
  instance: string;
  host: string;
  pid: number;
  version: string;
  /** ISO 8601 UTC. */
  since: string;
  refreshed: string;
  /** The last change that it acknowledged, as far as it got to say so, and the check of that change. */
  acknowledged: number;
  chain: string;
}

/** How wide the number of the last change is written, so that a later one takes the same room. */
const WIDTH = 15;
/** Of a holder that said no check, which is as long as one. */
export const NO_CHAIN = '0'.repeat(32);
/** After which time without a sign a holder on another computer is told to be so, for a maker to judge. */
const SILENT_MS = 120_000;

export function encodeHolder(holder: LockHolder): Uint8Array {
  const acknowledged = String(holder.acknowledged).padStart(WIDTH, '0');
  return Buffer.from(`${JSON.stringify({ ...holder, acknowledged })}\n`);
}

/** The holder, or undefined where there is no lock or one that cannot be read, which holds nobody off. */
export function readHolder(fs: FileSystem, path: string): LockHolder | undefined {
  try {
    const holder = JSON.parse(
      Buffer.from(fs.readFileSync(path)).toString('utf8'),
    ) as Partial<LockHolder> | null;
    const {
      instance,
      host,
      pid,
      version,
      since,
      refreshed,
      acknowledged = 0,
      chain = NO_CHAIN,
    } = holder ?? {};
    if (!instance || !host || !pid || !version || !since || !refreshed) return undefined;
    if (Number.isNaN(Date.parse(refreshed)) || !(Number(acknowledged) >= 0)) return undefined;
    return { instance, host, pid, version, since, refreshed, acknowledged: Number(acknowledged), chain };
  } catch (error) {
    if (error instanceof SyntaxError || isMissing(error)) return undefined;
    throw error;
  }
}

export function unknownHolder(now: Date): LockHolder {
  const at = now.toISOString();
  return {
    instance: 'unknown',
    host: 'another computer',
    pid: 0,
    version: 'unknown',
    since: at,
    refreshed: at,
    acknowledged: 0,
    chain: NO_CHAIN,
  };
}

function whereOf(holder: LockHolder): string {
  return holder.host === hostname() ? 'in another window on this computer' : `on ${holder.host}`;
}

/** Says who has the library open. Since when is a fact: a screen writes it as its reader does. */
export function lockedProblem(holder: LockHolder, now: Date): Problem {
  const silent = holder.host !== hostname() && now.getTime() - Date.parse(holder.refreshed) > SILENT_MS;
  return new Problem({
    code: 'library-locked',
    title: `This library is open ${whereOf(holder)}.`,
    advice:
      `You can read it here. ${silent ? 'There was no sign of life from there for a while: it may have stopped without closing. ' : ''}` +
      'Close it there to work on it here. Taking it over cuts that window off: what is typed there and not saved ' +
      'yet is lost.',
    facts: { holder },
  });
}

/** Says to who had it that it was taken over. */
export function takenOverProblem(holder: LockHolder): Problem {
  return new Problem({
    code: 'library-locked',
    title: `This library was taken over ${whereOf(holder)}.`,
    advice:
      'Nothing can be saved here any more. What was shown here as saved is kept there. To keep what you see here as ' +
      'well, save it as a copy on the library’s page.',
    facts: { holder, takenOver: true },
  });
}
