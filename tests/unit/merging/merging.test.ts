import { blankContent } from '@core/record/field';
import type { Formula } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Relation } from '@core/merging/ancestry';
import { toldApart } from '@core/merging/apart';
import type { Choice, FieldSides } from '@core/merging/choice';
import { insertVersion, listVersions, readVersion } from '@db/formulas/versions';
import type { Engine } from '@db/library/sql/engine';
import { describe, expect, it } from 'vitest';
import {
  add,
  copyOf,
  demo,
  documentOf,
  edit,
  emptyLibrary,
  formulaOf,
  libraryFrom,
  meet,
  mergeInto,
  newId,
  read,
  statesOf,
  wax,
} from './two-libraries';

const relations = (ours: Engine, theirs: Engine): Record<string, Relation> =>
  Object.fromEntries(meet(ours, documentOf(theirs)).entries.map(({ title, relation }) => [title, relation]));

describe('two libraries that went on from one', () => {
  it('knows by the states what is new, newer on either side, or changed on both', async () => {
    const ours = await emptyLibrary();
    const ids = ['A', 'B', 'C', 'D'].map((name) => add(ours, 'material', wax(name)));
    const theirs = await copyOf(ours);
    edit(theirs, 'material', ids[1]!, { notes: 'theirs' });
    edit(ours, 'material', ids[2]!, { notes: 'ours' });
    edit(ours, 'material', ids[3]!, { notes: 'ours' });
    edit(theirs, 'material', ids[3]!, { notes: 'theirs' });
    add(theirs, 'material', wax('E'));
    add(ours, 'material', wax('F'));
    expect(relations(ours, theirs)).toEqual({
      A: 'same',
      B: 'theirs newer',
      C: 'ours newer',
      D: 'both changed',
      E: 'new',
      F: 'only here',
    });
  });

  it('puts both sides’ changes together by field, and asks only of what both changed', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'material', wax('Larkspur Wax'));
    const theirs = await copyOf(ours);
    edit(ours, 'material', id, { notes: 'ours', appearance: 'white', code: 'R-1' });
    edit(theirs, 'material', id, { notes: 'theirs', countryOfOrigin: 'Ireland', code: 'R-1' });
    const fields = meet(ours, documentOf(theirs)).fields(`material ${id}`, 'en-GB')!;
    expect(fields.filter(({ clash }) => clash).map(({ label }) => label)).toEqual(['Notes']);
    expect(fields.map(({ label }) => label)).toEqual(['Appearance', 'Country of origin', 'Notes']);

    const other = await copyOf(ours);
    mergeInto(ours, documentOf(theirs));
    expect(read<Material>(ours, 'material', id)).toMatchObject({
      ...{ notes: 'ours', appearance: 'white', countryOfOrigin: 'Ireland', code: 'R-1' },
    });
    mergeInto(other, documentOf(theirs), { rules: { 'both changed': 'both, theirs first' } });
    expect(read<Material>(other, 'material', id)).toMatchObject({ notes: 'theirs', appearance: 'white' });
  });

  it('keeps of each field that both changed the side that was chosen for it, and of others that of its record', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'material', wax('Larkspur Wax'));
    const theirs = await copyOf(ours);
    edit(ours, 'material', id, { notes: 'ours', appearance: 'white', handling: 'cool', code: 'R-1' });
    edit(theirs, 'material', id, {
      notes: 'theirs',
      appearance: 'ivory',
      handling: 'dry',
      countryOfOrigin: 'Ireland',
    });
    const both = `material ${id}`;
    const merged = async (choice: Choice, fields: FieldSides): Promise<Material> => {
      const other = await copyOf(ours);
      mergeInto(other, documentOf(theirs), { records: { [both]: choice }, fields: { [both]: fields } });
      return read<Material>(other, 'material', id);
    };
    // What one side alone changed is never asked about, whatever is said of it.
    expect(
      await merged('both, ours first', { appearance: 'theirs', countryOfOrigin: 'ours', code: 'theirs' }),
    ).toMatchObject({
      ...{ notes: 'ours', appearance: 'ivory', handling: 'cool', code: 'R-1', countryOfOrigin: 'Ireland' },
    });
    expect(await merged('both, theirs first', { notes: 'ours', nothing: 'ours' })).toMatchObject({
      ...{ notes: 'ours', appearance: 'ivory', handling: 'dry', code: 'R-1', countryOfOrigin: 'Ireland' },
    });
    // A record that is left, or taken whole, has no fields to choose.
    expect(await merged('leave', { notes: 'theirs' })).toMatchObject({ notes: 'ours', countryOfOrigin: '' });
    expect(await merged('theirs', { notes: 'ours' })).toMatchObject({ notes: 'theirs', appearance: 'ivory' });
  });

  it('merged once more, changes nothing; and then the other takes ours without a question', async () => {
    const ours = await demo();
    const theirs = await copyOf(ours);
    const [one, two] = documentOf(ours).records.filter(({ kind }) => kind === 'material');
    edit(ours, 'material', one!.id, { notes: 'ours', appearance: 'white' });
    edit(theirs, 'material', one!.id, { notes: 'theirs' });
    edit(theirs, 'material', two!.id, { notes: 'theirs' });
    const added = add(theirs, 'formula', formulaOf('Balm', 'F-900', [one!.id, two!.id]));
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added: 1, changed: 1 });
    expect(read<Formula>(ours, 'formula', added).name).toBe('Balm');
    const once = documentOf(ours);
    expect(mergeInto(ours, documentOf(theirs))).toEqual({
      ...{ added: 0, changed: 0, apart: [], entered: 0, versions: 0, batches: 0, decisions: 0 },
    });
    expect(documentOf(ours)).toEqual(once);
    mergeInto(theirs, once);
    expect(statesOf(theirs)).toEqual(statesOf(ours));
  });

  it('takes over what the other brought back to how it was, and is not brought back by the other’s older state', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'material', wax('Larkspur Wax'));
    const theirs = await copyOf(ours);
    const noteOf = (engine: Engine): string => read<Material>(engine, 'material', id).notes;
    edit(theirs, 'material', id, { notes: 'a slip' });
    mergeInto(ours, documentOf(theirs));
    expect(noteOf(ours)).toBe('a slip');
    // Each has been where the other is now: only the order tells that it was taken out again.
    edit(ours, 'material', id, { notes: '' });
    expect(relations(theirs, ours)).toEqual({ 'Larkspur Wax': 'theirs newer' });
    expect(relations(ours, theirs)).toEqual({ 'Larkspur Wax': 'ours newer' });
    mergeInto(theirs, documentOf(ours));
    expect(noteOf(theirs)).toBe('');
    edit(theirs, 'material', id, { notes: 'a slip' });
    expect(relations(ours, theirs)).toEqual({ 'Larkspur Wax': 'theirs newer' });
  });

  it('loses no state that either has been in', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'material', wax('Larkspur Wax'));
    const theirs = await copyOf(ours);
    for (const notes of ['1', '2']) edit(ours, 'material', id, { notes: `ours ${notes}` });
    for (const notes of ['1', '2']) edit(theirs, 'material', id, { notes: `theirs ${notes}` });
    mergeInto(ours, documentOf(theirs));
    const notes = documentOf(ours)
      .history.find(({ record }) => record === id)!
      .entries.map(({ state }) => documentOf(ours).states.find(({ hash }) => hash === state)!.content.notes);
    // What is now is not in the history.
    expect(read<Material>(ours, 'material', id).notes).toBe('ours 2');
    for (const said of ['ours 1', 'theirs 1', 'theirs 2']) expect(notes).toContain(said);
  });

  it('takes one away on one side as no reason to lose it on the other', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'material', wax('Larkspur Wax'));
    const theirs = await copyOf(ours);
    theirs.run('DELETE FROM material WHERE id = ?', id);
    mergeInto(ours, documentOf(theirs));
    expect(read<Material>(ours, 'material', id).tradeName).toBe('Larkspur Wax');
    expect(relations(theirs, ours)).toEqual({ 'Larkspur Wax': 'new' });
  });
});

