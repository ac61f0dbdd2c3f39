import { createLibrary, openLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from '../faulty-file-system';
import { killOptions, textOf } from './edits';

/** Nobody pulls a plug here, so nobody waits for flushes. */
const options = { ...killOptions, fileSystem: new FaultyFileSystem().fs };

interface EditRow {
  n: number;
  text: string;
  half: number;
}

export interface Verdict {
  /** The last edit that the library holds, and how many it should: all up to it. */
  last: number;
  /** What is wrong with it; empty when nothing is. */
  wrong: string[];
  replayed: number;
  tornBytes: number;
}

export async function create(folder: string): Promise<void> {
  await (await createLibrary(folder, options)).close();
}

/** Opens a library whose writer was killed, compares every row with what it must be, and folds the log in. */
export async function verify(folder: string): Promise<Verdict> {
  const library = await openLibrary(folder, options);
  try {
    const wrong: string[] = [];
    const { readOnly, opening } = library.status();
    if (readOnly) wrong.push('the dead process still holds the lock');
    const rows = library.all<EditRow>('SELECT n, text, half FROM edit ORDER BY n');
    const tally = library.get<{ last: number; total: number }>('SELECT last, total FROM tally');
    let total = 0;
    rows.forEach((row, index) => {
      total += (index + 1) / 2;
      if (row.n !== index + 1) wrong.push(`edit ${index + 1} is missing`);
      else if (row.text !== textOf(row.n) || row.half !== row.n / 2)
        wrong.push(`edit ${row.n} is not as it was made`);
    });
    if (tally?.last !== rows.length || tally.total !== total)
      wrong.push('the tally and the edits do not agree');
    await library.rewrite();
    if (library.status().rewriteProblem) wrong.push(`rewriting: ${library.status().rewriteProblem?.message}`);
    return { last: rows.length, wrong: wrong.slice(0, 5), ...opening };
  } finally {
    await library.close();
  }
}
