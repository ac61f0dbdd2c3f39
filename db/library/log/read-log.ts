import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { isMissing, type FileSystem } from '../file/file-system';
import { LOG_FILE } from '../folding/rewrite';
import { LONGEST_READ, logTooLong } from './log-limits';
import { realLogPath, takenAway } from './log-place';

/**
 * The log's bytes under its name, or where an opener that was stopped left them; undefined when there are none.
 * Throws Problem.
 */
export function readLog(fs: FileSystem, folder: string): Uint8Array | undefined {
  const path = realLogPath(fs, join(folder, LOG_FILE));
  for (const place of [path, ...takenAway(fs, path), path]) {
    try {
      if (fs.statSync(place).size > LONGEST_READ) throw logTooLong();
      return fs.readFileSync(place);
    } catch (error) {
      if (!isMissing(error)) throw error;
    }
  }
  if (fs.readdirSync(folder).includes(LOG_FILE)) throw danglingLog();
  return undefined;
}

function danglingLog(): Problem {
  return new Problem({
    code: 'library-missing',
    title: 'The change log of this library is a link to a file that is not there.',
    advice:
      'Connect the disk that it points to, or put library.log itself into the folder, then open the library again. ' +
      'Nothing was changed.',
    facts: { file: 'library.log' },
  });
}
