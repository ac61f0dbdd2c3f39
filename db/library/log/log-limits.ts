import { Problem } from '@core/problems/problem';

const MB = 1024 * 1024;

/** The longest record that is written, in bytes: as one text it has to be far from the longest that there can be. */
export const LONGEST_RECORD = 128 * MB;
/**
 * From this length on, in bytes, a log takes no more changes. A log is folded long before, unless the library file could
 * not be written all the while: more of it would take more memory to read again than a computer may have.
 */
export const LONGEST_LOG = 512 * MB;
/** The longest log that is read, in bytes: what can be had as one piece of memory. None so long was written by us. */
export const LONGEST_READ = 2048 * MB - 1;

export function recordTooLong(): Problem {
  return new Problem({
    code: 'too-large',
    title: 'This change is too large to be saved at once.',
    advice: 'Make it in several steps. Nothing was changed.',
  });
}

/** Whoever reads the advice finds the reason beside it: `rewriteProblem`. */
export function logFull(): Problem {
  return new Problem({
    code: 'disk-error',
    title: 'Stillroom could not save the change: the change log of this library is full.',
    advice:
      'The library file could not be written for a long time: the library’s page says why. Put that right, or save a ' +
      'copy elsewhere; then go on. Everything saved before is safe.',
    facts: { file: 'library.log' },
  });
}

export function logTooLong(): Problem {
  return new Problem({
    code: 'disk-error',
    title: 'The change log of this library, library.log, is longer than can be read: 2 GB and more.',
    advice:
      'Stillroom never writes one so long; another program may have. Nothing was changed. Keep library.log somewhere ' +
      'else and open the library again: it then opens as its file was last written, and its backups are offered.',
    facts: { file: 'library.log' },
  });
}
