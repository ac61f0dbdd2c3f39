import fc from 'fast-check';
import { benchCautions, usualLevelOf } from '@core/emulsions/bench/bench-cautions';
import {
  benchState,
  benchTypeOf,
  BENCH_TYPES,
  demandType,
  type BenchType,
} from '@core/emulsions/bench/bench-state';
import { candidateFilter, filtered } from '@core/emulsions/bench/candidate-filter';
import { takeLines } from '@core/emulsions/bench/from-formula';
import { outcome } from '@core/emulsions/bench/outcome';
import { pairRatio } from '@core/emulsions/bench/pair-ratio';
import { targetOf, verdictOn, type Target } from '@core/emulsions/bench/target';
import { offeredHlb, type EmulsifierLine } from '@core/emulsions/offered-hlb';
import { requiredHlb } from '@core/emulsions/required-hlb';
import { PRODUCT_TYPES } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { badInput } from '@core/working/inputs';
import { describe, expect, it } from 'vitest';
import { content, figure, make, nextId, phase } from '../checks/build';
import * as shelf from '../checks/materials';

const required = (value: number, low: number | null = null, high: number | null = null) =>
  outcome(() => requiredHlb([{ name: 'Oil', mass: 1, value, low, high, source: null }], 'o/w'));
const refused = outcome<ReturnType<typeof requiredHlb>>(() => {
  throw badInput('No oils.', 'Add one.');
});

describe('the target', () => {
  it('by hand goes before the oils, half a unit either way, never below nothing', () => {
    expect(targetOf(10, required(12))).toEqual({ value: 10, low: 9.5, high: 10.5, from: 'hand' });
    expect(targetOf(0.2, refused)).toMatchObject({ low: 0, high: 0.7 });
    expect(targetOf(0, required(12))?.value).toBe(0);
  });

  it('of the oils has the band of their sources, and a fifth of a unit at least', () => {
    expect(targetOf(null, required(11))).toMatchObject({ value: 11, low: 10.8, high: 11.2, from: 'oils' });
    expect(targetOf(null, required(11, 10, 12))).toMatchObject({ low: 10, high: 12 });
    expect(targetOf(null, refused)).toBeNull();
  });
});

describe('what is offered against the target', () => {
  const emulsifier = (hlb: number, part: Partial<EmulsifierLine> = {}): EmulsifierLine => ({
    ...{ name: 'E', mass: 1, hlb, charge: 'non-ionic', architecture: 'classic', ...part },
  });
  const target: Target = { value: 10, low: 9.5, high: 10.5, from: 'hand' };
  const verdict = (hlb: number, type: BenchType = 'o/w', part: Partial<EmulsifierLine> = {}) =>
    verdictOn(target, offeredHlb([emulsifier(hlb, part)]), type);

  it.each([
    [10, 'within'],
    [9.5, 'within'],
    [10.5, 'within'],
    [9.49, 'below'],
    [10.51, 'above'],
  ] as const)('HLB %d is %s', (hlb, fit) => {
    expect(verdict(hlb).fit).toBe(fit);
    expect(verdict(hlb).difference).toBeCloseTo(hlb - 10, 9);
  });

  it('says by how much, and which way to go, for either type', () => {
    expect(verdict(10.02).says).toBe('Within the band of 9.5 to 10.5, on the target.');
    expect(verdict(10.3).says).toBe('Within the band of 9.5 to 10.5, 0.3 off the target.');
    expect(verdict(12).says).toBe(
      '2 above the target, outside the band of 9.5 to 10.5. Raise the share of the lower HLB.',
    );
    expect(verdict(8).says).toContain('leans towards w/o; raise the share of the higher HLB');
    expect(verdict(12, 'w/o').says).toContain('leans towards o/w; raise the share of the lower HLB');
    expect(verdict(8, 'w/o').says).toContain('Raise the share of the higher HLB');
  });

  it('is within where the spread of its own figures meets the band, and says so', () => {
    const found = verdict(11.5, 'o/w', { hlbLow: 10.4, hlbHigh: 12 });
    expect(found.fit).toBe('within');
    expect(found.says).toContain('within the spread of its figures (10.4 to 12)');
    expect(verdict(11.5, 'o/w', { hlbLow: 10.6, hlbHigh: 12 }).fit).toBe('above');
  });

  it('tells nothing where HLB tells nothing, and nothing without a target', () => {
    const ionic = verdictOn(target, offeredHlb([emulsifier(20, { charge: 'anionic' })]), 'o/w');
    expect(ionic).toMatchObject({ fit: 'not known', difference: null });
    expect(verdictOn(null, offeredHlb([emulsifier(10)]), 'o/w').says).toContain('nothing to compare with');
  });
});

