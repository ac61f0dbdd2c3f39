import { randomUUID } from 'node:crypto';
import type { Database } from '@db/database';
import type { LibraryOptions } from '@db/library/open-library';

/** A small library whose every row can be told from its number, so that a lost or half change shows. */
export const killOptions: LibraryOptions = {
  now: () => new Date(),
  makeId: () => randomUUID(),
  version: 'kill test',
  migrations: [
    {
      number: 1,
      name: 'edits',
      sql: `
        CREATE TABLE edit (n INTEGER PRIMARY KEY, text TEXT NOT NULL, half REAL NOT NULL) STRICT;
        CREATE TABLE tally (only_row INTEGER PRIMARY KEY, last INTEGER NOT NULL, total REAL NOT NULL) STRICT;
        INSERT INTO tally VALUES (1, 0, 0);`,
    },
  ],
};

/** The text of edit `n`: from a few bytes to some pages. */
export function textOf(n: number): string {
  return `${n}:é🧴`.repeat(1 + ((n * 7919) % 97) * (n % 50 === 0 ? 40 : 1));
}

/** Makes edit `n` and moves the tally along, in one transaction: both or neither. */
export function makeEdit(library: Database, n: number): void {
  library.transaction((tx) => {
    tx.run('INSERT INTO edit (n, text, half) VALUES (?, ?, ?)', n, textOf(n), n / 2);
    tx.run('UPDATE tally SET last = ?, total = total + ?', n, n / 2);
  });
}
