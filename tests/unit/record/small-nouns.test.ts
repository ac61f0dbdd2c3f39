import { blankMaterial } from '@core/materials/material';
import { settings, type Settings } from '@core/settings/settings';
import { SETTINGS } from '@core/settings/noun';
import type { Engine } from '@db/library/sql/engine';
import { materialRecords } from '@db/materials/materials';
import { keepBefore, presentDoing, readEntry, readHistory, type Doing } from '@db/record/history';
import { countAll, readGlances } from '@db/record/glance';
import { readSome, RECORD_KINDS } from '@db/repositories';
import { listSearches, searchRecords } from '@db/searches/searches';
import { changeSettings, readSettings, writeSettings } from '@db/settings/settings';
import { among } from '@db/some-ids';
import {
  readSeries,
  readSeriesEntries,
  seriesRecords,
  SERIES_TABLE,
  type SeriesRecord,
} from '@db/trials/trials';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { add, AT, edit, emptyLibrary, newId } from '../merging/two-libraries';

/* Settings, saved searches and trial series, which a library keeps by hand rather than by a table of fields. */

let engine: Engine;
beforeEach(async () => {
  engine = await emptyLibrary();
});
const at = (minutes: number): string => new Date(Date.parse(AT) + minutes * 60_000).toISOString();
const doing = (minute: number, by = 'Ada'): Doing => ({ by, at: at(minute), why: '', library: 'one' });

describe('the settings of a library', () => {
  const some: fc.Arbitrary<Settings> = fc
    .record({
      makerName: fc.constantFrom('', 'Mill & Sons', '“水”', "O'Leary"),
      makerAddress: fc.constantFrom('', 'Lane 1\nTown'),
      languageRegion: fc.constantFrom('de-DE', 'en-US', 'sv-SE'),
      currency: fc.constantFrom('EUR', 'CHF'),
      readabilityMg: fc.integer({ min: 1, max: 1_000_000 }),
      formulaPrefix: fc.constantFrom('', 'F-', 'LOT ', '😀'),
      checksOff: fc.subarray(['ph', 'preservation']),
      checkThresholds: fc.dictionary(fc.constantFrom('salt', 'alcohol', 'toString'), fc.nat(1_000_000)),
      tableWords: fc.dictionary(
        fc.constantFrom('form', 'function'),
        fc.dictionary(fc.constantFrom('Perlen', '"'), fc.constantFrom('pellets', '')),
      ),
    })
    .map((part) => settings.parse(part));

  it('are the defaults of a new one, and from then on what was last set', () => {
    expect(readSettings(engine)).toEqual(settings.parse({}));
    fc.assert(
      fc.property(fc.array(some, { minLength: 1, maxLength: 4 }), (all) => {
        for (const one of all) writeSettings(engine, one, at(1));
        expect(readSettings(engine)).toEqual(all.at(-1));
      }),
      { numRuns: 40 },
    );
  });

  it('are read without what a later version has added, and refused where they say what cannot be', () => {
    engine.run('INSERT INTO setting (name, value) VALUES (?, ?)', 'ofLater', '{"a":1}');
    expect(readSettings(engine)).toEqual(settings.parse({}));
    engine.run('INSERT INTO setting (name, value) VALUES (?, ?)', 'theme', '"plaid"');
    expect(() => readSettings(engine)).toThrow(/theme/);
    expect(() => engine.run('INSERT INTO setting (name, value) VALUES (?, ?)', 'currency', 'EUR')).toThrow(
      /CHECK/,
    );
  });

  it('keep in their history what each sitting left', () => {
    const named = (makerName: string): Settings => ({ ...readSettings(engine), makerName });
    changeSettings(engine, named('One'), doing(0));
    changeSettings(engine, named('Two'), doing(10));
    changeSettings(engine, named('Three'), doing(90));
    changeSettings(engine, named('Four'), doing(91, 'Grace'));
    const history = readHistory(engine, SETTINGS.kind, SETTINGS.kind);
    expect(history.map(({ n }) => readEntry(engine, SETTINGS, SETTINGS.kind, n)!.makerName)).toEqual([
      ...['', 'Two', 'Three'],
    ]);
    expect(presentDoing(engine, SETTINGS.kind, SETTINGS.kind)?.by).toBe('Grace');
    expect(readSettings(engine).makerName).toBe('Four');
  });
});

describe('saved searches', () => {
  const search = (name: string, query = 'text=wax') => ({ name, query });

  it('are listed by name, A and a alike, and may bear one name or ask one thing', () => {
    const ids = ['b', 'A', 'a', 'Ä', '“one”'].map((name) => add(engine, 'saved search', search(name)));
    expect(listSearches(engine).map(({ name }) => name)).toEqual(['A', 'a', 'b', 'Ä', '“one”']);
    expect(new Set(listSearches(engine).map(({ id }) => id))).toEqual(new Set(ids));
  });

  it('are read whole, renamed, and taken away', () => {
    const query = `text=${encodeURIComponent('“5 %” & more')}&form=pellets`;
    const id = add(engine, 'saved search', search('Mine', query));
    const made = searchRecords.read(engine, id)!;
    expect(made).toMatchObject({ name: 'Mine', query, revision: 1, updatedAt: made.createdAt });
    searchRecords.update(engine, made, { ...made, name: 'Ours', query: '' });
    expect(searchRecords.read(engine, id)).toEqual({ ...made, name: 'Ours', query: '' });
    searchRecords.remove(engine, id);
    expect(searchRecords.read(engine, id)).toBeUndefined();
    expect(() => add(engine, 'saved search', search('One'), id)).not.toThrow();
    expect(() => add(engine, 'saved search', search('Two'), id)).toThrow(/UNIQUE/);
  });
});

