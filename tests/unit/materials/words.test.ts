import fc from 'fast-check';
import { bestUse } from '@core/materials/best-use';
import { FIGURE_KINDS, FIGURE_NAMES, type Figure } from '@core/materials/figure';
import { hazardWords } from '@core/materials/hazards';
import { otherNames } from '@core/materials/synonyms';
import type { Storage } from '@core/materials/storage';
import { usage, type Usage } from '@core/materials/usage';
import { FUNCTIONS, HAZARDS, KEEP_FROM } from '@core/materials/vocabulary';
import {
  allergenWords,
  compositionWords,
  figuresWords,
  figureWords,
  inciWords,
  legalLimitWords,
  storageWords,
  usageWords,
} from '@core/materials/words';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';

const figure = (low: number | null, value: number | null, high: number | null): Figure => ({
  ...{ low, value, high },
  ...{ provenance: 'supplier', source: '' },
});

describe('a figure in words', () => {
  it.each([
    ['hlb', figure(null, 15, null), '15.0'],
    ['hlb', figure(9, 9.8, 10.5), '9.8 (9.0–10.5)'],
    ['hlb', figure(14, null, 16), '14.0–16.0'],
    ['hlb', figure(15, null, 15), '15.0'],
    ['workingPh', figure(4, null, null), 'from 4.0'],
    ['workingPh', figure(null, null, 9), 'up to 9.0'],
    ['workingPh', figure(null, 6, 9), '6.0 (up to 9.0)'],
    ['meltingPoint', figure(52, null, 58), '52–58 °C'],
    // A dash between two minus signs cannot be read.
    ['meltingPoint', figure(-15, null, -10), '−15 to −10 °C'],
    ['meltingPoint', figure(-3, null, 3), '−3 to 3 °C'],
    ['meltingPoint', figure(0, null, 3), '0–3 °C'],
    ['cc', figure(null, -2.5, null), '−2.50'],
    ['activePercent', figure(null, 0, null), '0.0 %'],
    ['molarMass', figure(null, 1234.5, null), '1,234.50 g/mol'],
  ] as const)('%s: %o', (kind, known, words) => {
    expect(figureWords(kind, known, 'en-GB')).toBe(words);
  });

  it('is nothing where nothing is known, and follows the region', () => {
    expect(figureWords('hlb', undefined, 'en-GB')).toBe('');
    expect(figureWords('density', figure(0.9, 0.915, 0.92), 'de-DE')).toBe('0,915 (0,900–0,920) g/mL');
  });

  it('has its unit at its end, whatever the kind, and never a hyphen for a minus', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FIGURE_NAMES), fc.double({ min: 0, max: 1, noNaN: true }), (kind, t) => {
        const { min, max, unit } = FIGURE_KINDS[kind];
        const words = figureWords(kind, figure(null, min + t * (max - min), null), 'en-GB');
        expect(words.endsWith(unit)).toBe(true);
        expect(words).not.toContain('-');
      }),
      { numRuns: 50 },
    );
  });

  it('stands with its name among the others, in one order', () => {
    expect(figuresWords({ density: figure(null, 0.92, null), hlb: figure(null, 7, null) }, 'en-GB')).toBe(
      'HLB 7.0; Density 0.920 g/mL',
    );
    expect(figuresWords({}, 'en-GB')).toBe('');
  });
});

