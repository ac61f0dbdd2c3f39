import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';

/** A folder by where it really is, so that one reached by a link is known as the same; as given where there is none. */
export function realFolder(folder: string): string {
  const path = resolve(folder);
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
