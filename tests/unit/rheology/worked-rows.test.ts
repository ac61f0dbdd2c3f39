import { cubeRootViscosity, logMixViscosity, refutasIndex, refutasViscosity } from '@core/rheology/mixing';
import { glycerolViscosity, viscosityAt } from '@core/rheology/temperature';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const mix = (...rows: readonly (readonly [number, number])[]) =>
  rows.map(([fraction, viscosity]) => ({ fraction, viscosity }));
const LAWS = { logMixViscosity, cubeRootViscosity, refutasViscosity };

describe('the viscosity of a mixture by hand', () => {
  it.each([
    // Fraction and mPa·s of each; by logarithms, by cube roots.
    [
      [
        [0.5, 10],
        [0.5, 1000],
      ],
      100,
      224.447,
    ],
    [
      [
        [0.5, 1],
        [0.5, 1000],
      ],
      31.623,
      166.375,
    ],
    [
      [
        [0.25, 16],
        [0.75, 16],
      ],
      16,
      16,
    ],
    [
      [
        [0.9, 10],
        [0.1, 10_000],
      ],
      19.953,
      68.59,
    ],
    [[[1, 50]], 50, 50],
    [
      [
        [0, 10],
        [1, 50],
      ],
      50,
      50,
    ],
  ] as const)('%j', (rows, byLogarithms, byCubeRoots) => {
    expect(logMixViscosity(mix(...rows)).value).toBeCloseTo(byLogarithms, 2);
    expect(cubeRootViscosity(mix(...rows)).value).toBeCloseTo(byCubeRoots, 1);
  });

  it.each([
    // 14.534 × ln ln(v + 0.8) + 10.975.
    [10, 23.575],
    [1, 3.254],
    [100, 33.216],
    [1000, 39.065],
  ])('Refutas’ index of %d is %d', (viscosity, index) =>
    expect(refutasIndex(viscosity).value).toBeCloseTo(index, 1),
  );

  it.each(Object.entries(LAWS))(
    '%s refuses no parts, fractions that miss one, and no viscosity',
    (_, law) => {
      refusal(() => law([]), /./);
      refusal(() => law(mix([0.5, 10], [0.4, 10])), /./);
      refusal(() => law(mix([50, 10], [50, 10])), /./);
      refusal(() => law(mix([0.5, 0], [0.5, 10])), /./);
      refusal(() => law(mix([0.5, Number.NaN], [0.5, 10])), /not a number/);
    },
  );
});

describe('the viscosity at another temperature', () => {
  it.each([
    // Glycerol in water: Segur and Oberstar 1951, mPa·s at 20 °C, from memory; the formula keeps within some per cent.
    [0, 20, 1.005],
    [10, 20, 1.31],
    [30, 20, 2.5],
    [50, 20, 6],
    [60, 20, 10.8],
    [80, 20, 60.1],
    [100, 20, 1410],
    [50, 40, 3.07],
    [100, 40, 284],
  ])('%d %% of glycerol at %d °C: %d mPa·s', (percent, temperature, viscosity) => {
    const { value } = glycerolViscosity(percent, temperature);
    expect(Math.abs(value / viscosity - 1)).toBeLessThan(0.06);
  });

  it('falls with warmth and rises with glycerol', () => {
    for (let percent = 0; percent < 100; percent += 20)
      for (let temperature = 0; temperature < 100; temperature += 20) {
        const here = glycerolViscosity(percent, temperature).value;
        expect(glycerolViscosity(percent, temperature + 10).value).toBeLessThan(here);
        expect(glycerolViscosity(percent + 10, temperature).value).toBeGreaterThan(here);
      }
  });

  it('through two readings passes both, and is refused where they say nothing', () => {
    const [cool, warm] = [
      { temperature: 20, viscosity: 100 },
      { temperature: 40, viscosity: 25 },
    ];
    expect(viscosityAt(cool, warm, 20).value).toBeCloseTo(100, 6);
    expect(viscosityAt(cool, warm, 40).value).toBeCloseTo(25, 6);
    expect(viscosityAt(cool, warm, 30).value).toBeCloseTo(viscosityAt(warm, cool, 30).value, 6);
    refusal(() => viscosityAt(cool, { ...warm, temperature: 20 }, 30), /./);
    refusal(() => viscosityAt(cool, { ...warm, viscosity: 0 }, 30), /./);
    refusal(() => glycerolViscosity(101, 20), /Glycerol is 101/);
    refusal(() => glycerolViscosity(50, 101), /Temperature is 101/);
  });
});
