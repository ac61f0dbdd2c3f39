import fc from 'fast-check';
import { CHARGES, type Charge } from '@core/materials/vocabulary';
import {
  hlbAxisHeight,
  hlbAxisOption,
  hlbAxisWords,
  type AxisMark,
  type HlbAxisData,
} from '@core/plots/hlb-axis';
import { printInk } from '@core/plots/plot-ink';
import { describe, expect, it } from 'vitest';

const ink = printInk('en-GB');
const mark = (hlb: number, part: Partial<AxisMark> = {}): AxisMark => ({
  id: `m${hlb}`,
  name: `Emulsifier ${hlb}`,
  hlb,
  charge: 'non-ionic',
  chosen: false,
  ...part,
});
const plot = (part: Partial<HlbAxisData>): HlbAxisData => ({
  marks: [],
  band: null,
  blend: null,
  partly: false,
  ...part,
});

interface Drawn {
  id?: string | number;
  name?: string;
  value: [number, string];
  symbol: string;
  symbolOffset: [number, number];
  label?: { position: string };
}
function series(data: HlbAxisData, id: string) {
  const all = hlbAxisOption(data, ink).series;
  const found = Array.isArray(all) ? all.find((one) => one.id === id) : undefined;
  if (!found) throw new Error(`No series “${id}”.`);
  return found;
}
const drawn = (data: HlbAxisData, id: string) => series(data, id).data as Drawn[];
const rows = (data: HlbAxisData): string[] => {
  const axis = hlbAxisOption(data, ink).yAxis;
  return (Array.isArray(axis) ? [] : ((axis as { data?: string[] }).data ?? [])) as string[];
};

const anyMark: fc.Arbitrary<AxisMark> = fc.record({
  id: fc.uuid(),
  name: fc.string({ minLength: 1, maxLength: 40 }),
  hlb: fc.double({ min: 0, max: 40, noNaN: true }),
  charge: fc.option(fc.constantFrom<Charge>(...CHARGES)),
  chosen: fc.boolean(),
});
const anyPlot: fc.Arbitrary<HlbAxisData> = fc.record({
  marks: fc.array(anyMark, { maxLength: 40 }),
  band: fc.option(
    fc
      .tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }))
      .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b), value: (a + b) / 2 })),
  ),
  blend: fc.option(fc.double({ min: 0, max: 40, noNaN: true })),
  partly: fc.boolean(),
});
const scale = (data: HlbAxisData): { min: number; max: number; interval: number } => {
  const axis = hlbAxisOption(data, ink).xAxis;
  return axis as unknown as { min: number; max: number; interval: number };
};

