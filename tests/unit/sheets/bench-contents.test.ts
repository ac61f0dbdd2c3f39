import { readBench, type BenchInput } from '@core/emulsions/bench/reading';
import type { Material } from '@core/materials/material';
import { HAZARD_CAUTIONS, NOT_PROOF } from '@core/sheets/cautions';
import { trialsSheet } from '@core/sheets/trials-sheet';
import { workingSheet } from '@core/sheets/working-sheet';
import { hlbSeries } from '@core/trials/plan-trials';
import type { TrialSeries } from '@core/trials/trial-series';
import { describe, expect, it } from 'vitest';
import { AT, GUM, idOf, MATERIALS, OIL, QUAT, SOAP, WATER, WAX } from './sample-materials';
import { MAKER } from './samples';
import { factOf, rowsUnder, wordsOf } from './sheet-words';

describe('a trial series on paper', () => {
  const [high, low] = [WAX, SOAP];
  const series = (part: Partial<TrialSeries> = {}, levelPpm = 50_000): TrialSeries => ({
    ...{ id: idOf(1), title: 'Round HLB 10', createdAt: AT, formulaId: null, targetHlb: 10 },
    ...{ batchMg: 100_000, readabilityMg: 100, chosen: null, notes: '' },
    trials: hlbSeries({
      ...{ targetHlb: 10, low: { materialId: low.id, hlb: 5 }, high: { materialId: high.id, hlb: 15 } },
      ...{
        levelPpm,
        batchMg: 100_000,
        readabilityMg: 100,
        others: [
          { materialId: WATER.id, share: 3 },
          { materialId: OIL.id, share: 1 },
        ],
      },
    }),
    ...part,
  });
  const sheetOf = (of: TrialSeries, materials: Record<string, Material> = MATERIALS) =>
    trialsSheet(of, materials, MAKER, AT);

  it('has a column for each trial, with masses that come to the batch', () => {
    const rows = rowsUnder(sheetOf(series()).content, 'Material', 'HLB 10');
    expect(rows).toHaveLength(4);
    for (const at of [1, 2, 3, 4, 5])
      expect(rows.reduce((sum, row) => sum + Number(row[at]), 0)).toBeCloseTo(100, 9);
    // At HLB 10 the two are even: 2.5 g each of 5 g.
    expect(rows.slice(0, 2).map((row) => row[3])).toEqual(['2.5', '2.5']);
  });

  it('calls what a balance cannot weigh less than its step, and what a trial has none of a dash', () => {
    const tiny = series({}, 100);
    const cells = rowsUnder(sheetOf(tiny).content, 'Material', 'HLB 10').flat();
    expect(cells).toContain('< 0.1');
    const [first, ...rest] = series().trials;
    const lines = first?.lines.filter(({ materialId }) => materialId !== low.id) ?? [];
    expect(
      rowsUnder(
        sheetOf(series({ trials: [{ ...first!, lines }, ...rest] })).content,
        'Material',
        'HLB 10',
      ).flat(),
    ).toContain('–');
  });

  it('marks the chosen one, prints what was seen, and names what is gone', () => {
    const trials = series().trials.map((trial, at) => ({
      ...trial,
      result: at === 1 ? 'Smooth, no oil after a week' : '',
    }));
    const words = wordsOf(sheetOf(series({ chosen: 1, trials, notes: 'Stirred by hand.' })));
    expect(words).toContain('HLB 9.5 (chosen)');
    expect(words).toContain('Smooth, no oil after a week');
    expect(words).toContain('Stirred by hand.');
    expect(wordsOf(sheetOf(series(), {}))).toContain('No longer in the library');
  });

  it('has each hazard of what is weighed once, and stands upright for four trials at most', () => {
    const words = wordsOf(
      sheetOf(series(), {
        [WATER.id]: WATER,
        [low.id]: { ...low, hazards: ['irritant'] },
        [high.id]: { ...high, hazards: ['irritant'] },
      }),
    );
    expect(words.filter((one) => one === `– ${HAZARD_CAUTIONS.irritant}`)).toHaveLength(1);
    expect(sheetOf(series()).pageOrientation).toBe('landscape');
    expect(sheetOf(series({ trials: series().trials.slice(0, 4) })).pageOrientation).toBe('portrait');
  });
});

describe('the working of the bench on paper', () => {
  const at = (material: Material, percent: number) => ({ material, percent });
  const wordsOfBench = (input: Partial<BenchInput>) => {
    const bench: BenchInput = {
      emulsionType: 'o/w',
      oils: [at(OIL, 20)],
      emulsifiers: [],
      rest: [],
      targetHlb: null,
      ...input,
    };
    return wordsOf(
      workingSheet({ ...bench, title: '', reading: readBench(bench), axis: null, triangle: null }, MAKER, AT),
    );
  };

  it('says what the oils require, with the number and its source, or that none is known', () => {
    const words = wordsOfBench({});
    expect(words).toContain('Required HLB for o/w: 6.0');
    expect(words).toContain('handbook');
    expect(wordsOfBench({ oils: [at(WATER, 20)] })).toContain('none known');
  });

  it('refuses a cationic beside soap in print, and names no conflict where there is none', () => {
    const salt = wordsOfBench({ emulsifiers: [at(QUAT, 2), at(SOAP, 2)] });
    expect(salt).toContain('This system is refused: see the salt below.');
    expect(salt).toContain('Forms a salt: Aldermere BT 50 with Corvane GS 40');
    const calm = wordsOfBench({ emulsifiers: [at(WAX, 4)] });
    expect(calm).toContain('No charge conflict.');
    expect(calm).not.toContain('This system is refused: see the salt below.');
  });

  it('tells each emulsifier with its share and level, and what is cautioned of it', () => {
    const words = wordsOfBench({ emulsifiers: [at(WAX, 3), at({ ...GUM, functions: ['emulsifier'] }, 1)] });
    expect(words).toContain('75.0');
    expect(words).toContain('charge not recorded');
    expect(words).toContain(`– ${HAZARD_CAUTIONS['fine dust']}`);
    expect(words).toContain(`– ${NOT_PROOF}`);
  });

  it('has its title where there is one, else says what it is', () => {
    const bench: BenchInput = { emulsionType: 'w/o', oils: [], emulsifiers: [], rest: [], targetHlb: 5 };
    const sheet = workingSheet(
      { ...bench, title: '', reading: readBench(bench), axis: null, triangle: null },
      MAKER,
      AT,
    );
    expect(sheet.info.title).toContain('Emulsifier system');
    expect(factOf(sheet, 'Target HLB')).toBe('5.0');
    expect(factOf(sheet, 'Emulsion')).toBe('w/o');
  });
});