describe('the ratio of two', () => {
  const at = (material: Material, percent: number) => ({ material, percent });
  const target: Target = { value: 10.2, low: 10, high: 10.4, from: 'oils' };

  it('keeps their total and meets the target, whichever is named first, by hand', () => {
    // (10.2 − 4.9) / (15.5 − 4.9) is a half.
    for (const lines of [
      [at(shelf.steareth21(), 1), at(shelf.steareth2(), 3)],
      [at(shelf.steareth2(), 3), at(shelf.steareth21(), 1)],
    ]) {
      const found = pairRatio(lines, target);
      if (!found?.ok) throw new Error('A ratio was expected.');
      expect(found.value.high.percent).toBeCloseTo(2, 9);
      expect(found.value.low.percent).toBeCloseTo(2, 9);
      expect(found.value.high.name).toBe('Harbour 21');
    }
  });

  it('is none for one, for three, for an ionic, or without a target; and refused for want of an HLB', () => {
    const pair = [at(shelf.steareth21(), 1), at(shelf.steareth2(), 3)];
    expect(pairRatio(pair.slice(0, 1), target)).toBeNull();
    expect(pairRatio([...pair, at(shelf.sorbitanOleate(), 1)], target)).toBeNull();
    expect(pairRatio([pair[0]!, at(shelf.behentrimonium(), 1)], target)).toBeNull();
    expect(pairRatio(pair, null)).toBeNull();
    const bare = make('Bare', 'Steareth-10', {
      functions: ['emulsifier'],
      charge: 'non-ionic',
      architecture: 'classic',
    });
    expect(pairRatio([pair[0]!, at(bare, 1)], target)).toMatchObject({
      ok: false,
      refusal: { title: 'Bare has no HLB in the library.' },
    });
  });
});

describe('what the bench says beside its figures', () => {
  const bench = (part: Partial<Parameters<typeof benchCautions>[0]>) =>
    benchCautions({ emulsionType: 'o/w', oils: [], emulsifiers: [], rest: [], target: null, ...part }).join(
      ' | ',
    );
  const at = (material: Material, percent: number) => ({ material, percent });
  const oil = at(shelf.mineralOil(), 20);

  it('is nothing of an empty bench, and of the target alone without emulsifiers', () => {
    expect(bench({})).toBe('');
    expect(bench({ target: { value: 7.9, low: 7, high: 8, from: 'oils' } })).toContain('below 8');
    expect(bench({ target: { value: 8, low: 7, high: 9, from: 'oils' } })).toBe('');
    expect(bench({ emulsionType: 'w/o', target: { value: 4, low: 4, high: 5, from: 'oils' } })).toBe('');
  });

  it('asks salt of a w/o emulsion until half a per cent of it stands in the rest', () => {
    const emulsifiers = [at(shelf.steareth2(), 3), at(shelf.sorbitanOleate(), 2)];
    const salted = (percent: number) =>
      bench({ emulsionType: 'w/o', oils: [oil], emulsifiers, rest: [at(shelf.saltCrystals(), percent)] });
    expect(salted(0.49)).toContain('0.5 to 1 % of salt');
    expect(salted(0.5)).not.toContain('0.5 to 1 % of salt');
    expect(bench({ oils: [oil], emulsifiers })).not.toContain('of salt');
  });

  it('calls a thin level, a system that does not disperse, an assumed use, and drops packed too close', () => {
    const [high, low] = [shelf.steareth21(), shelf.steareth2()];
    expect(bench({ oils: [oil], emulsifiers: [at(high, 1.5)] })).toContain(
      '7.5 parts of emulsifier to 100 of oil phase is little',
    );
    expect(bench({ oils: [oil], emulsifiers: [at(high, 1.6)] })).not.toContain('is little');
    expect(bench({ oils: [oil], emulsifiers: [at(low, 4)] })).toContain('None of the emulsifiers disperses');
    expect(bench({ oils: [oil], emulsifiers: [at(high, 2), at(low, 2)] })).not.toContain('disperses');
    expect(bench({ oils: [oil], emulsifiers: [at(high, 4)] })).toContain(
      'No highest use is recorded for Harbour 21',
    );
    const known = {
      ...high,
      usage: { minPpm: 1, typicalPpm: null, maxPpm: 80_000, provenance: 'supplier' as const, source: '' },
    };
    expect(bench({ oils: [oil], emulsifiers: [at(known, 4)] })).toBe('');
    const dense = (material: Material, value: number) => ({
      ...material,
      figures: { ...material.figures, density: figure(value) },
    });
    const packed = bench({
      oils: [at(dense(shelf.mineralOil(), 0.85), 80)],
      emulsifiers: [at(known, 8)],
      rest: [at(dense(shelf.water(), 1), 12)],
    });
    expect(packed).toContain('more than round drops can');
  });

  it('proposes a level for oil and emulsifiers only, by their kind', () => {
    expect(usualLevelOf([at(shelf.steareth21(), 1)], [oil], 'o/w')?.value).toBe(4);
    expect(usualLevelOf([at(shelf.stearoylGlutamate(), 1)], [oil], 'o/w')?.value).toBe(3);
    expect(usualLevelOf([], [oil], 'o/w')).toBeNull();
    expect(usualLevelOf([at(shelf.steareth21(), 1)], [], 'o/w')).toBeNull();
  });
});

