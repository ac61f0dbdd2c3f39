import { batchLines } from '@core/batches/plan-batch';
import type { Batch } from '@core/batches/batch';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import { batchSheet } from '@core/sheets/batch-sheet';
import { blankTarget } from '@core/formulas/formula';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AT } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch } from './samples';
import { factOf, rowsUnder, wordsOf } from './sheet-words';

describe('the batch record', () => {
  const planned = (part: Partial<Batch>): Batch => {
    const batch = { ...sampleBatch(), ...part };
    const { totalMg, lines } = batchLines(CREAM, batch);
    return { ...batch, totalMg, lines };
  };
  const weighed = (batch: Batch) =>
    batchSheet(batch, CREAM_VERSION, MAKER, AT).content.flatMap((node) =>
      rowsUnder([node], 'Raw material', 'Lot'),
    );
  const targets = (batch: Batch) => weighed(batch).map((row) => Number(row[2]?.replaceAll(',', '')));

  it('has a target for each line by its share, in the steps of the balance, that come to the whole', () => {
    // 2.5 kg and 2 % more is 2,550 g: by hand 69.325 % is 1,767.79 g, 12 % is 306 g, 0.125 % is 3.19 g.
    const batch = planned({});
    const rows = weighed(batch);
    expect(rows).toHaveLength(12);
    expect(rows[0]?.[2]).toMatch(/^1,767\.[78]$/);
    expect(rows.find((row) => row[0]?.startsWith('Sweet almond oil'))?.[2]).toBe('306.0');
    const sum = targets(batch).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(2550, 6);
    expect(wordsOf(batchSheet(batch, CREAM_VERSION, MAKER, AT)).join('|')).toContain(
      'Total of all targets|2,550.0 g',
    );
  });

  it('adds up exactly for any size and any balance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50_000, max: 90_000_000 }),
        fc.constantFrom(1, 10, 100, 1000),
        (massMg, readabilityMg) => {
          const batch = planned({ size: { by: 'mass', massMg }, readabilityMg });
          const sum = targets(batch).reduce((a, b) => a + b, 0);
          expect(sum * 1000).toBeCloseTo(
            batch.lines.reduce((mg, line) => mg + line.targetMg, 0),
            3,
          );
          const words = wordsOf(batchSheet(batch, CREAM_VERSION, MAKER, AT)).join('|');
          const total = /Total of all targets\|([\d.,]+) g/.exec(words)?.[1]?.replaceAll(',', '');
          expect(Number(total)).toBeCloseTo(sum, 6);
        },
      ),
      { numRuns: 12 },
    );
  });

  it('speaks of kilograms from 100 kg on, everywhere on it, and of grams below', () => {
    const big = wordsOf(
      batchSheet(
        planned({ size: { by: 'mass', massMg: 100_000_000 }, overagePpm: 0 }),
        CREAM_VERSION,
        MAKER,
        AT,
      ),
    );
    expect(big).toContain('Target, kg');
    expect(big).toContain('Tare, kg');
    const small = wordsOf(
      batchSheet(
        planned({ size: { by: 'mass', massMg: 99_900_000 }, overagePpm: 0 }),
        CREAM_VERSION,
        MAKER,
        AT,
      ),
    );
    expect(small).toContain('Target, g');
  });

  it('tells the size as it was asked for, and the overage to its last digit', () => {
    const of = (part: Partial<Batch>, label: string) =>
      factOf(batchSheet(planned(part), CREAM_VERSION, MAKER, AT), label);
    expect(of({}, 'Size asked for')).toBe('2.5\u00a0kg');
    expect(of({ size: { by: 'units', units: 48, fillMg: 50_000 } }, 'Size asked for')).toBe('48 × 50\u00a0g');
    expect(of({ overagePpm: 20_000 }, 'Overage')).toBe('2\u00a0%');
    expect(of({ overagePpm: 25_000 }, 'Overage')).toBe('2.50\u00a0%');
    expect(of({ overagePpm: 1_250 }, 'Overage')).toBe('0.125\u00a0%');
    expect(of({ overagePpm: 0 }, 'Overage')).toBe('0\u00a0%');
  });

  it('has a hazard or the lack of one beside each material that is weighed', () => {
    for (const [name] of weighed(planned({}))) expect(name).toMatch(/no hazards recorded|▲ /);
    expect(weighed(planned({})).find(([name]) => name?.startsWith('Citric acid'))?.[0]).toContain(
      '▲ irritant',
    );
  });

  it('has a row to write in for each limit that is set, one spare, and four where nothing is', () => {
    const checks = (target: FormulaContent['target']) =>
      rowsUnder(
        batchSheet(sampleBatch(), { ...CREAM_VERSION, content: { ...CREAM, target } }, MAKER, AT).content,
        'Check',
        'Specification',
      );
    expect(checks(CREAM.target).map(([label]) => label)).toEqual([
      'Appearance',
      'Odour',
      'Colour',
      'pH',
      'Viscosity',
      'Density',
      'Microbiology',
      '',
    ]);
    expect(checks(blankTarget())).toHaveLength(4);
  });

  it('leaves the procedure out where there is none, and never the sign-off', () => {
    const words = wordsOf(
      batchSheet(sampleBatch(), { ...CREAM_VERSION, content: { ...CREAM, steps: [] } }, MAKER, AT),
    );
    expect(words).not.toContain('Procedure');
    for (const role of ['Made by', 'Checked by', 'Released by', 'Sign-off and release'])
      expect(words).toContain(role);
  });

  it('is planned by shares that come to the whole formula', () => {
    const shares = [...formulaShares(CREAM).byLine.values()];
    expect(shares.reduce((a, b) => a + b, 0)).toBe(1_000_000);
  });
});
