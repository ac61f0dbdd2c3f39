import {
  blendSeries,
  hlbAxisHeight,
  hlbAxisOption,
  hlbAxisWords,
  type AxisMark,
  type HlbAxisData,
} from '@core/plots/hlb-axis';
import { hldLineOption, hldLineWords, type HldLineData } from '@core/plots/hld-line';
import { CHARGE_MARKS, plotFigure, plotHlb, printInk } from '@core/plots/plot-ink';
import {
  hereSeries,
  triangleOption,
  trianglePoint,
  triangleWords,
  type TriangleData,
} from '@core/plots/triangle';
import { LANGUAGE_REGIONS } from '@core/settings/settings';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const ink = printInk('en-GB');
const mark = (hlb: number, part: Partial<AxisMark> = {}): AxisMark => ({
  ...{ id: `m${hlb}`, name: `E ${hlb}`, hlb, charge: 'non-ionic' as const, chosen: false },
  ...part,
});
const axis = (part: Partial<HlbAxisData> = {}): HlbAxisData => ({
  marks: [],
  band: null,
  blend: null,
  partly: false,
  ...part,
});
const seriesOf = (option: { series?: unknown }, id: string): Record<string, unknown> => {
  const found = (option.series as Record<string, unknown>[]).find((one) => one.id === id);
  if (!found) throw new Error(`No series “${id}”.`);
  return found;
};

describe('a plot on paper', () => {
  it('has no colour: every ink is a grey, so that a copier loses nothing', () => {
    for (const [name, value] of Object.entries(ink)) {
      if (typeof value !== 'string' || !value.startsWith('#')) continue;
      const [, red, green, blue] = /^#(..)(..)(..)$/.exec(value) ?? [];
      expect([green, blue], name).toEqual([red, red]);
    }
  });

  it('gives each charge a shape of its own', () => {
    const shapes = Object.values(CHARGE_MARKS);
    expect(new Set(shapes).size).toBe(shapes.length);
  });

  it.each(LANGUAGE_REGIONS)(
    'writes figures in the numbers of %s, never with a hyphen for a minus',
    (region) => {
      for (const value of [-12.34, -0.5, 0, 7, 12.34]) {
        expect(plotHlb(value, region)).not.toContain('-');
        expect(plotFigure(value, region)).not.toContain('-');
        // One decimal, always, in an HLB.
        expect(plotHlb(value, region)).toMatch(/[.,]\d$/);
      }
    },
  );
});

describe('the scale of HLB, read off', () => {
  it('tells of one mark what it is under the pointer, and nothing of what is no mark', () => {
    const { tooltip } = hlbAxisOption(axis({ marks: [mark(4.7)] }), ink);
    const { formatter } = tooltip as unknown as { formatter: (point: unknown) => string };
    expect(formatter({ name: 'Sorbitan Stearate', value: [4.7, 'non-ionic'] })).toBe(
      'Sorbitan Stearate\nHLB 4.7',
    );
    expect(formatter([{ name: 'Steareth-2', value: [4.9, 'non-ionic'] }])).toBe('Steareth-2\nHLB 4.9');
    expect(formatter({ name: 'band', value: undefined })).toBe('');
    expect(formatter([])).toBe('');
  });

  it('has a mark every two units from 0, and ends at an even one', () => {
    for (const hlb of [3, 20, 20.1, 39.9]) {
      const { min, max, interval } = hlbAxisOption(axis({ marks: [mark(hlb)] }), ink)
        .xAxis as unknown as Record<string, number>;
      expect([min, interval, max! % 2]).toEqual([0, 2, 0]);
      expect(max).toBeGreaterThanOrEqual(hlb);
      expect(max! - Math.max(hlb, 20)).toBeLessThan(2);
    }
  });

  it('draws a blend and its line at one place, and neither without a blend', () => {
    const { data, markLine } = blendSeries(10.5, ink) as unknown as {
      data: unknown[][];
      markLine: { data: { xAxis: number }[] };
    };
    expect(data[0]?.[0]).toBe(10.5);
    expect(markLine.data).toEqual([{ xAxis: 10.5 }]);
    const none = blendSeries(null, ink) as unknown as { data: unknown[]; markLine: { data: unknown[] } };
    expect([none.data, none.markLine.data]).toEqual([[], []]);
  });

  it('needs room for each row, and the same however many stand in one', () => {
    const one = hlbAxisHeight(axis({ marks: [mark(4)] }));
    expect(hlbAxisHeight(axis({ marks: [mark(4), mark(8), mark(12)] }))).toBe(one);
    expect(hlbAxisHeight(axis({ marks: [mark(4), mark(8, { charge: 'anionic' })] }))).toBeGreaterThan(one);
    expect(hlbAxisHeight(axis({ marks: [mark(4)], blend: 4 }))).toBeGreaterThan(one);
  });

  it('is told with the figures of the band, in the numbers of the region', () => {
    expect(
      hlbAxisWords(
        axis({ marks: [mark(4)], band: { low: 9.5, high: 11.5, value: 10.5 }, blend: 10 }),
        'de-DE',
      ),
    ).toBe('1 emulsifier on the HLB scale. Required: 10,5, band 9,5 to 11,5. The blend is at 10,0.');
  });
});

