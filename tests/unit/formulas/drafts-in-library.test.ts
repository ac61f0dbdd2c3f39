import { FORMULA_FIELDS } from '@core/formulas/fields';
import { formula, type Formula, type FormulaLine } from '@core/formulas/formula';
import { FORMULA } from '@core/formulas/noun';
import { formulaShares } from '@core/formulas/shares';
import { blankContent } from '@core/record/field';
import { deleteFormula, readFormula, writeFormula } from '@db/formulas/drafts';
import { formulasWith, readFormulaEntries } from '@db/formulas/list';
import { unrecordedDrafts } from '@db/formulas/unrecorded';
import { insertVersion, listVersions, readVersion } from '@db/formulas/versions';
import type { Engine } from '@db/library/sql/engine';
import { putState } from '@db/record/state';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  add,
  AT,
  edit,
  emptyLibrary,
  formulaOf,
  newId,
  record,
  smallLibrary,
  wax,
} from '../merging/two-libraries';

/* Drafts and versions as a library keeps them: whatever a maker writes, moves and records. */

let engine: Engine;
let shelf: string[];
beforeEach(async () => {
  engine = await emptyLibrary();
  shelf = ['One', 'Two', 'Three'].map((name) => add(engine, 'material', wax(name)));
});

const word = fc.constantFrom('', 'Water phase', '“75 °C”', "it's", '100 %', '水相 😀');
// Nought is kept without a sign.
const degrees = fc.option(fc.double({ min: -20, max: 200, noNaN: true }).map((held) => held + 0));
const line = fc.record({
  ...{ id: fc.uuid(), material: fc.nat(2), ppm: fc.integer({ min: 0, max: 400_000 }), note: word },
  toHundred: fc.constant(false),
});
const phase = fc.record({
  id: fc.uuid(),
  title: word,
  temperatureC: degrees,
  lines: fc.array(line, { maxLength: 4 }),
});
const step = fc.record({
  ...{ id: fc.uuid(), instruction: word, temperatureC: degrees, lookFor: word, caution: word },
  speedRpm: fc.option(fc.nat(50_000)),
  minutes: fc.option(fc.double({ min: 0, max: 90, noNaN: true })),
});
const written = fc
  .record({
    name: word,
    notes: word,
    phases: fc.array(phase, { maxLength: 4 }),
    steps: fc.array(step, { maxLength: 3 }),
    qs: fc.nat(12),
  })
  .map((draft) => (id: string): Formula => {
    const of = ({ material, ...rest }: (typeof draft.phases)[0]['lines'][0]) => ({
      ...rest,
      materialId: shelf[material]!,
    });
    const phases = draft.phases.map((one) => ({ ...one, lines: one.lines.map(of) as FormulaLine[] }));
    const lines = phases.flatMap((one) => one.lines);
    // One of them is q.s., where there are so many.
    if (lines[draft.qs]) lines[draft.qs]!.toHundred = true;
    const phaseIds = phases.map((one) => one.id);
    const content = {
      ...blankContent(FORMULA_FIELDS),
      name: draft.name || 'Balm',
      notes: draft.notes,
      phases,
    };
    return formula.parse({
      ...{ ...content, id, archived: false, revision: 1, createdAt: AT, updatedAt: AT },
      steps: draft.steps.map((one) => ({ ...one, phaseIds })),
    });
  });

function inLibrary(work: () => void): void {
  engine.control('BEGIN');
  try {
    work();
  } finally {
    engine.control('ROLLBACK');
  }
}