describe('lines of a formula on the bench', () => {
  it('stand once each with their sum, sorted by what they are, in the order of the formula', () => {
    const [water, oil, wax] = [shelf.water(), shelf.mineralOil(), shelf.steareth21()];
    const formula = content([
      phase([
        [oil, 10],
        [wax, 3],
      ]),
      phase([
        [water, 80],
        [oil, 5],
        [make('Gone', 'Squalane'), 2],
      ]),
    ]);
    const taken = takeLines(formula, Object.fromEntries([water, oil, wax].map((one) => [one.id, one])));
    expect(taken).toEqual({
      oils: [{ materialId: oil.id, percent: 15 }],
      emulsifiers: [{ materialId: wax.id, percent: 3 }],
      rest: [{ materialId: water.id, percent: 80 }],
    });
  });

  it('leave out a line of nothing, and a q.s. line that the others have pushed below nothing', () => {
    const [water, oil] = [shelf.water(), shelf.mineralOil()];
    const formula = content([
      phase([
        [water, 0],
        [oil, 120 / 2],
        [oil, 45],
      ]),
    ]);
    formula.phases[0]!.lines[0]!.toHundred = true;
    expect(takeLines(formula, { [water.id]: water, [oil.id]: oil }).rest).toEqual([]);
  });

  it('have the type of emulsion that the product is, or none', () => {
    expect(PRODUCT_TYPES.map(benchTypeOf)).toEqual(['o/w', 'w/o', 'cationic o/w', null, null, null, null]);
    expect(BENCH_TYPES.map(demandType)).toEqual(['o/w', 'w/o', 'o/w']);
  });

  it('are refused beyond what a bench holds', () => {
    const line = () => ({ materialId: nextId(), percent: 1 });
    const state = {
      title: '',
      formulaId: null,
      emulsionType: 'o/w',
      oils: [],
      emulsifiers: [],
      rest: [],
      targetHlb: null,
    };
    const message = (part: object) => benchState.safeParse({ ...state, ...part }).error?.issues[0]?.message;
    expect(message({})).toBeUndefined();
    expect(message({ emulsifiers: Array.from({ length: 11 }, line) })).toBe('Ten emulsifiers at most.');
    expect(message({ oils: [{ ...line(), percent: -1 }] })).toBe('A level cannot be negative.');
    expect(message({ oils: [{ ...line(), percent: 101 }] })).toBe('A level cannot be more than 100 %.');
    expect(message({ targetHlb: 41 })).toBe('HLB runs from 0 to 40.');
    expect(message({ emulsionType: 'w/o/w' })).toBe('Choose a type of emulsion.');
  });
});

describe('the filter of emulsifiers', () => {
  const shelfOf = fc.array(
    fc.record({
      id: fc.uuid(),
      charge: fc.constantFrom('non-ionic' as const, 'anionic' as const, null),
      form: fc.constantFrom('pellets' as const, 'liquid' as const, null),
      origin: fc.constantFrom('natural' as const, 'synthetic' as const, null),
      hlb: fc.option(fc.double({ min: 1, max: 20, noNaN: true })),
    }),
    { maxLength: 12 },
  );
  const asked = (part: object) => candidateFilter.parse(part);

  it('lets all through that asks for nothing, and each demand narrows what the others leave', () => {
    fc.assert(
      fc.property(shelfOf, (all) => {
        expect(filtered(all, asked({}))).toEqual(all);
        const [by, both] = [
          asked({ charges: ['non-ionic'] }),
          asked({ charges: ['non-ionic'], hlbFrom: 8, hlbTo: 16 }),
        ];
        expect(filtered(filtered(all, by), asked({ hlbFrom: 8, hlbTo: 16 }))).toEqual(filtered(all, both));
        for (const one of filtered(all, both))
          expect(one.charge === 'non-ionic' && (one.hlb ?? 0) >= 8 && (one.hlb ?? 99) <= 16).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it('keeps what is pinned whatever it is, counts both ends of a window, and leaves out what is not known', () => {
    const all = [
      { id: 'a', charge: null, form: null, origin: null, hlb: 8 },
      { id: 'b', charge: null, form: null, origin: null, hlb: null },
    ];
    expect(filtered(all, asked({ hlbFrom: 8, hlbTo: 8 })).map(({ id }) => id)).toEqual(['a']);
    expect(filtered(all, asked({ hlbFrom: 9 }), ['a']).map(({ id }) => id)).toEqual(['a']);
    expect(filtered(all, asked({ forms: ['liquid'] }))).toEqual([]);
    expect(candidateFilter.safeParse({ hlbFrom: 10, hlbTo: 9 }).error?.issues[0]?.message).toBe(
      'The lowest HLB is above the highest.',
    );
  });
});
