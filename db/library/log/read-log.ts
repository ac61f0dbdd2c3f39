import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { isMissing, type FileSystem } from '../file/file-system';
import { LOG_FILE } from '../folding/rewrite';
import { realLogPath, takenAway } from './log-place';

/** The log's bytes under its name, or where an opener that was stopped left them; undefined when there are none. */
export function readLog(fs: FileSystem, folder: string): Uint8Array | undefined {
  const path = realLogPath(fs, join(folder, LOG_FILE));
  for (const place of [path, ...takenAway(fs, path), path]) {
    try {
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
