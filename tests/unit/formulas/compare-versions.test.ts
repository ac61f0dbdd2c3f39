import { compareVersions } from '@core/formulas/compare-versions';
import type { FormulaContent } from '@core/formulas/formula';
import { describe, expect, it } from 'vitest';
import { ESTER, idOf, MATERIALS, VITAMIN } from '../sheets/sample-materials';
import { CREAM, sampleLine, sampleStep } from '../sheets/samples';

const nameOf = (id: string) => MATERIALS[id]?.tradeName ?? 'a material no longer in the library';
const changed = (edit: (copy: FormulaContent) => void) => {
  const copy = structuredClone(CREAM);
  edit(copy);
  return compareVersions(CREAM, copy, nameOf);
};

describe('comparing two versions', () => {
  it('finds nothing between a version and itself', () => {
    expect(changed(() => undefined)).toEqual([]);
  });

  it('tells a changed share, and what the q.s. line made of it', () => {
    expect(changed((copy) => (copy.phases[1]!.lines[0]!.ppm = 60_000))).toEqual([
      {
        area: 'line',
        kind: 'changed',
        what: 'Purified water',
        before: '69.325\u00a0% (q.s.)',
        after: '68.325\u00a0% (q.s.)',
        changePpm: -10_000,
        ratio: -10_000 / 693_250,
      },
      {
        ...{ area: 'line', kind: 'changed', what: 'Velmora VQ 7' },
        ...{ before: '5.00\u00a0%', after: '6.00\u00a0%', changePpm: 10_000, ratio: 0.2 },
      },
    ]);
  });

  it('tells lines added, removed and moved to another phase', () => {
    const found = changed((copy) => {
      const [moved] = copy.phases[1]!.lines.splice(5, 1);
      copy.phases[2]!.lines.push(moved!);
      copy.phases[1]!.lines.splice(3, 1);
      copy.phases[1]!.lines.push(sampleLine(MATERIALS[idOf(1006)]!, 4));
    });
    expect(found.map((one) => [one.kind, one.what])).toEqual([
      ['added', 'Aldermere BT 50'],
      ['moved', VITAMIN.tradeName],
      ['removed', ESTER.tradeName],
    ]);
  });

  it('does not call a line new that was taken out and put back', () => {
    const found = changed((copy) => {
      const line = copy.phases[1]!.lines[2]!;
      copy.phases[1]!.lines[2] = { ...line, id: idOf(777), ppm: 120_000 };
    });
    expect(found).toEqual([]);
  });

  it('tells the one line that was moved within its phase, by where it stands', () => {
    const found = changed((copy) => {
      const { lines } = copy.phases[1]!;
      lines.unshift(...lines.splice(3, 1));
    });
    const [first] = CREAM.phases[1]!.lines;
    const [before, moved] = [CREAM.phases[1]!.lines[2]!, CREAM.phases[1]!.lines[3]!];
    expect(found).toEqual([
      {
        area: 'line',
        kind: 'moved',
        what: nameOf(moved.materialId),
        before: `line 4 of phase B, after ${nameOf(before.materialId)}`,
        after: 'line 1 of phase B',
      },
    ]);
    expect(first?.materialId).not.toBe(moved.materialId);
  });

  it('does not call lines moved that only made room for one added or removed', () => {
    const found = changed((copy) => {
      copy.phases[1]!.lines.splice(1, 1);
      copy.phases[0]!.lines.unshift(sampleLine(MATERIALS[idOf(1006)]!, 1));
    });
    expect(found.filter((one) => one.kind === 'moved')).toEqual([]);
  });

  it('tells a trade name, a composition and allergens that changed under the same lines', () => {
    const after = {
      ...ESTER,
      tradeName: `${ESTER.tradeName} N`,
      composition: [{ inci: 'Coco-Caprylate', lowPpm: 900_000, highPpm: 950_000 }],
      allergens: [{ inci: 'Linalool', ppm: 1_000 }],
    };
    const materials = { before: MATERIALS, after: { ...MATERIALS, [ESTER.id]: after } };
    const found = compareVersions(CREAM, CREAM, nameOf, 'de-DE', materials);
    const old = ESTER.composition.map((part) => `${part.inci} 100,00\u00a0%`).join(', ');
    expect(found).toEqual(
      [
        ['trade name', 'changed', ESTER.tradeName, after.tradeName],
        ['composition', 'changed', old, 'Coco-Caprylate 90,00\u00a0% to 95,00\u00a0%'],
        ['allergens', 'added', '', 'Linalool 0,10\u00a0%'],
      ].map(([what, kind, was, is]) => ({
        area: 'material',
        kind,
        what: `${after.tradeName}, ${what}`,
        before: was,
        after: is,
      })),
    );
  });

  it('takes the same composition in another order for the same', () => {
    const blend = Object.values(MATERIALS).find((one) => one.composition.length > 1)!;
    const after = { ...MATERIALS, [blend.id]: { ...blend, composition: [...blend.composition].reverse() } };
    expect(compareVersions(CREAM, CREAM, nameOf, 'en-GB', { before: MATERIALS, after })).toEqual([]);
  });

  it('does not call lines moved when a phase is put in front', () => {
    const found = changed((copy) =>
      copy.phases.unshift({ id: idOf(7777), title: 'Premix', temperatureC: null, lines: [] }),
    );
    expect(found.map((one) => [one.area, one.kind, one.what])).toContainEqual(['phase', 'added', 'Phase A']);
    expect(found.some((one) => one.area === 'line' || one.area === 'step')).toBe(false);
  });

  it('tells steps, target and notes', () => {
    const found = changed((copy) => {
      copy.steps[2]!.speedRpm = 4000;
      copy.steps.push(sampleStep([], 'Rest overnight.'));
      copy.target.phHigh = 6;
      copy.notes = '';
    });
    expect(found).toEqual([
      { area: 'step', kind: 'changed', what: 'Step 3, speed', before: '3,500 rpm', after: '4,000 rpm' },
      { area: 'step', kind: 'added', what: 'Step 7', before: '', after: 'Rest overnight.' },
      { area: 'target', kind: 'changed', what: 'Target, pH, highest', before: '5.8', after: '6' },
      { area: 'notes', kind: 'removed', what: 'Notes', before: CREAM.notes, after: '' },
    ]);
  });
});
