import type { LineSeriesOption, ScatterSeriesOption } from 'echarts/charts';
import type {
  GridComponentOption,
  MarkAreaComponentOption,
  TooltipComponentOption,
} from 'echarts/components';
import type { ComposeOption } from 'echarts/core';
import type { Region } from '../locale/numbers';
import type { Charge } from '../materials/vocabulary';
import { CHARGE_MARKS, plotHlb, plotName, type PlotInk } from './plot-ink';

export type HlbAxisOption = ComposeOption<
  | LineSeriesOption
  | ScatterSeriesOption
  | GridComponentOption
  | MarkAreaComponentOption
  | TooltipComponentOption
>;

/** An emulsifier on the axis. */
export interface AxisMark {
  id: string;
  name: string;
  hlb: number;
  charge: Charge | null;
  /** One of the system on the bench. */
  chosen: boolean;
}

export interface HlbAxisData {
  marks: readonly AxisMark[];
  /** The required HLB as a band; null where there is none. */
  band: { low: number; high: number; value: number } | null;
  /** What the system on the bench offers; null where HLB does not tell. */
  blend: number | null;
  /** More lie beyond the marks on either side: only this part of the scale is drawn. */
  partly: boolean;
}

const ROWS = ['non-ionic', 'anionic', 'cationic', 'amphoteric', 'not recorded'] as const;
type Row = (typeof ROWS)[number];
const CHOSEN_ROW = 'on the bench';
const BLEND_ROW = 'their blend';
/** Marks closer than this part of the scale share a column and are stacked. */
const COLUMN = 0.015;
const STACK_PX = 9;
const ROW_PX = 46;

const rowOf = (mark: AxisMark): Row => mark.charge ?? 'not recorded';

function rowsOf(marks: readonly AxisMark[]): Row[] {
  return ROWS.filter((row) => marks.some((mark) => rowOf(mark) === row));
}

/** Height that the rows need, in pixels or points. */
export function hlbAxisHeight(data: HlbAxisData): number {
  const shelf = rowsOf(data.marks.filter((mark) => !mark.chosen)).length;
  return (shelf + (hasChosen(data) ? 2 : 0)) * ROW_PX + 74;
}

/** Where a mark stands in its stack: 0, one up, one down, two up… */
function stackPlace(count: number): number {
  const step = Math.ceil(count / 2);
  return (count % 2 === 1 ? -step : step) * STACK_PX;
}

const hasChosen = ({ marks, blend }: HlbAxisData): boolean =>
  blend !== null || marks.some((mark) => mark.chosen);

interface Placed {
  mark: AxisMark;
  offset: number;
}

function placed({ marks, ...data }: HlbAxisData): Placed[] {
  const { from, to } = scaleOf({ marks, ...data });
  const column = COLUMN * (to - from);
  const stacks = new Map<string, number>();
  return [...marks]
    .sort((a, b) => a.hlb - b.hlb)
    .map((mark) => {
      if (mark.chosen) return { mark, offset: 0 };
      const key = `${rowOf(mark)} ${Math.round(mark.hlb / column)}`;
      const count = stacks.get(key) ?? 0;
      stacks.set(key, count + 1);
      // A stack taller than its row folds back over itself.
      return { mark, offset: stackPlace(count % 5) };
    });
}

function markData({ mark, offset }: Placed, ink: PlotInk) {
  return {
    id: mark.id,
    name: mark.name,
    value: [mark.hlb, mark.chosen ? CHOSEN_ROW : rowOf(mark)],
    symbol: CHARGE_MARKS[rowOf(mark)],
    symbolSize: mark.chosen ? 13 : 9,
    symbolOffset: [0, offset],
    itemStyle: mark.chosen
      ? { color: ink.accent, borderColor: ink.ink, borderWidth: 1, opacity: 1 }
      : { color: ink.paper, borderColor: ink.soft, borderWidth: 1.2, opacity: 1 },
  };
}

function markSeries(data: HlbAxisData, ink: PlotInk): ScatterSeriesOption[] {
  const all = placed(data);
  const label = {
    show: true,
    position: 'top' as const,
    distance: 4,
    color: ink.ink,
    fontSize: ink.size,
    textBorderColor: ink.paper,
    textBorderWidth: ink.halo,
  };
  return [
    {
      id: 'shelf',
      type: 'scatter',
      data: all.filter(({ mark }) => !mark.chosen).map((one) => markData(one, ink)),
    },
    {
      id: 'chosen',
      type: 'scatter',
      z: 5,
      label: { ...label, formatter: ({ name }) => plotName(name) },
      // Neighbours take turns above and below, so that their names keep apart.
      data: all
        .filter(({ mark }) => mark.chosen)
        .map((one, index) => ({
          ...markData(one, ink),
          label: { position: index % 2 === 0 ? ('top' as const) : ('bottom' as const) },
        })),
    },
  ];
}

function bandSeries({ band }: HlbAxisData, ink: PlotInk): LineSeriesOption {
  const base: LineSeriesOption = { id: 'band', type: 'line', data: [], silent: true, z: 1 };
  if (!band) return { ...base, markArea: { data: [] }, markLine: { data: [] } };
  const name = `required ${plotHlb(band.value, ink.region)} (${plotHlb(band.low, ink.region)} to ${plotHlb(band.high, ink.region)})`;
  return {
    ...base,
    markArea: {
      itemStyle: { color: ink.band, borderColor: ink.soft, borderWidth: 1, borderType: 'dashed' },
      label: { position: 'top', color: ink.ink, fontSize: ink.size, fontWeight: 600 },
      data: [[{ name, xAxis: band.low }, { xAxis: band.high }]],
    },
    markLine: { data: [] },
  };
}

