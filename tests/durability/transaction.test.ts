import fc from 'fast-check';
import { readFileSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Writer } from '@db/database';
import { openLibrary } from '@db/library/open-library';
import { SqlError } from '@db/library/sql/sql-error';
import {
  addJar,
  createSample,
  everything,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

describe('a transaction', () => {
  it('returns what its work returns, and counts up by one', async () => {
    const library = await createSample();
    const answer = library.transaction((tx) => {
      tx.run("INSERT INTO jar (id, name) VALUES ('a', 'A')");
      return tx.get<{ name: string }>("SELECT name FROM jar WHERE id = 'a'")?.name;
    });
    expect(answer).toBe('A');
    expect(library.sequence).toBe(1);
    await library.close();
  });

  it('is in the log when it returns', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'jar-in-the-log');
    expect(readFileSync(join(folder, 'library.log'), 'utf8')).toContain('jar-in-the-log');
    await library.close();
  });

  it('leaves no trace when its work throws', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    addJar(library, 'a');
    const before = [everything(library), readFileSync(join(folder, 'library.log'))];
    expect(() =>
      library.transaction((tx) => {
        tx.run("DELETE FROM jar WHERE id = 'a'");
        throw new Error('no');
      }),
    ).toThrow('no');
    expect([everything(library), readFileSync(join(folder, 'library.log'))]).toEqual(before);
    await library.close();
  });

  it('fails when one of its changes failed, even if the work went on', async () => {
    const library = await createSample();
    addJar(library, 'a');
    expect(() =>
      library.transaction((tx) => {
        tx.run("INSERT INTO jar (id, name) VALUES ('b', 'B')");
        try {
          tx.run("INSERT INTO jar (id, name) VALUES ('a', 'again')");
        } catch {
          // A repository that thinks it knows better.
        }
      }),
    ).toThrow(SqlError);
    expect(jarIds(library)).toEqual(['a']);
    await library.close();
  });

  it('without a change leaves the log alone', async () => {
    const library = await createSample();
    const { logBytes } = library.status();
    library.transaction((tx) => tx.all('SELECT * FROM jar'));
    expect(library.status()).toMatchObject({ logBytes, sequence: 0 });
    await library.close();
  });

  it('neither nests, nor waits, nor outlives itself', async () => {
    const library = await createSample();
    expect(() => library.transaction(() => addJar(library, 'a'))).toThrow(/nest/);
    expect(() =>
      library.transaction(async (tx) => tx.run("INSERT INTO jar (id, name) VALUES ('a', 'A')")),
    ).toThrow(/await/);
    let kept: Writer | undefined;
    library.transaction((tx) => (kept = tx));
    expect(() => kept?.run("INSERT INTO jar (id, name) VALUES ('a', 'A')")).toThrow(/ended/);
    expect(jarIds(library)).toEqual([]);
    addJar(library, 'b');
    await library.close();
  });

  it('is refused once the library is closed', async () => {
    const library = await createSample();
    await library.close();
    await problemOf(() => addJar(library, 'a'), 'no-library');
    await problemOf(() => jarIds(library), 'no-library');
    await library.close();
  });

  it('is there after a crash, whatever mixture of changes and rewrites came before', async () => {
    const step = fc.oneof(
      {
        weight: 5,
        arbitrary: fc.record({
          do: fc.constant('put' as const),
          id: fc.string({ maxLength: 3 }),
          grams: fc.double({ noNaN: true, noDefaultInfinity: true }),
        }),
      },
      {
        weight: 2,
        arbitrary: fc.record({ do: fc.constant('drop' as const), id: fc.string({ maxLength: 3 }) }),
      },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('rewrite' as const) }) },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('reopen' as const) }) },
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 12 }), async (steps) => {
        const folder = newFolder();
        let library = await createSample(folder);
        for (const now of steps) {
          if (now.do === 'rewrite') await library.rewrite();
          else if (now.do === 'reopen') {
            await library.close();
            library = await openLibrary(folder, sampleOptions());
          } else if (now.do === 'drop')
            library.transaction((tx) => tx.run('DELETE FROM jar WHERE id = ?', clean(now.id)));
          else
            library.transaction((tx) =>
              tx.run(
                'INSERT OR REPLACE INTO jar (id, name, grams) VALUES (?, ?, ?)',
                clean(now.id),
                'n',
                now.grams,
              ),
            );
        }
        const left = everything(library);
        unlinkSync(join(folder, 'library.lock'));
        expect(await reopened(folder, everything)).toEqual(left);
        expect(await reopened(folder, everything)).toEqual(left);
      }),
      { numRuns: 25 },
    );
  });
});

function clean(id: string): string {
  return id.replaceAll('\0', '');
}