describe('emulsifiers along the HLB scale', () => {
  it('puts every emulsifier at its own HLB, in a row that the axis has, once', () => {
    fc.assert(
      fc.property(anyPlot, (data) => {
        const all = [...drawn(data, 'shelf'), ...drawn(data, 'chosen')];
        expect(all.map(({ id, value }) => `${id} ${value[0]}`).sort()).toEqual(
          data.marks.map(({ id, hlb }) => `${id} ${hlb}`).sort(),
        );
        for (const one of all) expect(rows(data)).toContain(one.value[1]);
        expect(new Set(rows(data)).size).toBe(rows(data).length);
      }),
      { numRuns: 40 },
    );
  });

  it('ends where all marks and the whole band lie within it, and never short of Griffin’s 20', () => {
    fc.assert(
      fc.property(anyPlot, (any) => {
        const data = { ...any, partly: false };
        const { xAxis } = hlbAxisOption(data, ink);
        const { min, max } = xAxis as { min: number; max: number };
        expect(min).toBe(0);
        expect(max).toBeGreaterThanOrEqual(
          Math.max(20, data.band?.high ?? 0, ...data.marks.map((m) => m.hlb)),
        );
        expect(max % 2).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  it('is as long as Davies’ figure for sodium lauryl sulfate asks, 40, and 20 for an empty shelf', () => {
    expect(hlbAxisOption(plot({ marks: [mark(40)] }), ink).xAxis).toMatchObject({ max: 40 });
    expect(hlbAxisOption(plot({ marks: [mark(20)] }), ink).xAxis).toMatchObject({ max: 20 });
    expect(hlbAxisOption(plot({ marks: [mark(20.1)] }), ink).xAxis).toMatchObject({ max: 22 });
    expect(hlbAxisOption(plot({}), ink).xAxis).toMatchObject({ max: 20 });
  });

  it('gives each charge a row in words and a marker of its own, so that colour tells nothing alone', () => {
    const charges = [...CHARGES, null];
    const data = plot({ marks: charges.map((charge, at) => mark(at + 1, { charge })) });
    expect(rows(data)).toEqual(['not recorded', 'amphoteric', 'cationic', 'anionic', 'non-ionic']);
    const symbols = drawn(data, 'shelf').map((one) => one.symbol);
    expect(new Set(symbols).size).toBe(charges.length);
  });

  it('has rows only for what is there, and two more once something stands on the bench', () => {
    const shelf = [mark(4), mark(15, { charge: 'anionic' })];
    expect(rows(plot({ marks: shelf }))).toEqual(['anionic', 'non-ionic']);
    expect(rows(plot({ marks: [...shelf, mark(9, { chosen: true })] }))).toEqual([
      'their blend',
      'on the bench',
      'anionic',
      'non-ionic',
    ]);
    // A charge that only an emulsifier of the bench has needs no row of the shelf.
    expect(rows(plot({ marks: [mark(9, { chosen: true, charge: 'cationic' })] }))).toEqual([
      'their blend',
      'on the bench',
    ]);
  });

  it('is higher by one row for each row that it has', () => {
    const one = hlbAxisHeight(plot({ marks: [mark(4)] }));
    const two = hlbAxisHeight(plot({ marks: [mark(4), mark(5, { charge: 'anionic' })] }));
    const four = hlbAxisHeight(plot({ marks: [mark(4), mark(5, { charge: 'anionic' })], blend: 9 }));
    expect(four - two).toBe(2 * (two - one));
    expect(hlbAxisHeight(plot({ marks: [mark(4), mark(15)] }))).toBe(one);
  });

  it('stacks emulsifiers of one HLB apart from each other, and keeps those of another charge out of the stack', () => {
    const alike = plot({ marks: Array.from({ length: 5 }, (_, at) => mark(10, { id: `same ${at}` })) });
    const places = drawn(alike, 'shelf').map((one) => one.symbolOffset[1]);
    expect(new Set(places).size).toBe(5);
    expect(places[0]).toBe(0);
    expect(Math.max(...places)).toBe(-Math.min(...places));
    const twoRows = plot({ marks: [mark(10), mark(10, { id: 'other', charge: 'anionic' })] });
    expect(drawn(twoRows, 'shelf').map((one) => one.symbolOffset[1])).toEqual([0, 0]);
  });

  it('does not depend on the order in which the shelf is read', () => {
    const marks = [mark(3), mark(15), mark(8.5), mark(11, { charge: 'cationic' })];
    const sorted = (data: HlbAxisData) => JSON.stringify(drawn(data, 'shelf'));
    expect(sorted(plot({ marks: [...marks].reverse() }))).toBe(sorted(plot({ marks })));
  });

  it('keeps the names of neighbours on the bench apart: above and below by turns along the scale', () => {
    const data = plot({ marks: [15, 4, 10].map((hlb) => mark(hlb, { chosen: true })) });
    expect(drawn(data, 'chosen').map(({ value, label }) => [value[0], label?.position])).toEqual([
      [4, 'top'],
      [10, 'bottom'],
      [15, 'top'],
    ]);
  });

  it('draws the band with its three figures in words, the blend with its own, and neither where there is none', () => {
    const band = { low: 9.5, high: 11.5, value: 10.46 };
    const area = (data: HlbAxisData) => JSON.stringify(series(data, 'band'));
    expect(area(plot({ band }))).toContain('required 10.5 (9.5 to 11.5)');
    expect(area(plot({ band }))).toContain('"xAxis":11.5');
    expect(area(plot({}))).not.toContain('required');
    expect(series(plot({ blend: 10.04 }), 'blend').data).toEqual([[10.04, 'their blend']]);
    expect(JSON.stringify(series(plot({ blend: 10.04 }), 'blend'))).toContain('"10.0"');
    expect(series(plot({}), 'blend').data).toEqual([]);
    // A blend of 0 is a blend.
    expect(series(plot({ blend: 0 }), 'blend').data).toEqual([[0, 'their blend']]);
  });
});

describe('the words for the scale', () => {
  it('tell what is drawn, one or many, with and without band and blend', () => {
    expect(hlbAxisWords(plot({ marks: [mark(4)] }), 'en-GB')).toBe('1 emulsifier on the HLB scale.');
    expect(hlbAxisWords(plot({}), 'en-GB')).toBe('0 emulsifiers on the HLB scale.');
    const full = plot({
      marks: [mark(4), mark(15)],
      band: { low: 9.5, high: 11.5, value: 10.5 },
      blend: 10.25,
    });
    expect(hlbAxisWords(full, 'de-DE')).toBe(
      '2 emulsifiers on the HLB scale. Required: 10,5, band 9,5 to 11,5. The blend is at 10,3.',
    );
  });
});

describe('the scale', () => {
  it('is whole where the whole shelf is on it, whatever lies on it', () => {
    expect(scale(plot({ marks: [mark(9.8), mark(10.1)] }))).toMatchObject({ min: 0, max: 20, interval: 2 });
    expect(scale(plot({ marks: [mark(40)] }))).toMatchObject({ min: 0, max: 40 });
  });

  it('is the part around the target where more lie beyond, so that marks a tenth apart stand apart', () => {
    const marks = Array.from({ length: 25 }, (_, at) => mark(9 + at / 10, { id: `near ${at}` }));
    const data = plot({ marks, band: { low: 9.5, high: 10.5, value: 10 }, partly: true });
    expect(scale(data)).toMatchObject({ min: 8.5, max: 11.5, interval: 0.5 });
    const columns = drawn(data, 'shelf').filter(({ symbolOffset }) => symbolOffset[1] === 0);
    expect(columns.length).toBe(25);
  });

  it('reaches to an emulsifier on the bench that lies far away', () => {
    const data = plot({ marks: [mark(10), mark(3, { chosen: true })], partly: true });
    expect(scale(data)).toMatchObject({ min: 2, max: 11, interval: 1 });
  });

  it('shows all that is on it, with room at its ends, from figures that are its steps', () => {
    fc.assert(
      fc.property(anyPlot, (data) => {
        const { min, max, interval } = scale(data);
        for (const { hlb } of data.marks) {
          expect(hlb).toBeGreaterThanOrEqual(min);
          expect(hlb).toBeLessThanOrEqual(max);
        }
        for (const end of [min, max]) expect(Number.isInteger(end / interval)).toBe(true);
        expect((max - min) / interval).toBeLessThanOrEqual(24);
      }),
    );
  });
});
