import fc from 'fast-check';
import type { MaterialLine } from '@core/emulsions/bench/lines';
import type { Target } from '@core/emulsions/bench/target';
import { AROUND, levelSeries, STEP } from '@core/trials/plan-trials';
import { missingPercent, planHlbSeries, planLevelSeries, type SeriesPlan } from '@core/trials/plan-series';
import { TRIAL_SERIES } from '@core/trials/noun';
import { chosenEmulsifiers, trialSeries, type Trial } from '@core/trials/trial-series';
import { describe, expect, it } from 'vitest';
import { make, nextId } from '../checks/build';
import * as shelf from '../checks/materials';
import { refusal } from '../working/refusal';

const [high, low, oil, water] = [shelf.steareth21(), shelf.steareth2(), shelf.mineralOil(), shelf.water()];
const at = (material: MaterialLine['material'], percent: number): MaterialLine => ({ material, percent });
const plan = (part: Partial<SeriesPlan> = {}): SeriesPlan => ({
  ...{ emulsifiers: [at(high, 2), at(low, 3)], oils: [at(oil, 20)], rest: [at(water, 75)] },
  ...{ fillWith: null, batchMg: 100_000, readabilityMg: 10, ...part },
});
const target: Target = { value: 10, low: 9.5, high: 10.5, from: 'hand' };
const massOf = (trial: Trial | undefined, id: string) =>
  (trial?.lines ?? []).filter(({ materialId }) => materialId === id).reduce((sum, { mg }) => sum + mg, 0);