/** The mark that a drag moves: kept in series of its own, so that little is drawn anew. */
export function blendSeries(blend: number | null, ink: PlotInk): ScatterSeriesOption {
  return {
    id: 'blend',
    type: 'scatter',
    z: 6,
    symbol: 'path://M0,-10 L7,4 L0,0 L-7,4 Z',
    symbolSize: 18,
    silent: true,
    itemStyle: { color: ink.ink },
    label: {
      show: true,
      position: 'right',
      color: ink.ink,
      fontSize: ink.size + 1,
      fontWeight: 600,
      formatter: blend === null ? '' : plotHlb(blend, ink.region),
      textBorderColor: ink.paper,
      textBorderWidth: ink.halo,
    },
    markLine: {
      symbol: 'none',
      silent: true,
      animation: false,
      label: { show: false },
      lineStyle: { color: ink.ink, width: 1.5, type: 'solid' },
      data: blend === null ? [] : [{ xAxis: blend }],
    },
    data: blend === null ? [] : [[blend, BLEND_ROW]],
  };
}

interface Scale {
  from: number;
  to: number;
  /** Between two figures on it. */
  step: number;
}

/** So wide a part of the scale, in HLB, has a figure at each so many units. */
const STEPS: readonly (readonly [widest: number, step: number])[] = [
  [3, 0.5],
  [8, 1],
];

/** Steps beyond the outermost marks, at least. */
const ROOM = 0.1;

/** All of the scale, from 0 to 20 at least; of a shelf that has more than can be told apart, the part that is shown. */
function scaleOf({ marks, band, blend, partly }: HlbAxisData): Scale {
  const shown = [
    ...marks.map(({ hlb }) => hlb),
    ...(band ? [band.low, band.high] : []),
    ...(blend === null ? [] : [blend]),
  ];
  if (!partly || shown.length === 0)
    return { from: 0, to: Math.ceil(Math.max(20, ...shown) / 2) * 2, step: 2 };
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const step = STEPS.find(([widest]) => high - low <= widest)?.[1] ?? 2;
  // Room for half a mark: none is cut by an end.
  const from = Math.max(0, Math.floor(low / step - ROOM) * step);
  return { from, to: Math.ceil(high / step + ROOM) * step, step };
}

/**
 * Emulsifiers along the HLB scale: a row and a marker for each charge, the required HLB as a band, the blend as an
 * arrow with a line. Nothing is told by colour alone.
 */
export function hlbAxisOption(data: HlbAxisData, ink: PlotInk): HlbAxisOption {
  const rows = rowsOf(data.marks.filter((mark) => !mark.chosen));
  const own = hasChosen(data) ? [BLEND_ROW, CHOSEN_ROW] : [];
  const { from, to, step } = scaleOf(data);
  return {
    animation: false,
    textStyle: { fontFamily: ink.font, color: ink.ink },
    // The labels’ room is known: measuring it again at every step of a drag costs time.
    grid: { left: 84, right: 24, top: 30, bottom: 40, outerBoundsMode: 'none' },
    tooltip: {
      renderMode: 'richText',
      formatter: (point) => {
        const one = Array.isArray(point) ? point[0] : point;
        const value = Array.isArray(one?.value) ? Number(one.value[0]) : NaN;
        return Number.isFinite(value) ? `${one?.name ?? ''}\nHLB ${plotHlb(value, ink.region)}` : '';
      },
      backgroundColor: ink.paper,
      borderColor: ink.rule,
      textStyle: { color: ink.ink, fontFamily: ink.font, fontSize: ink.size + 1 },
    },
    xAxis: {
      type: 'value',
      name: 'HLB',
      nameLocation: 'middle',
      nameGap: 24,
      nameTextStyle: { color: ink.soft, fontSize: ink.size },
      min: from,
      max: to,
      interval: step,
      axisLine: { show: true, lineStyle: { color: ink.soft } },
      axisTick: { show: true },
      axisLabel: { color: ink.soft, fontSize: ink.size },
      splitLine: { lineStyle: { color: ink.rule, width: 0.5 } },
    },
    yAxis: {
      type: 'category',
      data: [...own, ...[...rows].reverse()],
      axisLine: { show: false },
      axisTick: { show: false },
      axisLabel: { color: ink.ink, fontSize: ink.size },
      splitLine: { show: true, lineStyle: { color: ink.rule, width: 0.5 } },
    },
    series: [bandSeries(data, ink), ...markSeries(data, ink), blendSeries(data.blend, ink)],
  };
}

/** The plot in a sentence, for who cannot see it; a table beside it holds every number. */
export function hlbAxisWords({ marks, band, blend }: HlbAxisData, region: Region): string {
  const count = `${marks.length} emulsifier${marks.length === 1 ? '' : 's'} on the HLB scale.`;
  const asked = band
    ? ` Required: ${plotHlb(band.value, region)}, band ${plotHlb(band.low, region)} to ${plotHlb(band.high, region)}.`
    : '';
  const offered = blend === null ? '' : ` The blend is at ${plotHlb(blend, region)}.`;
  return `${count}${asked}${offered}`;
}