describe('a draft', () => {
  it('is read as it was last written, phases, lines and steps in their order; and leaves nothing behind', () => {
    fc.assert(
      fc.property(fc.array(written, { minLength: 1, maxLength: 3 }), (states) =>
        inLibrary(() => {
          const [id, other] = [newId(), newId()];
          for (const [at, state] of states.entries()) {
            const now = { ...state(id), revision: at + 1 };
            writeFormula(engine, now);
            expect(readFormula(engine, id)).toEqual(now);
          }
          // Lines and phases are told by their formula: another may use the same identifiers.
          writeFormula(engine, states[0]!(other));
          deleteFormula(engine, id);
          expect(readFormula(engine, id)).toBeUndefined();
          expect(readFormula(engine, other)).toEqual(states[0]!(other));
          deleteFormula(engine, other);
          for (const table of ['phase', 'line', 'step'])
            expect(engine.get(`SELECT count(*) AS n FROM formula_${table}`)).toEqual({ n: 0 });
        }),
      ),
      { numRuns: 25 },
    );
  });

  it('is listed with each material once, at all that its lines and what is q.s. come to', () => {
    fc.assert(
      fc.property(written, (state) =>
        inLibrary(() => {
          const one = state(newId());
          writeFormula(engine, one);
          const [entry] = readFormulaEntries(engine, [one.id]);
          const lines = one.phases.flatMap(({ lines: own }) => own);
          const shares = formulaShares(one).byLine;
          const sums = new Map<string, number>();
          for (const { id, materialId } of lines)
            sums.set(materialId, (sums.get(materialId) ?? 0) + (shares.get(id) ?? 0));
          expect(entry!.lines).toBe(lines.length);
          expect(new Map(entry!.materialIds.map((id, at) => [id, entry!.ppms[at]]))).toEqual(
            // What is q.s. is never less than nothing.
            new Map([...sums].map(([id, ppm]) => [id, Math.max(0, ppm)])),
          );
          for (const id of shelf) expect(formulasWith(engine, id)).toEqual(sums.has(id) ? [one.id] : []);
        }),
      ),
      { numRuns: 40 },
    );
  });

  it('is refused where a line names no material, two are q.s., or a version was recorded of it', async () => {
    const one = {
      ...formulaOf('Balm', '', [shelf[0]!]),
      id: newId(),
      revision: 1,
      createdAt: AT,
      updatedAt: AT,
    };
    const [own] = one.phases[0]!.lines;
    const withLines = (lines: FormulaLine[]) => ({ ...one, phases: [{ ...one.phases[0]!, lines }] });
    inLibrary(() =>
      expect(() => writeFormula(engine, withLines([{ ...own!, materialId: newId() }]))).toThrow(
        /FOREIGN KEY/,
      ),
    );
    inLibrary(() =>
      expect(() => writeFormula(engine, withLines([own!, { ...own!, id: newId() }]))).toThrow(/UNIQUE/),
    );
    const { engine: library, formula: id, water } = await smallLibrary();
    expect(() => deleteFormula(library, id)).toThrow(/FOREIGN KEY/);
    expect(() => library.run('DELETE FROM material WHERE id = ?', water)).toThrow(/FOREIGN KEY/);
  });
});

describe('what is not recorded yet', () => {
  it('is told of drafts changed since their last version, the last changed first, as many as are asked for', async () => {
    const { engine: library, formula: first, water } = await smallLibrary();
    expect(unrecordedDrafts(library, 9)).toEqual([]);
    edit(library, 'formula', first, { notes: 'more' });
    const second = add(library, 'formula', formulaOf('New', '', [water]));
    const away = add(library, 'formula', { ...formulaOf('Away', '', [water]), archived: true });
    expect(unrecordedDrafts(library, 9)).toEqual([second, first]);
    expect(unrecordedDrafts(library, 1)).toEqual([second]);
    expect(unrecordedDrafts(library, 0)).toEqual([]);
    record(library, first, 2);
    expect(unrecordedDrafts(library, 9)).toEqual([second]);
    const statuses = new Map(
      readFormulaEntries(library).map(({ id, status, latestVersion }) => [id, [status, latestVersion]]),
    );
    expect(statuses).toEqual(
      new Map([
        [first, ['recorded', 2]],
        [second, ['draft', null]],
        [away, ['archived', null]],
      ]),
    );
  });
});

describe('a recorded version', () => {
  it('is read as it was recorded, whatever became of its formula and materials, and cannot be changed', async () => {
    const { engine: library, formula: id, version, water } = await smallLibrary();
    const was = readVersion(library, version)!;
    edit(library, 'formula', id, { name: 'Renamed', phases: [] });
    edit(library, 'material', water, {
      tradeName: 'Renamed',
      composition: [{ inci: 'Aqua', lowPpm: 1, highPpm: 1 }],
    });
    expect(readVersion(library, version)).toEqual(was);
    expect(was.materials[water]!.tradeName).toBe('Ford Water');
    expect(() => library.run('UPDATE formula_version SET reason = ?', 'better')).toThrow(/never changes/);
    expect(() => library.run('DELETE FROM formula_version')).toThrow(/never deleted/);
    expect(() => library.run('DELETE FROM formula_version_state')).toThrow(/never deleted/);
    expect(readVersion(library, newId())).toBeUndefined();
  });

  it('shares its states with the next one where nothing changed, and is listed newest first', async () => {
    const { engine: library, formula: id, version } = await smallLibrary();
    const states = () => library.get<{ n: number }>('SELECT count(*) AS n FROM state')!.n;
    const before = states();
    const next = record(library, id, 2, { reason: 'again' });
    expect(states()).toBe(before);
    expect(listVersions(library, id)).toMatchObject([
      { id: next, number: 2, reason: 'again', standing: 'recorded', decisions: [] },
      { id: version, number: 1 },
    ]);
    expect(listVersions(library, newId())).toEqual([]);
    const again = { ...readVersion(library, next)!, id: newId() };
    expect(() => insertVersion(library, again)).toThrow(/UNIQUE/);
  });

  it('is told to be damaged, not read as something else, where a state is not what its hash says', async () => {
    const { engine: library, version, water } = await smallLibrary();
    library.script('DROP TRIGGER state_never_changes');
    library.run("UPDATE state SET content = replace(content, 'Cetyl', 'Stearyl') WHERE record = ?", water);
    expect(() => readVersion(library, version)).toThrow(/earlier state of this raw material cannot be read/);
    // The formula by itself is whole, and a state of another kind is none of it.
    expect(putState(library, FORMULA, newId(), { ...formulaOf('Other', '', []) })).toBeGreaterThan(0);
  });
});