describe('a series planned from the bench', () => {
  it('goes round the target at the level of the bench, each batch whole', () => {
    const trials = planHlbSeries(plan(), target);
    expect(trials.map(({ hlb }) => hlb)).toEqual([9, 9.5, 10, 10.5, 11]);
    expect(
      trials
        .map(({ hlb }) => (hlb ?? 0) - target.value)
        .every((off) => Math.abs(off) <= AROUND && off % STEP === 0),
    ).toBe(true);
    for (const trial of trials) {
      expect(trial.levelPpm).toBe(50_000);
      expect(trial.lines.reduce((sum, { mg }) => sum + mg, 0)).toBe(100_000);
      // 20 of 95 parts of what is no emulsifier, 95 g of the 100: 20 g.
      expect(massOf(trial, oil.id)).toBe(20_000);
    }
  });

  it('is the same whichever emulsifier stands first', () => {
    const swapped = plan({ emulsifiers: [at(low, 3), at(high, 2)] });
    expect(planHlbSeries(swapped, target)).toEqual(planHlbSeries(plan(), target));
  });

  it('fills up with what is chosen, adding to it where it stands already', () => {
    const short = { rest: [at(water, 60)] };
    expect(missingPercent(plan(short))).toBe(15);
    const trial = planHlbSeries(plan({ ...short, fillWith: water.id }), target)[2];
    expect(massOf(trial, water.id)).toBe(75_000);
    const glycerin = make('Glycerol', 'Glycerin');
    const other = planHlbSeries(plan({ ...short, fillWith: glycerin.id }), target)[2];
    expect([massOf(other, water.id), massOf(other, glycerin.id)]).toEqual([60_000, 15_000]);
  });

  it('asks what to fill up with from more than a twentieth of a per cent on', () => {
    expect(
      refusal(
        () => planHlbSeries(plan({ rest: [at(water, 74.9)] }), target),
        /0.1 % of the batch is not accounted for/,
      ).fields[0]?.path,
    ).toBe('fillWith');
    expect(() => planHlbSeries(plan({ rest: [at(water, 74.95)] }), target)).not.toThrow();
    expect(missingPercent(plan({ rest: [at(water, 90)] }))).toBe(0);
    // Thirds, which binary cannot hold, are no gap.
    expect(missingPercent(plan({ oils: [at(oil, 10.1), at(oil, 9.9)] }))).toBe(0);
  });

  it.each<[string, Partial<SeriesPlan>, Target | null, RegExp]>([
    ['one emulsifier', { emulsifiers: [at(high, 5)] }, target, /needs two classic non-ionic/],
    [
      'three',
      { emulsifiers: [at(high, 1), at(low, 1), at(shelf.sorbitanOleate(), 1)] },
      target,
      /needs two classic non-ionic/,
    ],
    [
      'an ionic',
      { emulsifiers: [at(high, 2), at(shelf.stearoylGlutamate(), 2)] },
      target,
      /needs two classic non-ionic/,
    ],
    ['no target', {}, null, /no target HLB/],
    ['a target beyond the pair', {}, { ...target, value: 16 }, /lies outside the pair/],
    ['more oil than room', { oils: [at(oil, 96)] }, target, /more than it can hold/],
    [
      'no emulsifier in amount',
      { emulsifiers: [at(high, 0), at(low, 0)], fillWith: water.id },
      target,
      /level must lie between/,
    ],
  ])('is refused for %s', (_, part, round, says) => {
    refusal(() => planHlbSeries(plan(part), round), says);
  });

  it('of levels keeps the ratio of the bench, whatever the levels', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 5 }),
        (levels) => {
          const trials = planLevelSeries(plan(), levels);
          expect(trials.map(({ levelPpm }) => levelPpm)).toEqual(
            [...levels].sort((a, b) => a - b).map((level) => level * 10_000),
          );
          for (const trial of trials) {
            const emulsifiers = massOf(trial, high.id) + massOf(trial, low.id);
            expect(emulsifiers).toBe(trial.levelPpm / 10);
            expect(massOf(trial, high.id)).toBeCloseTo(0.4 * emulsifiers, -1.5);
            // By hand: 0.4 × 15.5 + 0.6 × 4.9.
            expect(trial.hlb).toBeCloseTo(9.14, 9);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('of levels claims no HLB where an ionic takes part', () => {
    expect(
      planLevelSeries(plan({ emulsifiers: [at(high, 2), at(shelf.stearoylGlutamate(), 3)] }), [3])[0]?.hlb,
    ).toBeNull();
  });
});

describe('a batch of a trial', () => {
  const input = {
    batchMg: 100_000,
    readabilityMg: 10,
    others: [{ materialId: oil.id, share: 1 }],
    emulsifiers: [{ materialId: high.id, share: 1, hlb: 15.5 }],
    levelsPpm: [40_000],
  };

  it.each([
    [{ batchMg: 0 }, /must weigh something/],
    [{ batchMg: 1.5 }, /must weigh something/],
    [{ batchMg: 1e12 }, /must weigh something/],
    [{ readabilityMg: 0 }, /cannot read a batch this small/],
    [{ readabilityMg: 200_000 }, /cannot read a batch this small/],
    [{ readabilityMg: 30 }, /whole number of the balance/],
    [{ others: [{ materialId: oil.id, share: 0 }] }, /nothing to emulsify/],
    [{ others: [{ materialId: oil.id, share: Number.NaN }] }, /nothing to emulsify/],
    [{ others: [{ materialId: oil.id, share: -1 }] }, /nothing to emulsify/],
    [{ emulsifiers: [{ materialId: high.id, share: 0, hlb: 15 }] }, /no emulsifiers to try/],
    [{ levelsPpm: [40_000.5] }, /between 0 and 100 %/],
    [{ levelsPpm: [40_000, 1_000_000] }, /between 0 and 100 %/],
  ])('is refused: %o', (part, says) => {
    refusal(() => levelSeries({ ...input, ...part }), says);
  });
});

describe('a series as it is kept', () => {
  const series = {
    ...{
      id: nextId(),
      title: 'Round 10',
      createdAt: '2026-01-01T00:00:00.000Z',
      formulaId: null,
      targetHlb: 10,
    },
    ...{
      batchMg: 100_000,
      readabilityMg: 10,
      trials: planHlbSeries(plan(), target),
      chosen: null,
      notes: '',
    },
  };

  it('comes back as it was written, and its state holds all but its id and day', () => {
    expect(trialSeries.parse(JSON.parse(JSON.stringify(series)))).toEqual(series);
    const { id: _id, createdAt: _at, ...content } = series;
    expect(TRIAL_SERIES.read(content)).toEqual(content);
    expect(TRIAL_SERIES.titleOf(TRIAL_SERIES.read(content))).toBe('Round 10');
  });

  it('gives a formula the emulsifiers of the trial that was chosen, of none where none was', () => {
    expect(chosenEmulsifiers(series)).toEqual([]);
    const chosen = chosenEmulsifiers({ ...series, chosen: 2 });
    expect(chosen.map(({ materialId }) => materialId).sort()).toEqual([high.id, low.id].sort());
    expect(chosen.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(50_000);
  });

  it.each([
    [{ chosen: 5 }, 'The chosen trial is not in the series.'],
    [{ trials: [] }, 'A series needs at least one trial.'],
    [{ targetHlb: 41 }, 'HLB runs from 0 to 40.'],
  ])('is refused with %o', (part, message) => {
    expect(trialSeries.safeParse({ ...series, ...part }).error?.issues[0]?.message).toBe(message);
    expect(trialSeries.safeParse({ ...series, chosen: 4 }).success).toBe(true);
  });
});
