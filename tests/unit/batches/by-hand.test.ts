import { batchPlan } from '@core/batches/batch';
import { enteredOutcome, outcomeWords, yieldPercent } from '@core/batches/outcome';
import { batchLines } from '@core/batches/plan-batch';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase, type Row } from '../checks/build';

const [water, oil, wax] = ['Aqua', 'Olea Europaea Fruit Oil', 'Cera Alba'].map((inci) => make(inci, inci));
const cream = content([
  phase([
    [water!, 70],
    [oil!, 25],
  ] as Row[]),
  phase([[wax!, 5]] as Row[]),
]);
const targets = (massMg: number, readabilityMg: number, overagePpm = 0) =>
  batchLines(cream, { size: { by: 'mass', massMg }, overagePpm, readabilityMg }).lines.map(
    ({ targetMg }) => targetMg,
  );

describe('a batch worked by hand: 70, 25 and 5 %', () => {
  it.each<[string, number, number, number, number[]]>([
    ['1 kg to 1 g', 1_000_000, 1_000, 0, [700_000, 250_000, 50_000]],
    [
      '1 kg and 5 % over to 1 g: 1,050 g are 735, 262.5 and 52.5 g, the odd gram to one of the halves',
      1_000_000,
      1_000,
      50_000,
      [735_000, 263_000, 52_000],
    ],
    ['250 g to 0.1 g', 250_000, 100, 0, [175_000, 62_500, 12_500]],
    ['33 g to 1 g: 23.1, 8.25 and 1.65 g', 33_000, 1_000, 0, [23_000, 8_000, 2_000]],
    ['1 g to 1 mg', 1_000, 1, 0, [700, 250, 50]],
    ['100 kg to 10 g', 100_000_000, 10_000, 0, [70_000_000, 25_000_000, 5_000_000]],
  ])('%s', (_, massMg, readabilityMg, overage, grams) => {
    expect(targets(massMg, readabilityMg, overage)).toEqual(grams);
  });

  it('by units: 48 jars of 50 g and 2 % over are 2,448 g', () => {
    const { totalMg } = batchLines(cream, {
      size: { by: 'units', units: 48, fillMg: 50_000 },
      overagePpm: 20_000,
      readabilityMg: 1_000,
    });
    expect(totalMg).toBe(2_448_000);
  });
});

describe('a plan that is entered', () => {
  const plan = {
    versionId: nextId(),
    size: { by: 'mass', massMg: 1_000_000 },
    overagePpm: 0,
    readabilityMg: 100,
    note: '',
  };
  const said = (parts: Record<string, unknown>) =>
    batchPlan.safeParse({ ...plan, ...parts }).error?.issues[0]?.message;
  it.each<[Record<string, unknown>, string]>([
    [{ size: { by: 'mass', massMg: 0 } }, 'A batch must weigh something. Enter a mass above zero.'],
    [{ size: { by: 'mass', massMg: 1.5 } }, 'A mass must be a number of milligrams.'],
    [
      { size: { by: 'mass', massMg: 10_000_000_001 } },
      'Stillroom plans batches up to 10 tonnes. Enter a smaller mass.',
    ],
    [{ size: { by: 'units', units: 1.5, fillMg: 50_000 } }, 'Fill a whole number of units.'],
    [{ size: { by: 'units', units: 0, fillMg: 50_000 } }, 'Fill at least one unit.'],
    [{ size: { by: 'units', units: 10, fillMg: 0 } }, 'A unit must hold something.'],
    [{ overagePpm: 500_001 }, 'An overage above 50 % makes a different batch size.'],
    [{ overagePpm: -1 }, 'A share cannot be negative.'],
    [{ readabilityMg: 0 }, 'A readability is above zero.'],
  ])('%j is refused: %s', (parts, message) => {
    expect(said(parts)).toBe(message);
  });
  it('is taken at its ends', () => {
    for (const parts of [
      { size: { by: 'mass', massMg: 1 } },
      { size: { by: 'mass', massMg: 10_000_000_000 } },
      { overagePpm: 500_000 },
      { readabilityMg: 1 },
    ])
      expect(said(parts)).toBeUndefined();
  });
});

describe('what came of a batch', () => {
  const outcome = {
    finishedOn: '2026-03-01',
    obtainedMg: 950_000,
    unitsFilled: 19,
    by: 'E. Marlowe',
    remarks: '',
  };
  it('is its yield: 950 g of 1,000 g are 95 %, and more than all is said as it is', () => {
    expect(yieldPercent(outcome, 1_000_000)).toBe(95);
    expect(yieldPercent({ obtainedMg: 1_010_000 }, 1_000_000)).toBe(101);
    expect(outcomeWords({ ...outcome, at: '2026-03-02T08:00:00.000Z' }, 1_000_000, 'de-DE')).toContain(
      '95,0\u00a0% of what was weighed, 19 units',
    );
    expect(
      outcomeWords({ ...outcome, unitsFilled: null, at: '2026-03-02T08:00:00.000Z' }, 1_000_000, 'en-GB'),
    ).not.toContain('units');
  });
  it.each<[Record<string, unknown>, string]>([
    [{ finishedOn: '1.3.2026' }, 'Enter the day as a date.'],
    [{ finishedOn: '2026-02-30' }, 'Enter the day as a date.'],
    [{ obtainedMg: 0 }, 'Enter the bulk that was obtained.'],
    [{ obtainedMg: 0.5 }, 'A mass must be a number of milligrams.'],
    [{ unitsFilled: -1 }, 'The units filled cannot be fewer than none.'],
    [{ unitsFilled: 1.5 }, 'A whole number of units was filled.'],
  ])('%j is refused: %s', (parts, message) => {
    expect(enteredOutcome.safeParse({ ...outcome, ...parts }).error?.issues[0]?.message).toBe(message);
  });
  it('needs the name of whoever recorded it, and no units', () => {
    expect(enteredOutcome.safeParse({ ...outcome, by: ' ' }).success).toBe(false);
    expect(enteredOutcome.safeParse({ ...outcome, unitsFilled: null }).success).toBe(true);
    expect(enteredOutcome.safeParse({ ...outcome, unitsFilled: 0 }).success).toBe(true);
  });
});
