import type { LibraryDocument } from '@core/exchange/document';
import { blankLimit } from '@core/limits/limit';
import type { Relation } from '@core/merging/ancestry';
import { blankContent } from '@core/record/field';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Engine } from '@db/library/sql/engine';
import { RECORD_KINDS } from '@db/repositories';
import { keepDeleted } from '@db/record/history';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  add,
  AT,
  copyOf,
  documentOf,
  edit,
  formulaOf,
  libraryFrom,
  meet,
  mergeInto,
  newId,
  read,
  record,
  smallLibrary,
  statesOf,
  wax,
} from '../unit/merging/two-libraries';

/* Two whole libraries that went on from one: what must hold whatever was changed in either. */

type Change = (engine: Engine) => void;
/** A change, and the place that it touches: two changes of other places do not clash. */
type Placed = { place: string; change: Change };

const series = {
  ...{ title: 'Ratio', formulaId: null, targetHlb: 11, batchMg: 100_000, readabilityMg: 10, chosen: null },
  trials: [{ label: 'A', hlb: 11, levelPpm: 40_000, result: '', lines: [] as object[] }],
  notes: '',
};

let start: Engine;
const ids: Record<string, string> = {};
beforeAll(async () => {
  const { engine, ...known } = await smallLibrary();
  start = engine;
  Object.assign(ids, known);
  ids.substance = add(start, 'substance', { ...blankContent(SUBSTANCE_FIELDS), name: 'Cetyl Alcohol' });
  ids.limit = add(start, 'limit', { ...blankLimit('Phenoxyethanol'), percent: 1 });
  const lines = [{ materialId: ids.water, part: 'other', ppm: 1_000_000, mg: 100_000 }];
  ids.series = add(start, 'trial series', { ...series, trials: [{ ...series.trials[0]!, lines }] });
  ids.spare = add(start, 'material', wax('Spare Wax'));
});

const word = fc.constantFrom('one', 'zwei', 'três', '三', ' ', 'O’Leary');
const field = (of: string, kind: string, key: string, values: fc.Arbitrary<unknown>): fc.Arbitrary<Placed> =>
  values.map((value) => ({
    place: `${of} ${key}`,
    change: (engine) => edit(engine, kind, ids[of]!, { [key]: value }),
  }));

/** Changes of one field of one record each. */
const someEdit: fc.Arbitrary<Placed> = fc.oneof(
  ...['notes', 'appearance', 'handling'].map((key) => field('water', 'material', key, word)),
  field('oil', 'material', 'notes', word),
  field('oil', 'material', 'charge', fc.constantFrom('anionic', 'cationic', null)),
  field('oil', 'material', 'functions', fc.subarray(['emulsifier', 'humectant', 'solvent'])),
  ...['notes', 'purpose'].map((key) => field('formula', 'formula', key, word)),
  field('substance', 'substance', 'cas', fc.constantFrom('36653-82-4', '')),
  field(
    'substance',
    'substance',
    'synonyms',
    fc.subarray([{ name: 'Hexadecanol' }, { name: 'Palmityl alcohol' }]),
  ),
  field('limit', 'limit', 'percent', fc.constantFrom(0.5, 0.9, 1.1)),
  field('limit', 'limit', 'notes', word),
  field('series', 'trial series', 'notes', word),
);
/** What adds to a library; each gets identifiers of its own. */
const someAddition: fc.Arbitrary<Placed> = fc
  .constantFrom('material', 'formula', 'limit', 'version')
  .map((kind) => {
    const id = newId();
    const contents: Record<string, () => object> = {
      material: () => wax(`Wax ${id}`),
      formula: () => formulaOf(`Balm ${id}`, '', [ids.water!, ids.spare!]),
      limit: () => blankLimit(`Subject ${id}`),
    };
    return {
      place: id,
      change: (engine: Engine) => {
        if (kind !== 'version') add(engine, kind, contents[kind]!(), id);
        else record(engine, ids.formula!, 1 + highestVersion(engine));
      },
    };
  });

const highestVersion = (engine: Engine): number =>
  engine.get<{ n: number }>(
    'SELECT max(number) AS n FROM formula_version WHERE formula_id = ?',
    ids.formula!,
  )!.n;

const changes = (one: fc.Arbitrary<Placed>) => fc.array(one, { maxLength: 6 });
const apart = (one: Placed[], other: Placed[]): boolean => {
  const places = new Set(one.map(({ place }) => place));
  return !other.some(({ place }) => places.has(place));
};
const after = async (...done: Placed[][]): Promise<Engine> => {
  const engine = await copyOf(start);
  for (const { change } of done.flat()) change(engine);
  return engine;
};
/** What every record says; when and by whom it was said left aside. */
const said = (engine: Engine): Record<string, unknown> =>
  Object.fromEntries(documentOf(engine).records.map(({ kind, id, content }) => [`${kind} ${id}`, content]));
/** What of theirs comes into ours. A record that is as it was here, or went on here, has nothing new to say. */
const TAKEN: ReadonlySet<Relation> = new Set(['new', 'theirs newer', 'both changed']);
/** Every state that a library knows of some records, those of now among them. */
const known = ({ states, records }: LibraryDocument, of: (id: string) => boolean = () => true): string[] => [
  ...states.filter((state) => of(state.record)).map(({ hash }) => hash),
  ...records.filter(({ id }) => of(id)).map(({ state }) => state),
];
const whole = (engine: Engine): unknown[] => [
  engine.pragma('integrity_check(1)'),
  engine.pragma('foreign_key_check'),
];
const RUNS = { numRuns: 10 };

