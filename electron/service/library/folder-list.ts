import { existsSync } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, sep } from 'node:path';
import { Problem } from '@core/problems/problem';
import type { Places } from './places';

/** A folder as a page knows it: never by its path. */
export interface ListedFolder {
  token: string;
  name: string;
  /** Whether it is a library. */
  library: boolean;
}

export interface FolderList {
  here: ListedFolder;
  /** From the home folder down to the one that holds this one; empty at home. */
  above: ListedFolder[];
  /** The folders in it, by name; hidden ones are left out. */
  folders: ListedFolder[];
  /** How many more there are than are listed. */
  more: number;
}

/** More than anybody looks through. */
const MOST_LISTED = 500;
const LIBRARY_FILE = 'library.sqlite';

const isWithin = (path: string, home: string): boolean => path === home || path.startsWith(home + sep);

function notThere(cause?: unknown): Problem {
  return new Problem(
    {
      code: 'not-found',
      title: 'This folder cannot be listed.',
      advice: 'It may have been moved, or is not yours to read. Go back to the home folder.',
    },
    { cause },
  );
}

/** The real folder behind a name within `folder`, where that stays under `home`: a link may lead out of it. */
async function folderWithin(folder: string, name: string, home: string): Promise<string | null> {
  try {
    const path = await realpath(join(folder, name));
    return isWithin(path, home) && (await stat(path)).isDirectory() ? path : null;
  } catch {
    // A link to nowhere, or a folder that went away meanwhile.
    return null;
  }
}

async function foldersIn(folder: string, home: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    throw notThere(error);
  });
  const names = entries
    .filter((entry) => !entry.name.startsWith('.') && (entry.isDirectory() || entry.isSymbolicLink()))
    .map((entry) => entry.name)
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true, sensitivity: 'base' }));
  const paths = await Promise.all(names.map((name) => folderWithin(folder, name, home)));
  // A link to a folder beside it shows that folder, once.
  return [...new Set(paths.filter((path) => path !== null))];
}

/**
 * The folders within one under the home folder, for a page that lets its user choose one.
 * @param token of a folder that was listed before; the home folder where it is left out
 * @throws Problem `not-found` for a token that was never given, or a folder that is not under home or not there
 */
export async function listFolders(places: Places, token?: string): Promise<FolderList> {
  if (places.home === undefined) throw notThere();
  const home = await realpath(places.home).catch((error: unknown) => {
    throw notThere(error);
  });
  const asked = token === undefined ? home : places.folder(token);
  const here = asked && (await realpath(asked).catch(() => undefined));
  if (!here || !isWithin(here, home)) throw notThere();
  const listed = (path: string): ListedFolder => ({
    token: places.offer(path),
    name: path === home ? 'Home' : basename(path),
    library: existsSync(join(path, LIBRARY_FILE)),
  });
  const above: ListedFolder[] = [];
  for (let path = here; path !== home;) {
    path = dirname(path);
    above.unshift(listed(path));
  }
  const folders = await foldersIn(here, home);
  return {
    here: listed(here),
    above,
    folders: folders.slice(0, MOST_LISTED).map(listed),
    more: Math.max(0, folders.length - MOST_LISTED),
  };
}