describe('a usage range in words', () => {
  const of = (minPpm: number | null, typicalPpm: number | null, maxPpm: number | null): Usage => ({
    ...{ minPpm, typicalPpm, maxPpm },
    ...{ provenance: 'supplier', source: '' },
  });

  it.each([
    [of(20_000, 50_000, 80_000), '2\u00a0% to 8\u00a0%, typically 5\u00a0%'],
    [of(null, null, 10_000), 'up to 1\u00a0%'],
    [of(5_000, null, null), 'from 0.50\u00a0%'],
    [of(null, 30_000, null), 'typically 3\u00a0%'],
    [of(null, null, null), ''],
    [null, ''],
    // What is used by the thousandth of a per cent must not become nothing, or twice as much.
    [of(10, 50, 100), '0.001\u00a0% to 0.01\u00a0%, typically 0.005\u00a0%'],
    [of(1_250, null, 12_500), '0.125\u00a0% to 1.25\u00a0%'],
    [of(0, null, 1_000_000), '0\u00a0% to 100\u00a0%'],
  ])('%o', (known, words) => {
    expect(usageWords(known, 'en-GB')).toBe(words);
  });

  it('tells different shares by different words, to the ppm', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), (ppm) => {
        expect(usageWords(of(null, ppm, null), 'en-GB')).not.toBe(
          usageWords(of(null, ppm + 1, null), 'en-GB'),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('must rise from lowest to highest, ends that are known and equal ones included', () => {
    const takes = (minPpm: number | null, typicalPpm: number | null, maxPpm: number | null) =>
      usage.safeParse(of(minPpm, typicalPpm, maxPpm)).success;
    expect([
      takes(1, 2, 3),
      takes(2, 2, 2),
      takes(null, 2, null),
      takes(3, null, 3),
      takes(null, null, null),
    ]).toEqual(Array.from({ length: 5 }, () => true));
    expect([
      takes(3, 2, 4),
      takes(1, 5, 4),
      takes(4, null, 3),
      takes(-1, null, null),
      takes(null, null, 1_000_001),
    ]).toEqual(Array.from({ length: 5 }, () => false));
  });
});

describe('names of substances in words', () => {
  const part = (inci: string, low: number, high = low) => ({
    inci,
    lowPpm: low * 10_000,
    highPpm: high * 10_000,
  });
  const blend = [part('Aqua', 10), part('Cetearyl Alcohol', 60, 80), part('Ceteareth-20', 15, 25)];

  it('stand with the largest share first, by the middle of a range', () => {
    expect(inciWords({ composition: blend })).toBe('Cetearyl Alcohol (and) Ceteareth-20 (and) Aqua');
    expect(compositionWords(blend, 'en-GB')).toBe(
      'Cetearyl Alcohol 60.00\u00a0% to 80.00\u00a0%, Ceteareth-20 15.00\u00a0% to 25.00\u00a0%, Aqua 10.00\u00a0%',
    );
  });

  it('are counted beyond as many as are asked for, and left in the composition as they were', () => {
    const before = JSON.stringify(blend);
    expect(inciWords({ composition: blend }, 2)).toBe('Cetearyl Alcohol (and) Ceteareth-20 and 1 more');
    expect(inciWords({ composition: blend }, 3)).not.toContain('more');
    expect(inciWords({ composition: [] })).toBe('');
    expect(JSON.stringify(blend)).toBe(before);
  });

  it('keep the order in which they were written where their shares are the same', () => {
    expect(inciWords({ composition: [part('B', 50), part('A', 50)] })).toBe('B (and) A');
  });

  it('say allergens and limits with their shares, to the ppm', () => {
    expect(
      allergenWords(
        [
          { inci: 'Linalool', ppm: 12_000 },
          { inci: 'Citral', ppm: 9 },
        ],
        'en-GB',
      ),
    ).toBe('Linalool 1.20\u00a0%, Citral 0.0009\u00a0%');
    expect(legalLimitWords({ ppm: 10_000, note: '', source: 'Annex V/29' }, 'en-GB')).toBe(
      '1.00\u00a0% of the finished product; Annex V/29',
    );
    expect(legalLimitWords(null, 'en-GB')).toBe('');
  });
});

describe('how a material is kept, in words', () => {
  const of = (part: Partial<Storage>) =>
    storageWords(
      { minC: null, maxC: null, keepFrom: [], shelfLifeMonths: null, afterOpeningMonths: null, ...part },
      'en-GB',
    );

  it.each([
    [{}, ''],
    [{ minC: 5, maxC: 25 }, 'At 5 °C to 25 °C'],
    [{ maxC: -18 }, 'Below −18 °C'],
    [{ minC: 0 }, 'Above 0 °C'],
    [{ keepFrom: [...KEEP_FROM] }, 'Away from light, moisture, frost, air and heat'],
    [{ shelfLifeMonths: 1, afterOpeningMonths: 0 }, 'Unopened 1 month; once opened 0 months'],
  ] as [Partial<Storage>, string][])('%o', (part, words) => {
    expect(of(part)).toBe(words);
  });
});

describe('what a material is best for', () => {
  it.each([
    [{ functions: ['emulsifier'], emulsionType: 'both' }, 'Emulsifier for o/w and w/o emulsions'],
    [{ emulsionType: 'w/o' }, 'Emulsifier for w/o emulsions'],
    [
      { functions: ['humectant', 'solvent'], coldProcessable: true },
      'Humectant and solvent; cold-processable',
    ],
    [{ phaseOfUse: 'oil' }, 'Oil phase'],
    [{ phaseOfUse: 'any' }, ''],
    [
      { functions: ['thickener'], body: 'none', needsNeutralising: true },
      'Thickener; for fluid textures; needs neutralising',
    ],
    [{}, ''],
  ] as [Parameters<typeof make>[2], string][])('%o', (parts, words) => {
    expect(bestUse(make('One', 'Squalane', parts), 'en-GB')).toBe(words);
  });

  it('names every function that is recorded', () => {
    const words = bestUse(make('All', 'Squalane', { functions: [...FUNCTIONS] }), 'en-GB').toLowerCase();
    for (const one of FUNCTIONS) expect(words).toContain(one);
  });

  it('names every hazard, and that none is proof of nothing', () => {
    expect(hazardWords({ hazards: [...HAZARDS] })).toBe(HAZARDS.join(', '));
    expect(hazardWords({ hazards: [] })).toContain('read the safety data sheet');
  });
});

describe('other names of a substance', () => {
  it('go both ways, and never lead back to the name itself', () => {
    for (const name of ['water', 'glycerol', 'beeswax', 'sodium hydroxide', 'shea']) {
      const others = otherNames(name);
      expect(others.length, name).toBeGreaterThan(0);
      expect(others).not.toContain(name);
    }
    expect(otherNames('water')).toContain('aqua');
    expect(otherNames('aqua')).toContain('water');
    expect(otherNames('lye')).toContain('sodium hydroxide');
    expect(otherNames('squalane')).toEqual([]);
    expect(otherNames('')).toEqual([]);
  });
});
