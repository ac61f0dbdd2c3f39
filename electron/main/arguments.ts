import { resolve } from 'node:path';
import type { AskedAtStart } from '@service/open-at-start';

/**
 * Reads our own flags out of a command line that Electron, Chromium and the system add theirs to; unknown ones are
 * theirs.
 */
export function windowArguments(args: string[], folder: string): AskedAtStart {
  const at = args.indexOf('--library');
  const joined = args.find((argument) => argument.startsWith('--library='));
  const given = joined?.slice('--library='.length) ?? (at < 0 ? undefined : args[at + 1]);
  return {
    library: given === undefined || given === '' ? undefined : resolve(folder, given),
    demo: args.includes('--demo'),
  };
}
