import { describe, expect, it } from 'vitest';
import { CHECKS, checkFormula } from '@core/checks/all';
import { content, findings, findingsOf, make, phase } from './build';
import { mineralOil, steareth2, steareth21, water } from './materials';

describe('the total', () => {
  it('stops a formula that comes to less or more than 100 %', () => {
    expect(findingsOf('total', [[water(), 99.9999]])[0]?.title).toContain('0.0001 % too little');
    expect(
      findingsOf('total', [
        [water(), 60],
        [mineralOil(), 50],
      ])[0],
    ).toMatchObject({ severity: 'stop' });
  });
  it('accepts exactly 100 %, also by a q.s. line', () => {
    expect(
      findingsOf('total', [
        [water(), 66.6667],
        [mineralOil(), 33.3333],
      ]),
    ).toEqual([]);
    const one = water();
    const whole = phase([[one, 0]]);
    whole.lines.forEach((line) => (line.toHundred = true));
    expect(findings('total', content([whole]), [one])).toEqual([]);
  });
  it('says by how much the others pass 100 % when a q.s. line has nothing left', () => {
    const [one, oil] = [water(), mineralOil()];
    const both = phase([
      [one, 0],
      [oil, 100],
    ]);
    const over = phase([[oil, 5]]);
    if (both.lines[0]) both.lines[0].toHundred = true;
    const [finding] = findings('total', content([both, over]), [one, oil]);
    expect(finding).toMatchObject({ severity: 'stop', advice: 'Lower the other lines by at least 5 %.' });
  });
});

describe('lines and materials', () => {
  it('reports an empty formula, and a line at zero', () => {
    expect(findings('empty', content([]), [])[0]?.severity).toBe('stop');
    expect(
      findingsOf('empty', [
        [water(), 100],
        [mineralOil(), 0],
      ])[0]?.lines,
    ).toHaveLength(1);
    expect(findingsOf('empty', [[water(), 100]])).toEqual([]);
  });
  it('reports a line whose material is gone, and goes on with the others', () => {
    const [one, gone] = [water(), mineralOil()];
    const formula = content([
      phase([
        [one, 70],
        [gone, 30],
      ]),
    ]);
    expect(findings('missing-material', formula, [one])[0]?.lines).toEqual([formula.phases[0]?.lines[1]?.id]);
    expect(findings('no-preservative', formula, [one])).toHaveLength(1);
    expect(findings('missing-material', formula, [one, gone])).toEqual([]);
  });
  it('reports archived materials', () => {
    expect(findingsOf('archived-material', [[{ ...water(), status: 'archived' }, 100]])).toHaveLength(1);
    expect(findingsOf('archived-material', [[water(), 100]])).toEqual([]);
  });
  it('holds usage against the sum of a material’s lines', () => {
    const usage = {
      minPpm: 10_000,
      typicalPpm: null,
      maxPpm: 50_000,
      provenance: 'supplier',
      source: '',
    } as const;
    const active = make('Bright B', 'Niacinamide', { usage });
    expect(
      findingsOf('usage-range', [
        [active, 3],
        [active, 3],
      ])[0],
    ).toMatchObject({ severity: 'warn' });
    expect(findingsOf('usage-range', [[active, 0.5]])[0]).toMatchObject({ severity: 'note' });
    expect(findingsOf('usage-range', [[active, 5]])).toEqual([]);
    expect(findingsOf('usage-range', [[active, 1]])).toEqual([]);
  });
  it('reports storage temperatures with nothing in common', () => {
    const keeps = (minC: number | null, maxC: number | null) =>
      make(`Keeps ${minC}`, 'Glycerin', {
        storage: { minC, maxC, keepFrom: [], shelfLifeMonths: null, afterOpeningMonths: null },
      });
    expect(
      findingsOf('storage-temperatures', [
        [keeps(15, 30), 50],
        [keeps(2, 8), 50],
      ]),
    ).toHaveLength(1);
    expect(
      findingsOf('storage-temperatures', [
        [keeps(15, 30), 50],
        [keeps(null, 25), 50],
      ]),
    ).toEqual([]);
  });
});

describe('all checks', () => {
  it('have their own ids', () => {
    expect(new Set(CHECKS.map((rule) => rule.id)).size).toBe(CHECKS.length);
  });
  it('come most serious first, each with advice and a source', () => {
    const rows: [ReturnType<typeof water>, number][] = [
      [water(), 70],
      [mineralOil(), 20],
      [steareth21(), 4],
      [steareth2(), 2],
    ];
    const found = checkFormula({
      content: content([phase(rows)]),
      materials: new Map(rows.map(([one]) => [one.id, one])),
    });
    const order = found.map((finding) => ['stop', 'warn', 'note'].indexOf(finding.severity));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (const finding of found) {
      expect(finding.advice).not.toBe('');
      expect(finding.source.text).not.toBe('');
    }
  });
});
