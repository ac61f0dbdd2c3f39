import fc from 'fast-check';
import type { Mix } from '@core/emulsions/bench/feasible-region';
import { readBench, type BenchInput } from '@core/emulsions/bench/reading';
import type { Material } from '@core/materials/material';
import { axisData, triangleData } from '@core/plots/bench-plots';
import { printInk } from '@core/plots/plot-ink';
import { triangleOption, trianglePoint, triangleWords, type TriangleData } from '@core/plots/triangle';
import { describe, expect, it } from 'vitest';
import { sampleMaterial } from '../sheets/sample-materials';

const ink = printInk('en-GB');
const mix: fc.Arbitrary<Mix> = fc
  .tuple(...[0, 1, 2].map(() => fc.double({ min: 0.001, max: 1, noNaN: true })))
  .map((parts) => {
    const whole = parts.reduce((sum, part) => sum + part, 0);
    return parts.map((part) => part / whole) as unknown as Mix;
  });
const distance = ([ax, ay]: [number, number], [bx, by]: [number, number]) => Math.hypot(ax - bx, ay - by);

describe('a mix in the triangle', () => {
  it('stands on its corner when alone, in the middle when even', () => {
    expect(trianglePoint([1, 0, 0])).toEqual([0, 0]);
    expect(trianglePoint([0, 1, 0])).toEqual([1, 0]);
    expect(trianglePoint([0, 0, 1])).toEqual([0.5, Math.sqrt(3) / 2]);
    const [x, y] = trianglePoint([1 / 3, 1 / 3, 1 / 3]);
    expect(x).toBeCloseTo(0.5, 12);
    expect(y).toBeCloseTo(Math.sqrt(3) / 6, 12);
  });

  it('is at one distance from every side together, the height of the triangle (Viviani), each its share', () => {
    const sides: [[number, number], [number, number]][] = [
      [
        [1, 0],
        [0.5, Math.sqrt(3) / 2],
      ],
      [
        [0, 0],
        [0.5, Math.sqrt(3) / 2],
      ],
      [
        [0, 0],
        [1, 0],
      ],
    ];
    fc.assert(
      fc.property(mix, (shares) => {
        const [x, y] = trianglePoint(shares);
        sides.forEach(([[ax, ay], [bx, by]], corner) => {
          const off = Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / distance([ax, ay], [bx, by]);
          expect(off).toBeCloseTo((shares[corner] ?? NaN) * (Math.sqrt(3) / 2), 9);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('lies between two mixes where it is made of both', () => {
    fc.assert(
      fc.property(mix, mix, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, t) => {
        const both = a.map((share, at) => share + t * ((b[at] ?? 0) - share)) as unknown as Mix;
        const [pa, pb, p] = [trianglePoint(a), trianglePoint(b), trianglePoint(both)];
        expect(distance(pa, p)).toBeCloseTo(t * distance(pa, pb), 9);
      }),
      { numRuns: 40 },
    );
  });
});

const emulsifier = (name: string, hlb: number | null, more: Partial<Material> = {}): Material => ({
  ...sampleMaterial(name, [[name, 100]], {
    functions: ['emulsifier'],
    charge: 'non-ionic',
    architecture: 'classic',
    figures:
      hlb === null
        ? {}
        : { hlb: { low: null, value: hlb, high: null, provenance: 'supplier', source: 'leaflet' } },
  }),
  ...more,
});
const LOW = emulsifier('Sorbitan Stearate', 4.7);
const MIDDLE = emulsifier('Steareth-10', 10);
const HIGH = emulsifier('Polysorbate 60', 14.9);
const POLYMER = emulsifier('Acrylates Crosspolymer', 9, { architecture: 'polymeric', charge: 'anionic' });

const read = (part: Partial<BenchInput>) =>
  readBench({ emulsionType: 'o/w', oils: [], emulsifiers: [], rest: [], targetHlb: null, ...part });
const at = (material: Material, percent: number) => ({ material, percent });
const dataOf = (emulsifiers: BenchInput['emulsifiers'], targetHlb: number | null = null) =>
  triangleData(emulsifiers, read({ emulsifiers, targetHlb }));

describe('three emulsifiers of the bench as a triangle', () => {
  const three = [at(LOW, 1), at(MIDDLE, 2), at(HIGH, 2)];

  it('is drawn for three, and for no other number', () => {
    expect(dataOf([])).toBeNull();
    expect(dataOf(three.slice(0, 2))).toBeNull();
    expect(dataOf([...three, at(POLYMER, 1)])).toBeNull();
    expect(dataOf(three)?.names).toEqual(['Sorbitan Stearate', 'Steareth-10', 'Polysorbate 60']);
  });

  it('is not drawn where the three come to nothing', () => {
    expect(dataOf([at(LOW, 0), at(MIDDLE, 0), at(HIGH, 0)])).toBeNull();
  });

  it('stands at the shares that they have of the emulsifiers, not of the formula', () => {
    expect(dataOf(three)?.here).toEqual([0.2, 0.4, 0.4]);
  });

  it('gives an emulsifier whose HLB no mean describes no HLB, also when one is recorded', () => {
    expect(dataOf([at(LOW, 1), at(HIGH, 1), at(POLYMER, 1)])?.hlbs).toEqual([4.7, 14.9, null]);
    expect(dataOf([at(LOW, 1), at(HIGH, 1), at(emulsifier('Unknown', null), 1)])?.hlbs).toEqual([
      4.7,
      14.9,
      null,
    ]);
  });

  it('holds in its region what the system would do with a target that it meets', () => {
    // By hand: 0.2 × 4.7 + 0.4 × 10 + 0.4 × 14.9 = 10.9.
    const met = dataOf(three, 10.9);
    expect(met?.region.length).toBeGreaterThan(2);
    for (const [a, b, c] of met?.region ?? [])
      expect(Math.abs(a * 4.7 + b * 10 + c * 14.9 - 10.9)).toBeLessThanOrEqual(1 + 1e-6);
    expect(dataOf(three, 19)?.region).toEqual([]);
  });

  it('keeps each within the usage that its supplier gives', () => {
    const capped = {
      ...HIGH,
      usage: { minPpm: null, typicalPpm: null, maxPpm: 10_000, provenance: 'supplier', source: '' },
    };
    const region = dataOf([at(LOW, 1), at(MIDDLE, 3), at(capped as Material, 1)])?.region ?? [];
    expect(region.length).toBeGreaterThan(2);
    // 1 % of 5 % in all is a fifth.
    for (const [, , share] of region) expect(share).toBeLessThanOrEqual(0.2 + 1e-9);
  });
});

describe('the drawing of the triangle', () => {
  const data: TriangleData = {
    names: ['Sorbitan Stearate', 'Steareth-10', 'An emulsifier with a very long trade name'],
    hlbs: [4.7, null, 14.9],
    region: [],
    here: [0.2, 0.4, 0.4],
  };
  const series = (of: TriangleData) => {
    const all = triangleOption(of, ink).series;
    return Array.isArray(all) ? all : [];
  };

  it('names each corner with its HLB, or says that it has none', () => {
    const corners = series(data).find((one) => one.id === 'corners')?.data as {
      name: string;
      value: number[];
    }[];
    expect(corners.map((one) => one.name)).toEqual([
      'Sorbitan Stearate\nHLB 4.7',
      'Steareth-10\nno HLB',
      'An emulsifier with a…\nHLB 14.9',
    ]);
    expect(corners[1]?.value).toEqual([1, 0]);
  });

  it('has a grid line for each share of each emulsifier, all of them within the triangle and of its own length', () => {
    const grid = series(data).filter((one) => String(one.id).startsWith('grid'));
    expect(grid).toHaveLength(12);
    for (const one of grid) {
      const [from, to] = one.data as [[number, number], [number, number]];
      const share = Number(String(one.id).split(' ')[2]);
      // A line of equal share is as long as what is left of the side.
      expect(distance(from, to)).toBeCloseTo(1 - share, 9);
    }
  });

  it('draws no region where there is none', () => {
    expect(series(data).find((one) => one.id === 'region')?.data).toEqual([]);
    const some = {
      ...data,
      region: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as Mix[],
    };
    expect(series(some).find((one) => one.id === 'region')?.data).toHaveLength(1);
  });

  it('is told in a sentence, with per cents in the region’s numbers', () => {
    expect(triangleWords({ ...data, names: ['A', 'B', 'C'], here: [0.125, 0.5, 0.375] }, 'de-DE')).toBe(
      'Triangle of A, B, C. No mix of these three meets all demands. Now: A 12,5\u00a0%, B 50\u00a0%, C 37,5\u00a0%.',
    );
    const region = (...corners: Mix[]) => triangleWords({ ...data, region: corners }, 'en-GB');
    expect(region([1, 0, 0])).toContain('The demands hold for one mix only, listed in the table.');
    expect(region([1, 0, 0], [0, 1, 0])).toContain('The demands hold on a line between two mixes, listed');
    expect(region([1, 0, 0], [0, 1, 0], [0, 0, 1])).toContain('hold in a region with 3 corners, listed');
  });
});

describe('the scale beside the bench', () => {
  const shelf = [LOW, MIDDLE, HIGH].map(({ id, tradeName, charge }, index) => ({
    id,
    name: tradeName,
    hlb: [4.7, 10, 14.9][index] ?? NaN,
    charge,
  }));

  it('shows an emulsifier of the bench once, as chosen, and the rest of the shelf as it is', () => {
    const emulsifiers = [at(HIGH, 2)];
    const { marks } = axisData(emulsifiers, read({ emulsifiers }), shelf);
    expect(marks.map(({ name, chosen }) => [name, chosen])).toEqual([
      ['Polysorbate 60', true],
      ['Sorbitan Stearate', false],
      ['Steareth-10', false],
    ]);
  });

  it('leaves out an emulsifier of the bench without an HLB, and a blend that no HLB describes', () => {
    const emulsifiers = [at(emulsifier('Unknown', null), 2)];
    const found = axisData(emulsifiers, read({ emulsifiers }), []);
    expect(found).toMatchObject({ marks: [], blend: null, band: null });
  });

  it('stands the blend at the mean by mass of what HLB describes', () => {
    // By hand: (1 × 4.7 + 3 × 14.9) / 4 = 12.35.
    const emulsifiers = [at(LOW, 1), at(HIGH, 3)];
    expect(axisData(emulsifiers, read({ emulsifiers }), shelf).blend).toBeCloseTo(12.35, 9);
  });
});
