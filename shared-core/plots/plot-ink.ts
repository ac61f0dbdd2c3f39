import { formatNumber, type Region } from '../locale/numbers';
import type { Charge } from '../materials/vocabulary';

/** The colours of a plot: the screen gives its own, paper is black on white. */
export interface PlotInk {
  paper: string;
  ink: string;
  soft: string;
  rule: string;
  accent: string;
  /** The fill of a band or a region. */
  band: string;
  font: string;
  /** Size of labels: pixels on the screen, points on paper. */
  size: number;
  /** Width of the halo that keeps a label readable over lines; PDF cannot draw one behind its text. */
  halo: number;
  /** Whose numbers the labels have. */
  region: Region;
}

/** For a monochrome copier: what counts is told by shape and line, never by colour. */
export const printInk = (region: Region): PlotInk => ({
  region,
  paper: '#ffffff',
  ink: '#000000',
  soft: '#333333',
  rule: '#999999',
  accent: '#000000',
  band: '#dddddd',
  font: 'Source Sans 3',
  size: 8.5,
  halo: 0,
});

/** The marker of each charge, the same in every plot; each also has a row or a label in words. */
export const CHARGE_MARKS: Record<Charge | 'not recorded', string> = {
  'non-ionic': 'circle',
  anionic: 'rect',
  cationic: 'triangle',
  amphoteric: 'diamond',
  'not recorded': 'roundRect',
};

/** A figure with one decimal at most, for labels on a plot. */
export function plotFigure(value: number, region: Region): string {
  return formatNumber(value, region, { min: 0, max: 1 }).replace('-', '−');
}

/** An HLB on a plot: one decimal, as everywhere. */
export function plotHlb(value: number, region: Region): string {
  return formatNumber(value, region, 1).replace('-', '−');
}

/** A name short enough to stand beside its mark. */
export function plotName(name: string, most = 22): string {
  return name.length <= most ? name : `${name.slice(0, most - 1).trimEnd()}…`;
}
