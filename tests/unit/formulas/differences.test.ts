import fc from 'fast-check';
import { compareVersions, type Difference } from '@core/formulas/compare-versions';
import type { FormulaContent } from '@core/formulas/formula';
import { describe, expect, it } from 'vitest';
import { idOf, MATERIALS } from '../sheets/sample-materials';
import { CREAM, sampleLine, sampleStep } from '../sheets/samples';

const nameOf = (id: string) => MATERIALS[id]?.tradeName ?? 'a material no longer in the library';
const compared = (before: FormulaContent, after: FormulaContent) => compareVersions(before, after, nameOf);
const changed = (edit: (copy: FormulaContent) => void) => {
  const copy = structuredClone(CREAM);
  edit(copy);
  return compared(CREAM, copy);
};

/** Whatever a maker may do to a formula, by itself. */
const EDITS: Record<string, (copy: FormulaContent) => void> = {
  'another name': (copy) => (copy.name = 'Almond night cream'),
  'another code': (copy) => (copy.code = ''),
  'another type': (copy) => (copy.productType = 'gel'),
  'washed off': (copy) => (copy.use = 'rinse-off'),
  'a purpose': (copy) => (copy.purpose = 'For dry skin'),
  'a kind': (copy) => (copy.market.kind = 'face cream'),
  'a dispenser': (copy) => (copy.market.dispenser = 'pump spray'),
  'a site': (copy) => copy.market.sites.push('near the eyes'),
  'a user': (copy) => copy.market.users.push('pregnancy'),
  'a region': (copy) => copy.market.regions.push('US'),
  'a share': (copy) => (copy.phases[1]!.lines[2]!.ppm += 1),
  'a note of a line': (copy) => (copy.phases[0]!.lines[1]!.note = 'warm'),
  'no q.s. line': (copy) => Object.assign(copy.phases[0]!.lines[0]!, { toHundred: false, ppm: 693_250 }),
  'a line more': (copy) => copy.phases[2]!.lines.push(sampleLine(MATERIALS[idOf(1006)]!, 1)),
  'a line less': (copy) => copy.phases[1]!.lines.splice(5, 1),
  'a title of a phase': (copy) => (copy.phases[0]!.title = 'Water'),
  'the heat of a phase': (copy) => (copy.phases[2]!.temperatureC = null),
  'a phase more': (copy) =>
    copy.phases.push({ id: idOf(7100), title: 'Perfume', temperatureC: null, lines: [] }),
  'phases in another order': (copy) => copy.phases.reverse(),
  'a step more': (copy) => copy.steps.push(sampleStep([], 'Rest over night.')),
  // The first of them: taking back the very step that another edit added would be no change at all.
  'a step less': (copy) => copy.steps.shift(),
  'steps in another order': (copy) => copy.steps.reverse(),
  'the speed of a step': (copy) => (copy.steps[2]!.speedRpm = 3000),
  'the time of a step': (copy) => (copy.steps[2]!.minutes = null),
  'the heat of a step': (copy) => (copy.steps[2]!.temperatureC = 71.5),
  'what to look for': (copy) => (copy.steps[0]!.lookFor = ''),
  'a caution of a step': (copy) => (copy.steps[1]!.caution = 'Hot'),
  'other phases of a step': (copy) => (copy.steps[2]!.phaseIds = []),
  'an appearance': (copy) => (copy.target.appearance = 'Matt cream'),
  'a pH': (copy) => (copy.target.phLow = 5),
  'no density': (copy) => (copy.target.densityHigh = null),
  'an accepted finding': (copy) =>
    copy.accepted.push({
      ...{ id: idOf(1), ruleId: 'usage', materialIds: [], severity: 'warn', says: 'Too much wax' },
      ...{ reason: 'wanted', by: 'E. M.', on: '2026-03-01' },
    }),
  'a claim': (copy) => copy.claims.push({ id: idOf(2), says: 'soothes', evidence: '', reportId: null }),
  'a statement': (copy) => (copy.statements.animalTesting = 'None.'),
  notes: (copy) => (copy.notes = ''),
};
const edits = Object.entries(EDITS);