describe('what depends on each other', () => {
  it('takes a material that a formula needs, although it was to be left', async () => {
    const [ours, theirs] = [await emptyLibrary(), await emptyLibrary()];
    const material = add(theirs, 'material', wax('Larkspur Wax'));
    const formula = add(theirs, 'formula', formulaOf('Balm', '', [material]));
    const records = { [`material ${material}`]: 'leave' as const };
    const plan = meet(ours, documentOf(theirs)).plan({ rules: {}, records, fields: {} });
    expect(plan.get(`material ${material}`)).toMatchObject({ choice: 'theirs', follows: 'Balm' });
    mergeInto(ours, documentOf(theirs), { records });
    expect(read<Formula>(ours, 'formula', formula).phases[0]!.lines[0]!.materialId).toBe(material);
  });

  it('refuses blends that would come to hold each other, in words, and what needs them', async () => {
    const ours = await emptyLibrary();
    const one = add(ours, 'material', wax('Blend One'));
    const two = add(ours, 'material', wax('Blend Two'));
    const theirs = await copyOf(ours);
    const holding = (inci: string) => ({ composition: [{ inci, lowPpm: 1_000_000, highPpm: 1_000_000 }] });
    edit(ours, 'material', one, holding('Blend Two'));
    edit(theirs, 'material', two, holding('Blend One'));
    const plan = meet(ours, documentOf(theirs)).plan({ rules: {}, records: {}, fields: {} });
    expect(plan.get(`material ${two}`)?.refused).toBe(
      'It would come to hold itself: Blend Two → Blend One → Blend Two. Change the composition on one side first.',
    );
    mergeInto(ours, documentOf(theirs));
    expect(read<Material>(ours, 'material', two).composition[0]!.inci).toBe('Cetyl Alcohol');
  });
});

