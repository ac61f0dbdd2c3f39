import { blankMaterial, type MaterialContent } from '@core/materials/material';
import { FORMULA_FIELDS } from '@core/formulas/fields';
import type { FormulaContent } from '@core/formulas/formula';
import type { LibraryDocument } from '@core/exchange/document';
import { blankContent } from '@core/record/field';
import { same } from '@core/record/same';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Engine } from '@db/library/sql/engine';
import { performMeeting, type Applied, type Met } from '@service/meeting/meeting-job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  AT,
  copyOf,
  documentOf,
  edit,
  emptyLibrary,
  newId,
  read,
  statesOf,
} from '../unit/merging/two-libraries';
import { Engine as SqlEngine } from '@db/library/sql/engine';

/*
 * Two libraries that went on from one, each edited by chance, and merged as the service merges them: by the bytes of
 * their files.
 */

const MATERIALS = 4;
const RUNS = 15;

interface Ancestor {
  engine: Engine;
  materials: string[];
  formula: string;
  substance: string;
}

function formulaOf(name: string, materialIds: readonly string[]): FormulaContent & { archived: boolean } {
  const content = { ...blankContent(FORMULA_FIELDS), name } as unknown as FormulaContent;
  const lines = materialIds.map((materialId) => ({
    ...{ id: newId(), materialId, ppm: 100_000, toHundred: false, note: '' },
  }));
  return { ...content, archived: false, phases: [{ id: newId(), title: '', temperatureC: null, lines }] };
}

async function ancestor(): Promise<Ancestor> {
  const engine = await emptyLibrary();
  const materials = Array.from({ length: MATERIALS }, (_, at) =>
    add(engine, 'material', blankMaterial(`Larkspur ${at}`, 'Cetyl Alcohol')),
  );
  const substance = add(engine, 'substance', { ...blankContent(SUBSTANCE_FIELDS), name: 'Cetyl Alcohol' });
  return {
    engine,
    materials,
    substance,
    formula: add(engine, 'formula', formulaOf('Balm', materials.slice(0, 2))),
  };
}

/** What a maker does to a library: where it is done tells whether two such clash. */
interface Edit {
  place: string;
  does(engine: Engine, of: Ancestor): void;
}

const word = fc.constantFrom('', 'one', 'two', 'three');
const which = fc.nat(MATERIALS - 1);

const field = (key: keyof MaterialContent) =>
  fc.tuple(which, word).map(([at, value]): Edit => ({
    place: `material ${at} ${key}`,
    does: (engine, { materials }) => edit(engine, 'material', materials[at]!, { [key]: value }),
  }));
const figure = fc
  .tuple(which, fc.constantFrom('hlb', 'density'), fc.integer({ min: 1, max: 20 }))
  .map(([at, kind, value]): Edit => ({
    place: `material ${at} figures.${kind}`,
    does: (engine, { materials }) => {
      const { figures } = read<MaterialContent>(engine, 'material', materials[at]!);
      const one = {
        low: null,
        value: kind === 'hlb' ? value : value / 10,
        high: null,
        provenance: 'supplier',
        source: '',
      };
      edit(engine, 'material', materials[at]!, { figures: { ...figures, [kind]: one } });
    },
  }));
const share = fc.tuple(fc.nat(1), fc.integer({ min: 1, max: 500_000 })).map(([at, ppm]): Edit => ({
  place: `formula line ${at}`,
  does: (engine, { formula }) => {
    const { phases } = read<FormulaContent>(engine, 'formula', formula);
    const lines = phases[0]!.lines.map((line, index) => (index === at ? { ...line, ppm } : line));
    edit(engine, 'formula', formula, { phases: [{ ...phases[0]!, lines }] });
  },
}));
const named = (kind: 'formula' | 'substance', key: string) =>
  word.map((value): Edit => ({
    place: `${kind} ${key}`,
    does: (engine, of) => edit(engine, kind, of[kind], { [key]: value }),
  }));
/** Each new thing is another one, wherever it is made. */
const added = fc.tuple(fc.boolean(), which).map(([isFormula, at]): Edit => {
  const id = newId();
  const content = { ...blankMaterial(`New ${id.slice(-6)}`, 'Cetyl Alcohol') };
  let formula: FormulaContent | undefined;
  return {
    place: `new ${id}`,
    does: (engine, { materials }) => {
      formula ??= formulaOf(`New ${id.slice(-6)}`, [materials[at]!]);
      add(engine, isFormula ? 'formula' : 'material', isFormula ? formula : content, id);
    },
  };
});
const edits = fc.array(
  fc.oneof(
    ...[field('notes'), field('appearance'), field('code'), figure, share, added],
    ...[named('formula', 'notes'), named('formula', 'purpose'), named('substance', 'notes')],
  ),
  { maxLength: 8 },
);
const placesOf = (all: readonly Edit[]): Set<string> => new Set(all.map(({ place }) => place));
const clash = (mine: readonly Edit[], other: readonly Edit[]): boolean =>
  [...placesOf(mine)].some((place) => placesOf(other).has(place));

async function done(of: Ancestor, ...all: readonly Edit[][]): Promise<Engine> {
  const engine = await copyOf(of.engine);
  for (const one of all.flat()) one.does(engine, of);
  return engine;
}

