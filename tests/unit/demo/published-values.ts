import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as sources from '@core/demo/sources';

const folder = resolve(import.meta.dirname, '../../reference/published/values');

/** One figure of one printed list; a list may print a single value or a span such as "7-8". */
export interface Printed {
  low: number;
  high: number;
  source: string;
  fromMemory: boolean;
}

type Value = number | string | null | undefined;

interface Entry {
  source: string;
  retrieved: string;
}

export interface HlbRecord extends Entry {
  inci: string;
  hlb: number;
  range?: [number, number];
  alternatives?: (Entry & { hlb: number | string })[];
}

export interface RequiredHlbRecord extends Entry {
  inci: string;
  ow: number;
  wo: number | null;
  byList: (Entry & { ow: Value; wo: Value })[];
}

export interface EacnRecord extends Entry {
  oil: string;
  eacn: number;
  range?: [number, number];
}

export interface LimitRecord extends Entry {
  inci: string;
  annex: string;
  entry: string;
  limit: number | Record<string, number> | null;
}

function load(file: string): unknown {
  return JSON.parse(readFileSync(resolve(folder, file), 'utf8'));
}

export const hlbRecords = load('hlb.json') as HlbRecord[];
export const requiredHlbRecords = load('required-hlb.json') as RequiredHlbRecord[];
export const eacnRecords = (load('hld.json') as { eacn: EacnRecord[] }).eacn;
export const limitRecords = load('limits.json') as LimitRecord[];

/** The name without a remark in brackets: "Lanolin (wool fat)" is "Lanolin"; "(and)" of a blend stays. */
export function plainName(name: string): string {
  return name.replace(/ \((?!and\)).*$/, '').split(' / ')[0] ?? name;
}

export function findByName<T extends { inci: string }>(records: T[], inci: string): T | undefined {
  return records.find((record) => plainName(record.inci) === inci);
}

export const MEMORY = ' (not verified)';

/** What the tables name by its maker or its address, the demonstration library cites by its title. */
const CITED_BY_TITLE: [part: string, title: string][] = [
  ['Reference Guide to HLB Values of Common Emulsifiers', sources.GUIDE],
  ['Pharmaceutics Lecture 11.1.07', sources.LECTURE],
  ['PMC3969497', sources.MIXING_RATIOS],
  ['PMC4137601', sources.BINARY_SYSTEMS],
  ['general supplier literature', sources.GENERAL_LITERATURE],
  ['Stearic Acid monograph', sources.STEARIC_MONOGRAPH],
  ['article on sorbic acid', sources.SORBIC_ARTICLE],
  ['CRC Handbook of Chemistry and Physics', sources.CRC_HANDBOOK],
  ['Distributor technical page on cetostearyl alcohol', sources.ALCOHOL_PAGE],
  ['The HLB System: a time-saving guide to emulsifier selection', sources.HLB_BOOKLET_1976],
  ['The HLB System: time-saving guide to surfactant selection', sources.HLB_BOOKLET_LATER],
  ['Classification of surface-active agents by HLB', sources.GRIFFIN_1949],
];

function asCited(source: string): string {
  const title = CITED_BY_TITLE.find(([part]) => source.includes(part))?.[1];
  return title?.replace(MEMORY, '') ?? source;
}

/** Reads a printed value; a text that is neither a number nor a span is left out. */
export function printed(value: Value, { source, retrieved }: Entry): Printed[] {
  const ends =
    typeof value === 'number' ? [value] : (value?.match(/^[\d.]+(-[\d.]+)?$/)?.[0].split('-') ?? []);
  const numbers = ends.map(Number);
  if (numbers.length === 0) return [];
  return [
    {
      low: Math.min(...numbers),
      high: Math.max(...numbers),
      source: asCited(source),
      fromMemory: retrieved === 'memory',
    },
  ];
}
