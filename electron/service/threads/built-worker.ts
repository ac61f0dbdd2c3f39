import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/**
 * A built worker in a folder, or undefined where it is not built: running from the sources (`npm run dev`), its work
 * is then done in the process itself. A test holds the build to having them all.
 */
export function builtWorker(
  folder: string | undefined,
  name: 'rewrite' | 'emulsions' | 'sheets' | 'reading' | 'exports' | 'meeting' | 'imports',
): URL | undefined {
  if (folder === undefined) return undefined;
  const path = join(folder, `${name}-worker.js`);
  return existsSync(path) ? pathToFileURL(path) : undefined;
}
