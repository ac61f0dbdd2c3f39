import fc from 'fast-check';
import { calculateHld, hldAt } from '@core/calculators/hld';
import { BLANK_HLD, BLANK_LINE, type HldRequest } from '@core/calculators/hld-request';
import { hldLineData, hldLineOption, hldLineWords, type HldLineData } from '@core/plots/hld-line';
import { plotFigure, plotHlb, plotName, printInk } from '@core/plots/plot-ink';
import { describe, expect, it } from 'vitest';

const ink = printInk('en-GB');
const line = (value: number) => ({ ...BLANK_LINE, name: 'typed', value });
const nonionic: HldRequest = {
  ...BLANK_HLD,
  oils: [line(8)],
  surfactants: [line(1.2)],
  k: 0.15,
  b: 0.13,
  cT: 0.06,
};
const ionic: HldRequest = { ...nonionic, kind: 'ionic', alphaT: 0.01, salinityPercent: 1 };
const dataOf = (request: HldRequest): HldLineData => hldLineData(calculateHld(request, new Map()));

interface Drawn {
  id?: string | number;
  data?: unknown;
  label?: { formatter?: unknown; offset?: number[] };
}
function series(data: HldLineData, id: string): Drawn {
  const all = hldLineOption(data, ink).series;
  const found = Array.isArray(all) ? all.find((one) => one.id === id) : undefined;
  if (!found) throw new Error(`No series “${id}”.`);
  return found as Drawn;
}

describe('the line of HLD over temperature', () => {
  it('runs between tens of degrees, by the law HLD = bS − K·EACN + Cc + cT (T − 25)', () => {
    // By hand: −0.15 × 8 + 1.2 = 0 at 25 °C; −0.06 × 25 = −1.5 at 0 °C; +0.06 × 25 = 1.5 at 50 °C.
    const { ends, at } = dataOf(nonionic);
    expect(ends.map(([celsius]) => celsius)).toEqual([0, 50]);
    expect(ends[0]?.[1]).toBeCloseTo(-1.5, 9);
    expect(ends[1]?.[1]).toBeCloseTo(1.5, 9);
    expect(at[0]).toBe(25);
    expect(at[1]).toBeCloseTo(0, 9);
  });

  it('falls with heat for an ionic surfactant: its hydrophilic side grows', () => {
    const { ends } = dataOf(ionic);
    expect(ends[1]?.[1]).toBeLessThan(ends[0]?.[1] ?? NaN);
  });

  it('shows every temperature that is asked for, with room beyond the warmest', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -20, max: 95 }),
        fc.integer({ min: -20, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        (temperature, coldest, more) => {
          const hottest = coldest + more;
          const { ends } = dataOf({ ...nonionic, temperature, coldest, hottest });
          const [from, to] = [ends[0]?.[0] ?? NaN, ends[1]?.[0] ?? NaN];
          expect(from).toBeLessThanOrEqual(Math.min(0, temperature, coldest));
          expect(to).toBeGreaterThanOrEqual(Math.max(temperature, hottest) + 5);
          expect([Math.abs(from % 10), Math.abs(to % 10)]).toEqual([0, 0]);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('is straight: the law at any temperature between lies on it', () => {
    const { system } = calculateHld(nonionic, new Map());
    const { ends } = dataOf(nonionic);
    const [[from, low], [to, high]] = [ends[0] ?? [NaN, NaN], ends[1] ?? [NaN, NaN]];
    for (const celsius of [7, 33, 48])
      expect(hldAt(system, celsius).value).toBeCloseTo(
        low + ((celsius - from) / (to - from)) * (high - low),
        9,
      );
  });

  it('starts below zero only where something colder is asked for', () => {
    expect(dataOf({ ...nonionic, coldest: -5 }).ends[0]?.[0]).toBe(-10);
    expect(dataOf({ ...nonionic, temperature: -10 }).ends[0]?.[0]).toBe(-10);
    expect(dataOf({ ...nonionic, hottest: 45 }).ends[1]?.[0]).toBe(50);
    expect(dataOf({ ...nonionic, hottest: 46 }).ends[1]?.[0]).toBe(60);
  });
});

describe('the plot of it', () => {
  it('sets the figure off the line: above one that falls, below one that rises', () => {
    const up = series(dataOf(nonionic), 'at').label?.offset?.[1] ?? 0;
    const down = series(dataOf(ionic), 'at').label?.offset?.[1] ?? 0;
    expect(Math.sign(up)).toBe(1);
    expect(Math.sign(down)).toBe(-1);
  });

  it('marks where it inverts, and storage as a band named with its ends', () => {
    const drawn = JSON.stringify(series(dataOf({ ...nonionic, coldest: -5, hottest: 40 }), 'hld'));
    expect(drawn).toContain('"yAxis":0');
    expect(drawn).toContain('storage, −5 to 40\u00a0°C');
    expect(drawn).toContain('"xAxis":-5');
  });

  it('has the whole line within its axis, and the temperature asked for on it', () => {
    const data = dataOf({ ...nonionic, temperature: 30 });
    expect(hldLineOption(data, ink).xAxis).toMatchObject({ min: 0, max: 50 });
    expect(series(data, 'at').data).toEqual([[30, expect.closeTo(0.3, 9)]]);
    expect(series(data, 'at').label?.formatter).toBe('0.3 at 30\u00a0°C');
  });

  it('is told in a sentence, in the region’s numbers', () => {
    expect(hldLineWords(dataOf({ ...nonionic, temperature: 30 }), 'de-DE')).toBe(
      'HLD runs from −1,5 at 0\u00a0°C to 1,5 at 50\u00a0°C. It is 0,3 at 30\u00a0°C. Storage: 5 to 40\u00a0°C.',
    );
  });
});

describe('labels on a plot', () => {
  it('have a real minus, one decimal at most, and never minus nought', () => {
    expect(plotFigure(-1.25, 'en-GB')).toBe('−1.3');
    expect(plotFigure(-0.04, 'en-GB')).toBe('0');
    expect(plotFigure(7, 'en-GB')).toBe('7');
    expect(plotHlb(7, 'en-GB')).toBe('7.0');
    expect(plotHlb(-2.06, 'de-DE')).toBe('−2,1');
    expect(plotHlb(-0.01, 'en-GB')).toBe('0.0');
  });

  it('shorten a name only where it is too long, and say so', () => {
    expect(plotName('Glyceryl Stearate', 17)).toBe('Glyceryl Stearate');
    expect(plotName('Glyceryl Stearate', 9)).toBe('Glyceryl…');
    for (const name of ['x'.repeat(22), 'x'.repeat(23), 'a b c d e f g h i j k l m n'])
      expect(plotName(name).length).toBeLessThanOrEqual(22);
  });
});
