import type { CustomSeriesOption, LineSeriesOption, ScatterSeriesOption } from 'echarts/charts';
import type { GridComponentOption, TooltipComponentOption } from 'echarts/components';
import type { ComposeOption } from 'echarts/core';
import type { Mix } from '../emulsions/bench/feasible-region';
import type { Region } from '../locale/numbers';
import { plotFigure, plotHlb, plotName, type PlotInk } from './plot-ink';

export type TriangleOption = ComposeOption<
  CustomSeriesOption | LineSeriesOption | ScatterSeriesOption | GridComponentOption | TooltipComponentOption
>;

export interface TriangleData {
  names: readonly [string, string, string];
  hlbs: readonly [number | null, number | null, number | null];
  /** The feasible region's corners in order, from `feasibleRegion`. */
  region: readonly Mix[];
  /** Where the system on the bench stands. */
  here: Mix;
}

const HEIGHT = Math.sqrt(3) / 2;
export const TRIANGLE_SIDE = 300;
export const TRIANGLE_HEIGHT = Math.round(TRIANGLE_SIDE * HEIGHT) + 84;
/** Shares at which grid lines run. */
const GRID = [0.2, 0.4, 0.6, 0.8];

type Point = [x: number, y: number];

/** Where a mix stands: the first one at the lower left, the second at the lower right, the third on top. */
export function trianglePoint(mix: Mix): Point {
  return [mix[1] + mix[2] / 2, mix[2] * HEIGHT];
}

function lineSeries(id: string, points: Point[], style: LineSeriesOption['lineStyle']): LineSeriesOption {
  return { id, type: 'line', data: points, symbol: 'none', silent: true, lineStyle: style };
}

function gridLines(ink: PlotInk): LineSeriesOption[] {
  const style = { color: ink.rule, width: 0.6 };
  return GRID.flatMap((share) => {
    const rest = 1 - share;
    const ends: [Mix, Mix][] = [
      [
        [share, rest, 0],
        [share, 0, rest],
      ],
      [
        [rest, share, 0],
        [0, share, rest],
      ],
      [
        [rest, 0, share],
        [0, rest, share],
      ],
    ];
    return ends.map(([from, to], side) =>
      lineSeries(`grid ${side} ${share}`, [trianglePoint(from), trianglePoint(to)], style),
    );
  });
}

function regionSeries(region: readonly Mix[], ink: PlotInk): CustomSeriesOption {
  return {
    id: 'region',
    type: 'custom',
    silent: true,
    z: 2,
    data: region.length > 0 ? [[0, 0]] : [],
    renderItem: (_params, api) => ({
      type: 'polygon',
      shape: { points: region.map((mix) => api.coord(trianglePoint(mix))) },
      style: { fill: ink.band, stroke: ink.ink, lineWidth: 1.5, lineDash: [5, 3] },
    }),
  };
}

/** Names at the foot run inwards from a little outside their corners: on a telephone there is no room beside them. */
const CORNER_LABELS = [
  { position: 'bottom', align: 'left', offset: [-24, 0] },
  { position: 'bottom', align: 'right', offset: [24, 0] },
  { position: 'top' },
] as const satisfies readonly ScatterSeriesOption['label'][];

function cornerSeries({ names, hlbs }: TriangleData, ink: PlotInk): ScatterSeriesOption {
  const corners: Mix[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return {
    id: 'corners',
    type: 'scatter',
    silent: true,
    symbolSize: 5,
    itemStyle: { color: ink.ink },
    label: { show: true, color: ink.ink, fontSize: ink.size, formatter: ({ name }) => name },
    data: corners.map((corner, index) => {
      const hlb = hlbs[index] ?? null;
      const words = hlb === null ? 'no HLB' : `HLB ${plotHlb(hlb, ink.region)}`;
      return {
        name: `${plotName(names[index] ?? '', 22)}\n${words}`,
        value: trianglePoint(corner),
        label: CORNER_LABELS[index],
      };
    }),
  };
}

/** The mark that a drag moves. */
export function hereSeries(here: Mix, ink: PlotInk): ScatterSeriesOption {
  return {
    id: 'here',
    type: 'scatter',
    silent: true,
    z: 6,
    symbol: 'diamond',
    symbolSize: 15,
    itemStyle: { color: ink.ink, borderColor: ink.paper, borderWidth: 1.5 },
    label: {
      show: true,
      position: 'right',
      color: ink.ink,
      fontSize: ink.size,
      fontWeight: 600,
      formatter: 'now',
      textBorderColor: ink.paper,
      textBorderWidth: ink.halo,
    },
    data: [trianglePoint(here)],
  };
}

/**
 * The shares of three emulsifiers as a triangle: each corner is one alone, the dashed region is where every demand
 * holds, the diamond is the system on the bench.
 */
export function triangleOption(data: TriangleData, ink: PlotInk): TriangleOption {
  const edge: Point[] = [
    [0, 0],
    [1, 0],
    [0.5, HEIGHT],
    [0, 0],
  ];
  const hidden = { show: false, min: 0 };
  return {
    animation: false,
    textStyle: { fontFamily: ink.font, color: ink.ink },
    grid: { left: 'center', top: 40, width: TRIANGLE_SIDE, height: TRIANGLE_SIDE * HEIGHT },
    xAxis: { type: 'value', ...hidden, max: 1 },
    yAxis: { type: 'value', ...hidden, max: HEIGHT },
    series: [
      ...gridLines(ink),
      regionSeries(data.region, ink),
      lineSeries('edge', edge, { color: ink.ink, width: 1.2 }),
      cornerSeries(data, ink),
      hereSeries(data.here, ink),
    ],
  };
}

/** A region may shrink to a line or to a point. */
function whereWords(corners: number): string {
  if (corners === 0) return 'No mix of these three meets all demands.';
  if (corners === 1) return 'The demands hold for one mix only, listed in the table.';
  if (corners === 2) return 'The demands hold on a line between two mixes, listed in the table.';
  return `The demands hold in a region with ${corners} corners, listed in the table.`;
}

/** The plot in a sentence. */
export function triangleWords({ names, region, here }: TriangleData, locale: Region): string {
  const now = names
    .map((name, index) => `${name} ${plotFigure(100 * (here[index] ?? 0), locale)}\u00a0%`)
    .join(', ');
  return `Triangle of ${names.join(', ')}. ${whereWords(region.length)} Now: ${now}.`;
}