describe('the line of HLD, read off', () => {
  const data = (part: Partial<HldLineData> = {}): HldLineData => ({
    ...{ ends: [[0, -1.5] as const, [50, 1.5] as const], at: [30, 0.3] as const, coldest: 5, hottest: 40 },
    ...part,
  });

  it('names the storage band by its ends and sets it between them', () => {
    const { markArea } = seriesOf(
      hldLineOption(data({ coldest: -5, hottest: 37.5 }), ink),
      'hld',
    ) as unknown as {
      markArea: { data: [{ name: string; xAxis: number }, { xAxis: number }][] };
    };
    const [[from, to]] = markArea.data as [[{ name: string; xAxis: number }, { xAxis: number }]];
    expect([from.name, from.xAxis, to.xAxis]).toEqual(['storage, −5 to 37.5\u00a0°C', -5, 37.5]);
  });

  it('tells which side is which emulsion, beside the axis', () => {
    const { name } = hldLineOption(data(), ink).yAxis as unknown as { name: string };
    expect(name).toBe('HLD (below 0 o/w, above 0 w/o)');
  });

  it('without a line still says where the system stands', () => {
    expect(hldLineWords(data({ ends: [] }), 'en-GB')).toMatch(/^It is 0\.3 at 30/);
  });
});

describe('the triangle, read off', () => {
  const triangle = (part: Partial<TriangleData> = {}): TriangleData => ({
    ...{ names: ['A', 'B', 'C'] as const, hlbs: [4.7, 10, null] as const, region: [], here: [0.2, 0.3, 0.5] },
    ...part,
  });
  const shares = fc
    .tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }))
    .filter(([a, b]) => a + b <= 100)
    .map(([a, b]): [number, number, number] => [a / 100, b / 100, (100 - a - b) / 100]);

  it('is told with shares that come to 100 %, wherever it stands', () => {
    fc.assert(
      fc.property(shares, (here) => {
        const told = triangleWords(triangle({ here }), 'en-GB');
        const percents = [...told.matchAll(/([\d.]+)\u00a0%/g)].map(([, one]) => Number(one));
        expect(percents.reduce((sum, one) => sum + one, 0)).toBeCloseTo(100, 6);
      }),
      { numRuns: 30 },
    );
  });

  it('marks the system where its shares put it, and its region corner by corner', () => {
    const region: [number, number, number][] = [
      [1, 0, 0],
      [0.5, 0.5, 0],
      [0.5, 0, 0.5],
    ];
    const option = triangleOption(triangle({ region }), ink);
    expect(hereSeries([0, 0, 1], ink).data).toEqual([trianglePoint([0, 0, 1])]);
    const { renderItem } = seriesOf(option, 'region') as unknown as {
      renderItem: (
        params: unknown,
        api: { coord: (at: number[]) => number[] },
      ) => { shape: { points: number[][] } };
    };
    expect(renderItem({}, { coord: (at) => at }).shape.points).toEqual(region.map(trianglePoint));
  });
});
