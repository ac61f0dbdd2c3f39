import { weightedMean } from '@core/emulsions/blend-hlb';
import { ccMix, moleFractions } from '@core/emulsions/cc';
import { eacnMix } from '@core/emulsions/eacn';
import { hlbGap, meanBand } from '@core/emulsions/hlb-band';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

describe('means by fraction', () => {
  const eacn = (...parts: [number, number][]) =>
    eacnMix(parts.map(([fraction, one]) => ({ fraction, eacn: one })));

  it.each([
    [
      'hexane and decane by halves',
      [
        [0.5, 6],
        [0.5, 10],
      ],
      8,
    ],
    ['one oil', [[1, 12]], 12],
    [
      'a polar oil below zero',
      [
        [0.25, -2],
        [0.75, 6],
      ],
      4,
    ],
    [
      'three thirds as printed, 0.333',
      [
        [0.333, 3],
        [0.333, 6],
        [0.333, 9],
      ],
      6,
    ],
  ] as const)('EACN of %s', (_, parts, value) =>
    expect(eacn(...parts.map(([f, e]): [number, number] => [f, e])).value).toBeCloseTo(value, 9),
  );

  it.each([
    ['nothing', [], /There is no oil/],
    [
      'per cent',
      [
        [50, 6],
        [50, 10],
      ],
      /between 0 and 1/,
    ],
    [
      'what misses one',
      [
        [0.5, 6],
        [0.4, 10],
      ],
      /sum to 0\.9, not to 1/,
    ],
    ['an EACN off the scale', [[1, 41]], /EACN of an oil is 41/],
    [
      'a fraction below zero',
      [
        [-0.1, 6],
        [1.1, 6],
      ],
      /Fraction of one oil is −0\.1/,
    ],
  ] as const)('%s is refused', (_, parts, says) => {
    refusal(() => eacn(...parts.map(([f, e]): [number, number] => [f, e])), says);
  });

  it('mole fractions: 10 g of 200 and 10 g of 400 g/mol are 2 : 1, and Cc follows them', () => {
    const fractions = moleFractions([
      { mass: 10, molarMass: 200 },
      { mass: 10, molarMass: 400 },
    ]);
    expect(fractions).toEqual([expect.closeTo(2 / 3, 9), expect.closeTo(1 / 3, 9)]);
    const cc = ccMix(fractions.map((moleFraction, at) => ({ moleFraction, cc: at === 0 ? -3 : 3 })));
    expect(cc.value).toBeCloseTo(-1, 9);
    expect(moleFractions([{ mass: 0, molarMass: 200 }])).toEqual([0]);
    refusal(() => moleFractions([{ mass: 1, molarMass: 0 }]), /Molar mass of a surfactant/);
  });

  it('a weighted mean names what it is of, and refuses what has no mean', () => {
    const words = { says: 'mean', part: 'oil', unit: '', sources: [] };
    expect(
      weightedMean(
        [
          { mass: 3, value: 4 },
          { mass: 1, value: 8 },
        ],
        words,
      ).value,
    ).toBe(5);
    refusal(() => weightedMean([], words), /no oil to take a mean of/);
    refusal(() => weightedMean([{ mass: 0, value: 1 }], words), /All masses are zero/);
    refusal(() => weightedMean([{ mass: -1, value: 1 }], words), /Mass of an oil is −1/);
  });
});

describe('how far offered lies from required', () => {
  const band = (low: number, high: number) => ({ value: (low + high) / 2, low, high });

  it.each([
    [[10, 10], [10, 10], 0],
    [[12, 12], [10, 10], 2],
    [[8, 8], [10, 10], -2],
    [[9, 11], [11, 13], 0],
    [[9, 10.5], [11, 13], -0.5],
    [[14, 16], [11, 13], 1],
    [[5, 20], [11, 13], 0],
  ] as const)('%j against %j is %d', (offered, required, gap) =>
    expect(hlbGap(band(offered[0], offered[1]), band(required[0], required[1]))).toBeCloseTo(gap, 9),
  );

  it('a mean over no mass is none', () => {
    expect(meanBand([])).toBeNull();
    expect(meanBand([{ ...band(4, 6), mass: 0 }])).toBeNull();
    expect(
      meanBand([
        { ...band(4, 6), mass: 1 },
        { ...band(14, 18), mass: 3 },
      ]),
    ).toEqual({ value: 13.25, low: 11.5, high: 15 });
  });
});