describe('numbers that both drew', () => {
  it('tells the code of a formula and the number of a version apart by the other’s name', async () => {
    const ours = await demo();
    const theirs = await copyOf(ours);
    const [material] = documentOf(ours).records.filter(({ kind }) => kind === 'material');
    add(ours, 'formula', formulaOf('Ours', 'F-050', [material!.id]));
    const id = add(theirs, 'formula', formulaOf('Theirs', 'F-050', [material!.id]));
    const [version] = documentOf(ours).versions;
    const frozen = readVersion(ours, version!.id)!;
    const next = listVersions(ours, version!.formulaId)[0]!.number + 1;
    insertVersion(ours, { ...frozen, id: newId(), number: next, reason: 'ours' });
    insertVersion(theirs, { ...frozen, id: newId(), number: next, reason: 'theirs' });
    const { apart } = mergeInto(ours, documentOf(theirs));
    expect(read<Formula>(ours, 'formula', id).code).toBe('F-050 (North Bench)');
    expect(apart).toEqual([
      { was: 'F-050', is: 'F-050 (North Bench)' },
      { was: `version ${next} in North Bench`, is: `version ${next + 1}` },
    ]);
    expect(listVersions(ours, version!.formulaId).slice(0, 2)).toMatchObject([
      { number: next + 1, reason: `theirs (version ${next} in North Bench)` },
      { number: next, reason: 'ours' },
    ]);
    // Nothing is told apart a second time.
    expect(mergeInto(ours, documentOf(theirs)).apart).toEqual([]);
  });

  it('finds a number within its room that nothing bears', () => {
    expect(toldApart('B-0031', 'North Bench', () => false, 40)).toBe('B-0031 (North Bench)');
    expect(toldApart('B-0031', 'North Bench', (one) => one === 'B-0031 (North Bench)', 40)).toBe(
      'B-0031 (North Bench 2)',
    );
    const long = toldApart('F'.repeat(40), 'North Bench', () => false, 40);
    expect(long.length).toBeLessThanOrEqual(40);
  });
});

describe('what two libraries were begun with', () => {
  it('is one thing where it goes by one name, though each made its own', async () => {
    const [ours, theirs] = [await emptyLibrary(), await emptyLibrary()];
    const cetyl = { ...blankContent(SUBSTANCE_FIELDS), name: 'Cetyl Alcohol' };
    add(ours, 'substance', cetyl);
    add(theirs, 'substance', { ...cetyl, cas: '36653-82-4' });
    expect(relations(ours, theirs)).toEqual({ 'Cetyl Alcohol': 'both changed' });
    mergeInto(ours, documentOf(theirs));
    expect(documentOf(ours).records.map(({ content }) => content.cas)).toEqual(['36653-82-4']);
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added: 0, changed: 0 });
  });
});

describe('a library as a document', () => {
  it('makes the same library again, by its states', async () => {
    const first = await demo();
    const [material] = documentOf(first).records.filter(({ kind }) => kind === 'material');
    edit(first, 'material', material!.id, { notes: 'later' });
    const document = documentOf(first);
    const second = await libraryFrom(JSON.parse(JSON.stringify(document)));
    const { id: _id, ...library } = documentOf(second).library;
    expect({ ...documentOf(second), library }).toEqual({ ...document, library });
  });
});
