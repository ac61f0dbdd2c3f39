import type { LineSeriesOption, ScatterSeriesOption } from 'echarts/charts';
import type {
  GridComponentOption,
  MarkAreaComponentOption,
  MarkLineComponentOption,
} from 'echarts/components';
import type { ComposeOption } from 'echarts/core';
import { hldAt, type HldCalculated } from '../calculators/hld';
import type { Region } from '../locale/numbers';
import { plotFigure, type PlotInk } from './plot-ink';

export type HldLineOption = ComposeOption<
  | LineSeriesOption
  | ScatterSeriesOption
  | GridComponentOption
  | MarkAreaComponentOption
  | MarkLineComponentOption
>;

export interface HldLineData {
  /** °C and HLD at the ends of the line; HLD is linear in temperature. */
  ends: readonly [temperature: number, hld: number][];
  /** The temperature asked for, with its HLD. */
  at: readonly [temperature: number, hld: number];
  /** Storage temperatures, °C. */
  coldest: number;
  hottest: number;
}

export const HLD_LINE_HEIGHT = 260;
/** The plot ends at tens of degrees. */
const TENS = 10;

/** The line's data: from 0 °C or colder to beyond the warmest temperature asked for. */
export function hldLineData({ system, temperature, window }: HldCalculated): HldLineData {
  const { coldest, hottest } = window;
  const from = TENS * Math.floor(Math.min(0, temperature, coldest) / TENS);
  const to = TENS * Math.ceil(Math.max(temperature, hottest) / TENS + 0.5);
  const at = (celsius: number): [number, number] => [celsius, hldAt(system, celsius).value];
  return { ends: [at(from), at(to)], at: at(temperature), coldest, hottest };
}

function axis(name: string, ink: PlotInk) {
  return {
    type: 'value' as const,
    name,
    nameLocation: 'middle' as const,
    nameTextStyle: { color: ink.soft, fontSize: ink.size },
    axisLine: { show: true, onZero: false, lineStyle: { color: ink.soft } },
    axisLabel: {
      color: ink.soft,
      fontSize: ink.size,
      formatter: (value: number) => plotFigure(value, ink.region),
    },
    splitLine: { lineStyle: { color: ink.rule, width: 0.5 } },
  };
}

function line({ ends, coldest, hottest }: HldLineData, ink: PlotInk): LineSeriesOption {
  return {
    id: 'hld',
    type: 'line',
    symbol: 'none',
    lineStyle: { color: ink.accent, width: 2 },
    data: ends.map(([temperature, hld]) => [temperature, hld]),
    markLine: {
      symbol: 'none',
      silent: true,
      animation: false,
      lineStyle: { color: ink.ink, width: 1.2, type: 'solid' },
      label: { formatter: '0: inverts', position: 'insideStartTop', color: ink.ink, fontSize: ink.size },
      data: [{ yAxis: 0 }],
    },
    markArea: {
      silent: true,
      itemStyle: { color: ink.band, borderColor: ink.soft, borderWidth: 1, borderType: 'dashed' },
      label: { position: 'top', color: ink.ink, fontSize: ink.size },
      data: [
        [
          {
            name: `storage, ${plotFigure(coldest, ink.region)} to ${plotFigure(hottest, ink.region)} °C`,
            xAxis: coldest,
          },
          { xAxis: hottest },
        ],
      ],
    },
  };
}

/** HLD over temperature, with the storage window as a band and zero as a line. */
export function hldLineOption(data: HldLineData, ink: PlotInk): HldLineOption {
  const temperatures = data.ends.map(([temperature]) => temperature);
  const falling = (data.ends.at(-1)?.[1] ?? 0) < (data.ends[0]?.[1] ?? 0);
  return {
    animation: false,
    textStyle: { fontFamily: ink.font, color: ink.ink },
    grid: { left: 52, right: 20, top: 26, bottom: 42 },
    xAxis: {
      ...axis('Temperature, °C', ink),
      nameGap: 26,
      min: Math.min(...temperatures),
      max: Math.max(...temperatures),
    },
    yAxis: { ...axis('HLD (below 0 o/w, above 0 w/o)', ink), nameGap: 34 },
    series: [
      line(data, ink),
      {
        id: 'at',
        type: 'scatter',
        z: 5,
        symbol: 'diamond',
        symbolSize: 12,
        silent: true,
        itemStyle: { color: ink.ink },
        label: {
          show: true,
          position: 'right',
          // Off the line: above one that falls, below one that rises.
          offset: [2, falling ? -12 : 12],
          formatter: `${plotFigure(data.at[1], ink.region)} at ${plotFigure(data.at[0], ink.region)} °C`,
          color: ink.ink,
          fontSize: ink.size,
          textBorderColor: ink.paper,
          textBorderWidth: ink.halo,
        },
        data: [[...data.at]],
      },
    ],
  };
}

/** The plot in a sentence, for who cannot see it. */
export function hldLineWords({ ends, at, coldest, hottest }: HldLineData, region: Region): string {
  const [from, to] = [ends[0], ends.at(-1)];
  const line =
    from && to
      ? `HLD runs from ${plotFigure(from[1], region)} at ${plotFigure(from[0], region)} °C to ${plotFigure(to[1], region)} at ${plotFigure(to[0], region)} °C. `
      : '';
  return `${line}It is ${plotFigure(at[1], region)} at ${plotFigure(at[0], region)} °C. Storage: ${plotFigure(coldest, region)} to ${plotFigure(hottest, region)} °C.`;
}
