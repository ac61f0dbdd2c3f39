/** So many files of a drop are taken, so many things in its folders looked at, and so deep. */
export const MOST_DROPPED = 200;
export const MOST_LOOKED_AT = 5_000;
export const DEEPEST = 6;

/** What came of a drop: files in the order of their names, and what was left, in a sentence; empty where nothing was. */
export interface Dropped {
  files: File[];
  left: string;
}

const ending = (name: string): string => /\.[^.]+$/.exec(name)?.[0]?.toLowerCase() ?? '';

/** Whether a file is of a kind that a field asks for, as its `accept` says it; nothing said asks for any. */
export function isAccepted({ name, type }: Pick<File, 'name' | 'type'>, accept: string): boolean {
  const kinds = accept.split(',').map((one) => one.trim().toLowerCase());
  return kinds.some((kind) => {
    if (kind === '') return kinds.length === 1;
    if (kind.startsWith('.')) return ending(name) === kind;
    return kind.endsWith('/*') ? type.startsWith(kind.slice(0, -1)) : type === kind;
  });
}

interface Walk {
  accept: string;
  files: { path: string; file: File }[];
  lookedAt: number;
  /** How many were left: of another kind, beyond what is taken, unreadable; and folders that were too deep. */
  others: string[];
  beyond: number;
  unreadable: string[];
  tooDeep: string[];
  /** Whether looking ended before all was seen. */
  ended: boolean;
}

const fileOf = (entry: FileSystemFileEntry): Promise<File> =>
  new Promise((done, fail) => entry.file(done, fail));

/** What a folder holds. A reader gives some at a time, and nothing more at its end. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0 || all.length > MOST_LOOKED_AT) return all;
    all.push(...some);
  }
}

async function look(walk: Walk, entry: FileSystemEntry, depth: number): Promise<void> {
  // What an operating system hides from its user is none of the files that were meant.
  if (entry.name.startsWith('.') && depth > 0) return;
  if (walk.lookedAt >= MOST_LOOKED_AT) {
    walk.ended = true;
    return;
  }
  walk.lookedAt += 1;
  try {
    if (entry.isDirectory) {
      if (depth >= DEEPEST) walk.tooDeep.push(entry.name);
      else
        for (const one of await entriesOf(entry as FileSystemDirectoryEntry))
          await look(walk, one, depth + 1);
      return;
    }
    const file = await fileOf(entry as FileSystemFileEntry);
    // A file that was dropped by itself was meant: whoever reads it says what is wrong with it.
    if (depth > 0 && !isAccepted(file, walk.accept)) walk.others.push(file.name);
    else walk.files.push({ path: entry.fullPath, file });
  } catch {
    walk.unreadable.push(entry.name);
  }
}

const NAMED = 3;
const counted = (names: readonly string[], one: string, several: string): string => {
  if (names.length === 0) return '';
  const more = names.length > NAMED ? ` and ${names.length - NAMED} more` : '';
  const told = names
    .slice(0, NAMED)
    .map((name) => `“${name}”`)
    .join(', ');
  return `${names.length === 1 ? one : several}: ${told}${more}.`;
};

function leftWords({ others, beyond, unreadable, tooDeep, ended }: Walk): string {
  return [
    counted(others, 'One file of another kind was left', `${others.length} files of other kinds were left`),
    counted(unreadable, 'One could not be read', `${unreadable.length} could not be read`),
    counted(
      tooDeep,
      'A folder was not looked into, being too deep',
      'Folders were not looked into, being too deep',
    ),
    beyond === 0 ? '' : `${beyond} more than the ${MOST_DROPPED} that are taken at once were left.`,
    ended
      ? `Looking ended after ${MOST_LOOKED_AT.toLocaleString('en')} files and folders: drop a smaller folder.`
      : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/**
 * The files of a drop, those of its folders and of folders within them too; never throws.
 * @param entries what was dropped, as the browser gives it while the drop is told, and at no time after
 * @param accept the kinds of file that are asked for: those of others that lie in a folder are left, and named
 */
export async function filesOf(entries: readonly FileSystemEntry[], accept: string): Promise<Dropped> {
  const walk: Walk = {
    ...{ accept, files: [], lookedAt: 0, others: [], beyond: 0, unreadable: [], tooDeep: [], ended: false },
  };
  for (const entry of entries) await look(walk, entry, 0);
  walk.files.sort((a, b) => a.path.localeCompare(b.path, undefined, { numeric: true }));
  walk.beyond = Math.max(0, walk.files.length - MOST_DROPPED);
  const files = walk.files.slice(0, MOST_DROPPED).map(({ file }) => file);
  const left = leftWords(walk);
  return { files, left: files.length > 0 || left !== '' ? left : 'The folder holds no file.' };
}

/** What was dropped as files and folders; null where no folder is among it, so that it is as any choice of files. */
export function droppedFolders(items: DataTransferItemList | undefined): FileSystemEntry[] | null {
  const entries = [...(items ?? [])].flatMap((item) => item.webkitGetAsEntry() ?? []);
  return entries.some(({ isDirectory }) => isDirectory) ? entries : null;
}