describe('a library that took another in', () => {
  it('is what it would be had both sides’ changes been made in it, in either order, where they do not clash', async () => {
    await fc.assert(
      fc.asyncProperty(changes(someEdit), changes(someEdit), async (mine, other) => {
        fc.pre(apart(mine, other));
        const ours = await after(mine);
        mergeInto(ours, documentOf(await after(other)));
        expect(said(ours)).toEqual(said(await after(mine, other)));
        expect(said(ours)).toEqual(said(await after(other, mine)));
      }),
      RUNS,
    );
  });

  it('loses nothing: no record, version or batch, and no state that either has been in', async () => {
    const any = changes(fc.oneof(someEdit, someAddition));
    await fc.assert(
      fc.asyncProperty(any, any, async (mine, other) => {
        const [ours, theirs] = [await after(mine), await after(other)];
        const before = [documentOf(ours), documentOf(theirs)];
        const taken = new Set(
          meet(ours, before[1]!)
            .entries.filter(({ relation }) => TAKEN.has(relation))
            .map(({ id }) => id),
        );
        mergeInto(ours, before[1]!);
        const now = documentOf(ours);
        const kept = new Set(known(now));
        for (const hash of known(before[0]!)) expect(kept).toContain(hash);
        for (const hash of known(before[1]!, (id) => taken.has(id))) expect(kept).toContain(hash);
        for (const one of before)
          for (const key of ['records', 'versions', 'batches'] as const)
            expect(now[key].map(({ id }) => id)).toEqual(
              expect.arrayContaining(one[key].map(({ id }) => id)),
            );
        const numbers = now.versions.map(({ formulaId, number }) => `${formulaId} ${number}`);
        expect(new Set(numbers).size).toBe(numbers.length);
        expect(whole(ours)).toEqual(['ok', null]);
      }),
      RUNS,
    );
  });

  it('agrees with the other once that has taken it in as well, clash or no clash, and then has nothing to say', async () => {
    const any = changes(fc.oneof(someEdit, someEdit, someAddition));
    await fc.assert(
      fc.asyncProperty(any, any, async (mine, other) => {
        const [ours, theirs] = [await after(mine), await after(other)];
        mergeInto(ours, documentOf(theirs));
        mergeInto(theirs, documentOf(ours));
        expect(statesOf(theirs)).toEqual(statesOf(ours));
        const settled = said(ours);
        const quiet = { added: 0, changed: 0, versions: 0, batches: 0, decisions: 0, apart: [] };
        expect(mergeInto(ours, documentOf(theirs))).toMatchObject(quiet);
        expect(mergeInto(theirs, documentOf(ours))).toMatchObject(quiet);
        expect(said(ours)).toEqual(settled);
      }),
      RUNS,
    );
  });

  it('comes to the same by way of a third that stood between', async () => {
    await fc.assert(
      fc.asyncProperty(changes(someEdit), changes(someEdit), async (mine, other) => {
        fc.pre(apart(mine, other));
        const [ours, theirs, between] = [await after(mine), await after(other), await after()];
        mergeInto(between, documentOf(theirs));
        mergeInto(between, documentOf(ours));
        mergeInto(ours, documentOf(theirs));
        expect(statesOf(between)).toEqual(statesOf(ours));
        // What it learns by the third it knows already.
        expect(mergeInto(ours, documentOf(between))).toMatchObject({ added: 0, changed: 0, versions: 0 });
      }),
      RUNS,
    );
  });

  it('is made again by its document, to the last mark of its history', async () => {
    await fc.assert(
      fc.asyncProperty(changes(fc.oneof(someEdit, someAddition)), async (mine) => {
        const ours = await after(mine);
        const sent = documentOf(ours);
        const again = documentOf(await libraryFrom(JSON.parse(JSON.stringify(sent)) as LibraryDocument));
        expect({ ...again, library: sent.library }).toEqual(sent);
      }),
      RUNS,
    );
  });
});

describe('what one side deleted', () => {
  const deleted = (engine: Engine): void => {
    const { repository } = RECORD_KINDS.find(({ table }) => table === 'material')!;
    const before = repository.read(engine, ids.spare!)!;
    keepDeleted(engine, repository.noun, before, { by: 'Ada', at: AT, why: '', library: 'one' });
    repository.remove(engine, ids.spare!);
  };

  it('stays away where nobody asks for it, whatever was changed of it there; and comes back whole where it is asked for', async () => {
    await fc.assert(
      fc.asyncProperty(changes(field('spare', 'material', 'notes', word)), async (other) => {
        const [ours, theirs] = [await after(), await after(other)];
        deleted(ours);
        mergeInto(ours, documentOf(theirs));
        expect(read(ours, 'material', ids.spare!)).toBeUndefined();
        mergeInto(ours, documentOf(theirs), { rules: { 'deleted here': 'theirs' } });
        expect(statesOf(ours)).toEqual(statesOf(theirs));
      }),
      { numRuns: 5 },
    );
  });

  it('comes back where something that is taken needs it', async () => {
    const [ours, theirs] = [await after(), await after()];
    deleted(ours);
    const balm = add(theirs, 'formula', formulaOf('New Balm', '', [ids.water!, ids.spare!]));
    mergeInto(ours, documentOf(theirs));
    expect(read(ours, 'formula', balm)).toBeDefined();
    expect(read(ours, 'material', ids.spare!)).toBeDefined();
    expect(whole(ours)).toEqual(['ok', null]);
  });
});