/** Merges as the service does. */
async function merged(
  ours: Engine,
  theirs: Engine,
): Promise<{ met: Met; engine: Engine } & Pick<Applied, 'merged'>> {
  const other = { kind: 'library' as const, bytes: theirs.exportBytes(), name: 'North Bench' };
  const met = (await performMeeting({
    ...{ kind: 'begin', meeting: 'm', ours: ours.exportBytes(), other, at: AT },
  })) as Met;
  const doing = { by: 'me', at: '2027-01-01T00:00:00.000Z', why: 'merged', library: 'ours' };
  const decisions = { rules: {}, records: {}, fields: {} };
  const applied = (await performMeeting({ kind: 'apply', meeting: 'm', decisions, doing })) as Applied;
  const engine = await SqlEngine.open(applied.bytes);
  expect(engine.pragma('integrity_check')).toBe('ok');
  expect(engine.pragma('foreign_key_check')).toBeNull();
  return { met, engine, merged: applied.merged };
}

/** The beginning of the places in which a field of a record is changed. */
function placeOf({ materials, formula }: Ancestor, id: string, key: string): string {
  if (id === formula) return key === 'phases' ? 'formula line' : `formula ${key}`;
  const at = materials.indexOf(id);
  return at < 0 ? `substance ${key}` : `material ${at} ${key}`;
}
const touches = (all: readonly Edit[], place: string): boolean =>
  all.some((one) => one.place.startsWith(place));

/** The hashes of all states that the records of a library are or have been in. */
const everBeen = ({ records, states }: LibraryDocument): Set<string> =>
  new Set([...records.map(({ state }) => state), ...states.map(({ hash }) => hash)]);

const wentBack = (engine: Engine): boolean =>
  documentOf(engine).records.some(({ state, past }) => past.includes(state));

describe('merging two libraries that went on from one', () => {
  it('equals doing what both did, in either order, where they do not clash; and is the same from either side', async () => {
    const of = await ancestor();
    await fc.assert(
      fc.asyncProperty(edits, edits, async (mine, other) => {
        fc.pre(!clash(mine, other));
        const [ours, theirs] = [await done(of, mine), await done(of, other)];
        const here = await merged(ours, theirs);
        const there = await merged(theirs, ours);
        const wanted = statesOf(await done(of, mine, other));
        expect(statesOf(here.engine)).toEqual(wanted);
        expect(statesOf(there.engine)).toEqual(wanted);
        expect(statesOf(await done(of, other, mine))).toEqual(wanted);
      }),
      { numRuns: RUNS },
    );
  });

  it('loses no record, no state that either has been in, and no field that one side alone changed', async () => {
    const of = await ancestor();
    const began = documentOf(of.engine);
    await fc.assert(
      fc.asyncProperty(edits, edits, async (mine, other) => {
        const [ours, theirs] = [await done(of, mine), await done(of, other)];
        const [o, t] = [documentOf(ours), documentOf(theirs)];
        const { engine } = await merged(ours, theirs);
        const is = documentOf(engine);
        const been = everBeen(is);
        for (const hash of everBeen(o)) expect(been).toContain(hash);
        // Of a record that they have brought back to where it was, there is nothing to take.
        const taken = new Set(t.records.filter(({ state }) => !everBeen(o).has(state)).map(({ id }) => id));
        const theirStates = t.states.filter(({ record }) => taken.has(record)).map(({ hash }) => hash);
        for (const hash of [...t.records.map(({ state }) => state), ...theirStates])
          expect(been).toContain(hash);
        const contentIn = ({ records }: LibraryDocument, id: string) =>
          records.find((one) => one.id === id)?.content;
        for (const { id } of [...o.records, ...t.records]) {
          const now = contentIn(is, id);
          expect(now, 'every record of either is there').toBeDefined();
          const [base, a, b] = [began, o, t].map((one) => contentIn(one, id));
          if (!base || !a || !b) continue;
          for (const key of Object.keys(base)) {
            const [byUs, byThem] = [mine, other].map((all) => touches(all, placeOf(of, id, key)));
            if (!byUs) expect(same(now?.[key], b[key]), key).toBe(true);
            if (!byThem) expect(same(now?.[key], a[key]), key).toBe(true);
          }
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('changes nothing when it is done again, and the other then takes what came of it without a question', async () => {
    const of = await ancestor();
    await fc.assert(
      fc.asyncProperty(edits, edits, edits, async (mine, other, later) => {
        const [ours, theirs] = [await done(of, mine), await done(of, other)];
        // Who goes back to where both had been before they met leaves nothing by which to tell when that was.
        fc.pre(![ours, theirs].some(wentBack));
        const { engine: here } = await merged(ours, theirs);
        const once = documentOf(here);
        const again = await merged(here, theirs);
        expect(again.merged).toEqual({
          ...{ added: 0, changed: 0, apart: [], entered: 0, versions: 0, batches: 0, decisions: 0 },
        });
        expect(documentOf(again.engine)).toEqual(once);

        const back = await merged(theirs, here);
        expect(back.met.relations['both changed']).toBe(0);
        expect(statesOf(back.engine)).toEqual(statesOf(here));
        // And both go on from there: what one does next is newer on the other, never a clash.
        for (const one of later) if (!one.place.startsWith('new')) one.does(here, of);
        const next = await merged(back.engine, here);
        expect(next.met.relations['both changed']).toBe(0);
        expect(statesOf(next.engine)).toEqual(statesOf(here));
      }),
      { numRuns: RUNS },
    );
  });
});
