import { contentOf } from '../imports/content-of';
import { readCell } from '../imports/read-cell';
import { unitOf } from '../imports/target';
import { targetOf } from '../imports/targets';
import type { Region } from '../locale/numbers';
import type { InciPart } from '../materials/composition';
import { MATERIAL_FIELDS } from '../materials/fields';
import type { MaterialContent } from '../materials/material';
import type { Currency } from '../quantities/money';
import { percentFromPpm } from '../quantities/share';
import { fieldDifferences, type FieldDifference } from '../record/differences';
import type { Ends } from './read-value';

/** What is taken of a sheet: what it fills, with what, and from which page; null for what the maker wrote instead. */
export interface Taken {
  key: string;
  value: unknown;
  page: number | null;
}

const span = (low: string | null, high: string | null): string => {
  if (low !== null && high !== null) return `${low} – ${high}`;
  return low !== null ? `≥ ${low}` : `≤ ${high ?? ''}`;
};
const numeral = (one: number | null): string | null => (one === null ? null : String(one));

function endsText({ low, value, high }: Ends): string {
  if (low === null && high === null) return numeral(value) ?? '';
  const ends = span(numeral(low), numeral(high));
  return value === null ? ends : `${value} (${ends})`;
}

function partText({ inci, lowPpm, highPpm }: InciPart, alone: boolean): string {
  const isWhole = alone && lowPpm === 1_000_000;
  if (isWhole || (lowPpm === 0 && highPpm === 1_000_000)) return inci;
  const [low, high] = [percentFromPpm(lowPpm), percentFromPpm(highPpm)];
  return `${inci} (${low === high ? low : `${low} – ${high}`} %)`;
}

/** A value as text that {@link readTyped} reads again. */
export function typedText(key: string, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (key === 'composition') {
    const parts = value as InciPart[];
    return parts.map((part) => partText(part, parts.length === 1)).join('; ');
  }
  if (Array.isArray(value)) return value.join(', ');
  return typeof value === 'object' ? endsText(value as Ends) : String(value as string | number);
}

export type Typed = { ok: true; value: unknown } | { ok: false; message: string };

/** What a maker wrote in the place of a value. An empty text says nothing: its value is undefined. */
export function readTyped(key: string, text: string): Typed {
  const target = targetOf(key);
  const read = (one: string): Typed =>
    readCell(one, target, unitOf(target) === 'months' ? 'months' : '', {
      mark: null,
      order: null,
      words: {},
    });
  const both = target.reading.kind === 'figure' ? /^([^()]+)\(([^()]+)\)$/.exec(text.trim()) : null;
  if (!both?.[1] || !both[2]) return read(text);
  const [typical, ends] = [read(both[1]), read(both[2])];
  if (!typical.ok) return typical;
  if (!ends.ok) return ends;
  return { ok: true, value: { ...(ends.value as Ends), value: (typical.value as Ends).value } };
}

export interface FromSheet {
  /** What the sheet is called, as the source of what is taken from it. */
  title: string;
  today: string;
  currency: Currency;
}

/** A figure's bounds may stand without a value, usage and storage too: each says where it comes from. */
function valuesOf({ key, value }: Taken, source: string): Record<string, unknown> {
  if (key !== 'usage.range') return { [key]: value };
  return { [key]: value, 'usage.provenance': 'supplier', 'usage.source': source };
}

/** Usage and storage given anew take the place of what stood there, with both their ends. */
function cleared(content: MaterialContent, key: string): MaterialContent {
  if (key === 'usage.range') return { ...content, usage: null };
  if (key === 'storage.range') return { ...content, storage: { ...content.storage, minC: null, maxC: null } };
  return content;
}

/** A material as it is with what is taken from a sheet; its figures name the sheet and the page. */
export function withTaken(
  before: MaterialContent | null,
  taken: readonly Taken[],
  { title, today, currency }: FromSheet,
): MaterialContent {
  let content = before;
  for (const one of taken) {
    const source = one.page === null ? title : `${title}, page ${one.page}`;
    const from = content && cleared(content, one.key);
    content = contentOf(from, valuesOf(one, source), { source, today, currency });
  }
  return content ?? contentOf(null, {}, { source: title, today, currency });
}

/** What taking one value would change of a material, in words; empty where it is so already. */
export function changeOf(
  before: MaterialContent | null,
  taken: Taken,
  from: FromSheet,
  region: Region,
): FieldDifference[] {
  const blank = withTaken(null, [], from);
  const was = before ?? blank;
  return fieldDifferences(MATERIAL_FIELDS, was, withTaken(was, [taken], from), region);
}
