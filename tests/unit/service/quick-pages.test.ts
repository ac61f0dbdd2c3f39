import { listQuery } from '@core/lists/query';
import { blankMaterial } from '@core/materials/material';
import { insertBatch } from '@db/batches/batches';
import { materials as shelf, readMaterial } from '@db/materials/materials';
import { LibraryLists } from '@service/lists/library-lists';
import { NOUN_LISTS, NOUNS, type Noun } from '@service/lists/nouns';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

type Served = Awaited<ReturnType<typeof serviceWith>>;
const libraryOf = ({ session }: Served) => session.current().library;
const AT = '2026-03-01T10:00:00.000Z';

/** A filled library with names that differ in case, accents, digits and nothing, of which some are put aside. */
async function filled(): Promise<Served> {
  const served = await serviceWith('demonstration');
  libraryOf(served).transaction((tx) => {
    const names = ['éclat 40', 'Eclat 7', 'eclat-40', 'ECLAT', '*', '(?)', 'Ölwax', 'Olwax'];
    names.forEach((name, at) =>
      shelf.insert(tx, {
        ...blankMaterial(name, 'AQUA'),
        ...{ id: `0190aaaa-0000-7000-8000-00000000000${at}`, revision: 1, createdAt: AT, updatedAt: AT },
        status: at % 3 === 2 ? 'archived' : 'in use',
      }),
    );
  });
  const formulas = await served.ask<{ rows: { id: string; code: string }[] }>('GET', '/formulas');
  const [first, second] = formulas.body.rows;
  libraryOf(served).transaction((tx) => tx.run('UPDATE formula SET archived = 1 WHERE id = ?', second!.id));
  const record = await served.ask<{ id: string }>('POST', `/formulas/${first!.id}/versions`, {
    recordedBy: 'A. Maker',
    reason: 'As tried',
    revision: 1,
  });
  if (record.status === 201)
    libraryOf(served).transaction((tx) => {
      for (const number of [1, 2, 3])
        insertBatch(tx, {
          id: `0190bbbb-0000-7000-8000-00000000000${number}`,
          number: `B-10${number}`,
          versionId: record.body.id,
          createdAt: `2026-0${4 - number}-01T10:00:00.000Z`,
          ...{
            size: { by: 'mass', massMg: 1_000_000 },
            overagePpm: 0,
            readabilityMg: 10,
            totalMg: 1_000_000,
          },
          ...{ note: '', lines: [] },
        });
    });
  return served;
}

it('a first page that does not wait shows what the filled list shows, in every order', async () => {
  const library = libraryOf(await filled());
  const slow = new LibraryLists(library);
  for (const noun of NOUNS) {
    const { description } = NOUN_LISTS[noun];
    let quickOnes = 0;
    for (const { key } of description.sorts)
      for (const descending of [false, true])
        for (const [offset, limit] of [
          [0, 50],
          [3, 2],
          [0, 0],
        ] as const) {
          const query = listQuery(description, { sortBy: key, descending, offset, limit });
          // Anew each time: nothing of it is filled.
          const { counts, ...quick } = await new LibraryLists(library).quickPage(noun as 'materials', query);
          const { counts: known, ...page } = await slow.page(noun as 'materials', query);
          expect(quick, `${noun} by ${key}`).toEqual(page);
          if (counts === null) quickOnes += 1;
          else expect(counts).toEqual(known);
        }
    expect(quickOnes, noun).toBeGreaterThan(5);
  }
});

it('waits for the list where a text, a filter or a range is asked for', async () => {
  const library = libraryOf(await filled());
  const { description } = NOUN_LISTS.materials;
  for (const part of [
    { text: 'eclat' },
    { chosen: { status: ['archived'] } },
    { spans: { hlb: { from: 8, to: null } } },
  ]) {
    const query = listQuery(description, part);
    const quick = await new LibraryLists(library).quickPage('materials', query);
    expect(quick).toEqual(await new LibraryLists(library).page('materials', query));
    expect(quick.counts).not.toBeNull();
  }
});

it('has what changed while a list was being filled, in that list and in those that tell of it', async () => {
  const served = await filled();
  const library = libraryOf(served);
  const lists = new LibraryLists(library);
  const plain = (noun: Noun, text: string) =>
    lists.page(noun as 'materials', listQuery(NOUN_LISTS[noun].description, { text }));
  const { rows } = await plain('formulas', '');
  const formula = rows[0] as unknown as { id: string };
  const { materialId } = library.get<{ materialId: string }>(
    'SELECT material_id AS materialId FROM formula_line WHERE formula_id = ? LIMIT 1',
    formula.id,
  )!;

  const fresh = new LibraryLists(library);
  const filling = fresh.page('formulas', listQuery(NOUN_LISTS.formulas.description, { text: 'quillowbark' }));
  const before = readMaterial(library, materialId)!;
  library.transaction((tx) => shelf.update(tx, before, { ...before, tradeName: 'Quillowbark' }));
  fresh.changed('materials', materialId);
  expect((await filling).rows.map(({ id }) => id)).toContain(formula.id);
  const found = await fresh.find('quillowbark', ['materials', 'formulas'], 10);
  expect(found[0]).toMatchObject({ kind: 'materials', row: { id: materialId } });
  fresh.stop();
  await expect(new LibraryLists(library).find('x', ['materials'], 1)).resolves.toBeDefined();
});

it('ends what waits for a list when the library is closed meanwhile', async () => {
  const lists = new LibraryLists(libraryOf(await filled()));
  const waiting = lists.find('wax', ['formulas'], 5);
  lists.stop();
  await expect(waiting).rejects.toMatchObject({ code: 'no-library' });
});