describe('trial series', () => {
  const lines = [{ materialId: newId(), part: 'emulsifier' as const, ppm: 40_000, mg: 4000 }];
  const trial = (label: string) => ({ label, hlb: 10.5, levelPpm: 40_000, lines, result: '' });
  const series = (title: string, part: object = {}) => ({
    ...{
      title,
      formulaId: null,
      targetHlb: null,
      batchMg: 100_000,
      readabilityMg: 10,
      chosen: null,
      notes: '',
    },
    trials: [trial('A'), trial('B')],
    ...part,
  });

  it('are read as they were last written, and told by their list as they stand', () => {
    const id = add(engine, 'trial series', series('Ratio “1 : 2”', { notes: 'cool slowly' }));
    expect(readSeries(engine, id)).toMatchObject({
      title: 'Ratio “1 : 2”',
      revision: 1,
      notes: 'cool slowly',
    });
    edit(engine, 'trial series', id, {
      title: 'Level',
      chosen: 1,
      trials: [trial('A'), trial('B'), trial('C')],
    });
    expect(readSeries(engine, id)).toMatchObject({ title: 'Level', revision: 2, chosen: 1 });
    expect(readSeriesEntries(engine)).toMatchObject([
      { id, title: 'Level', trials: 3, status: 'chosen', notes: 'cool slowly' },
    ]);
    edit(engine, 'trial series', id, { chosen: null });
    expect(readSeriesEntries(engine, [id, 'gone'])).toMatchObject([{ status: 'none chosen yet' }]);
    expect(readSeriesEntries(engine, [])).toEqual([]);
    expect(readSeries(engine, 'gone')).toBeUndefined();
    expect(readGlances(engine, SERIES_TABLE, ['title'])).toEqual([{ id, title: 'Level' }]);
  });

  it('count the first trial, which is number nought, as chosen', () => {
    add(engine, 'trial series', series('Ratio', { chosen: 0 }));
    expect(readSeriesEntries(engine)[0]?.status).toBe('chosen');
  });

  it('from before a field was there are read with it blank, and what cannot be is told', () => {
    const id = add(engine, 'trial series', series('Old'));
    const held = readSeries(engine, id) as Partial<SeriesRecord>;
    const { notes: _notes, revision: _n, updatedAt: _at, ...old } = held;
    engine.run('UPDATE trial_series SET content = ? WHERE id = ?', JSON.stringify(old), id);
    expect(readSeries(engine, id)?.notes).toBe('');
    expect(readSeriesEntries(engine)[0]?.notes).toBe('');
    engine.run('UPDATE trial_series SET content = ? WHERE id = ?', JSON.stringify({ ...old, chosen: 5 }), id);
    expect(() => seriesRecords.read(engine, id)).toThrow(/not in the series/);
  });
});

describe('all nouns', () => {
  it('count what they hold, read some of it in the order of nothing, and are told by one kind each', () => {
    expect(new Set(RECORD_KINDS.map(({ repository }) => repository.noun.kind)).size).toBe(
      RECORD_KINDS.length,
    );
    const id = add(engine, 'material', blankMaterial('One', 'Aqua'));
    for (const kind of RECORD_KINDS) {
      const { table } = kind;
      expect(countAll(engine, { from: table, keys: {} })).toBe(table === 'material' ? 1 : 0);
      expect(readSome(kind, engine, ['gone', id]).map((one) => one.id)).toEqual(
        table === 'material' ? [id] : [],
      );
      expect(readSome(kind, engine, [])).toEqual([]);
    }
  });

  it('ask for all where nothing is said, and for none where none are named', () => {
    expect(among('id', undefined)).toEqual({ where: '', values: [] });
    const { where, values } = among('id', ["'; --", '"', 'é']);
    expect(engine.all(`SELECT 1 FROM material ${where}`, ...values)).toEqual([]);
  });

  it('keep their sittings apart, though two bear one identifier', () => {
    const id = add(engine, 'saved search', { name: 'One', query: '' });
    add(engine, 'material', blankMaterial('One', 'Aqua'), id);
    const before = materialRecords.read(engine, id)!;
    keepBefore(engine, materialRecords.noun, before, doing(100_000, 'Grace'));
    expect(presentDoing(engine, 'material', id)?.by).toBe('Grace');
    expect(presentDoing(engine, 'saved search', id)?.by).toBe('someone');
    expect(readHistory(engine, 'saved search', id)).toEqual([]);
  });
});