describe('what differs between two versions', () => {
  it.each(edits)('%s is told, as one thing', (_, edit) => {
    const found = changed(edit);
    expect(found.length).toBeGreaterThan(0);
    // A share moves the q.s. line as well; all else is one difference.
    const areas = new Set(found.map((one) => one.area));
    expect(areas.size).toBe(1);
  });

  const mirror = ({ kind }: Difference) =>
    ({ added: 'removed', removed: 'added', changed: 'changed', moved: 'moved' })[kind];
  const told = (all: readonly Difference[], of: (one: Difference) => string) => all.map(of).sort();

  it.each(edits.filter(([name]) => !name.includes('step') && !name.includes('phase')))(
    '%s reads the other way round from the other side',
    (_, edit) => {
      const copy = structuredClone(CREAM);
      edit(copy);
      const [forth, back] = [compared(CREAM, copy), compared(copy, CREAM)];
      expect(told(back, (one) => `${one.kind} ${one.what}: ${one.before} → ${one.after}`)).toEqual(
        told(forth, (one) => `${mirror(one)} ${one.what}: ${one.after} → ${one.before}`),
      );
      for (const one of forth)
        if (one.changePpm)
          expect(back.find(({ what }) => what === one.what)?.changePpm, one.what).toBe(-one.changePpm);
    },
  );

  it('is all that was done, whatever was done together', () => {
    fc.assert(
      fc.property(fc.subarray(edits, { minLength: 2, maxLength: 5 }), (some) => {
        const copy = structuredClone(CREAM);
        for (const [, edit] of some) edit(copy);
        const areas = new Set(compared(CREAM, copy).map((one) => one.area));
        for (const [, edit] of some)
          for (const { area } of changed(edit))
            expect(areas, some.map(([name]) => name).join(', ')).toContain(area);
      }),
      { numRuns: 25 },
    );
  });

  it('tells phases that changed places, by their old letters and their new ones', () => {
    const swapped = changed((copy) => copy.phases.splice(0, 2, copy.phases[1]!, copy.phases[0]!));
    expect(swapped).toEqual([
      {
        ...{ area: 'phase', kind: 'moved', what: 'Order of the phases' },
        before: 'A Water phase, B Oil phase, C Cool-down phase',
        after: 'A Oil phase, B Water phase, C Cool-down phase',
      },
    ]);
  });

  it('does not call phases moved that only made room for one put between, or for one taken out', () => {
    const room = changed((copy) =>
      copy.phases.splice(1, 0, { id: idOf(7100), title: 'Gel', temperatureC: null, lines: [] }),
    );
    expect(room.map((one) => [one.kind, one.what])).toEqual([['added', 'Phase B']]);
    const less = changed((copy) => {
      copy.phases.splice(1, 1);
      copy.steps = copy.steps.map((step) => ({
        ...step,
        phaseIds: step.phaseIds.filter((id) => id !== CREAM.phases[1]!.id),
      }));
    });
    expect(less.some((one) => one.what === 'Order of the phases')).toBe(false);
  });

  it('tells a line that becomes q.s. at the very same share', () => {
    expect(changed(EDITS['no q.s. line']!)).toEqual([
      {
        ...{ area: 'line', kind: 'changed', what: 'Purified water' },
        ...{ before: '69.325\u00a0% (q.s.)', after: '69.325\u00a0%', changePpm: 0, ratio: 0 },
      },
    ]);
  });

  it('gives no ratio to a share that was nothing', () => {
    const copy = structuredClone(CREAM);
    copy.phases[1]!.lines[0]!.ppm = 0;
    const found = compared(copy, CREAM).find((one) => one.what === 'Velmora VQ 7');
    expect(found).toMatchObject({ changePpm: 50_000, ratio: null });
  });

  it('reads a material swapped on its line as one removed, one added', () => {
    const found = changed((copy) => (copy.phases[1]!.lines[0]!.materialId = idOf(99)));
    expect(found.map((one) => [one.kind, one.what])).toEqual([
      ['added', 'a material no longer in the library'],
      ['removed', 'Velmora VQ 7'],
    ]);
  });
});

describe('two formulas that did not come from each other', () => {
  const inPlace = (phases: FormulaContent['phases']): FormulaContent['phases'] =>
    phases.map((phase, at) => ({ ...phase, id: idOf(8800 + at) }));

  it('have their phases held against each other by their places, and no line is said to move within one', () => {
    const other = { ...CREAM, phases: inPlace(CREAM.phases), steps: [] };
    const named = {
      ...other,
      phases: other.phases.map((one, at) => (at === 0 ? { ...one, title: 'Waters' } : one)),
    };
    const found = compareVersions({ ...CREAM, steps: [] }, named, (id) => id);
    expect(found.map(({ area, kind, what }) => [area, kind, what])).toEqual([
      ['phase', 'changed', 'Phase A, title'],
    ]);
  });
});
