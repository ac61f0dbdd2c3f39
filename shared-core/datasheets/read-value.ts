import { plain, saysNothing } from '../imports/plain';
import { readNames } from '../imports/names';
import { readCell, type ReadingWays } from '../imports/read-cell';
import { unitOf } from '../imports/target';
import { targetOf } from '../imports/targets';
import { VOCABULARY_WORDS } from '../imports/vocabulary-words';
import { FIGURE_KINDS, type FigureKind } from '../materials/figure';
import type { InciPart } from '../materials/composition';
import { same } from '../record/same';
import { WHOLE_PPM } from '../quantities/share';
import { casNumbersOf } from './cas-numbers';
import { cleanValue, withRange } from './clean-value';
import { hazardsStated } from './hazard-statements';
import type { Sureness } from './proposal';
import { keepingOf } from './shelf-life';
import { keptFrom, storageTemperatures } from './storage-words';

/** What a text says of a target, as taking in a table keeps it. */
export interface Said {
  key: string;
  value: unknown;
  sure: Sureness;
  note: string;
}

export interface Ends {
  low: number | null;
  value: number | null;
  high: number | null;
}

const BURNS =
  'H314 says that it burns skin and eyes, not whether it is a base or an acid: choose “caustic” or “strong acid”.';
const said = (key: string, value: unknown, sure: Sureness = 'sure', note = ''): Said => ({
  key,
  value,
  sure,
  note,
});

/** Figures that mean nothing without their unit: it may be another scale, or another kind of measure. */
const NEEDS_UNIT: ReadonlySet<string> = new Set(['figures.meltingPoint', 'figures.viscosity', 'usage.range']);

function inBounds(key: string, { low, value, high }: Ends): boolean {
  const { reading } = targetOf(key);
  if (reading.kind !== 'figure') return true;
  return [low, value, high].every((one) => one === null || (one >= reading.min && one <= reading.max));
}

/** A value among a range that it lies in. */
function withTypical(range: Ends, typical: Ends | null): Ends {
  const one = typical?.value ?? null;
  if (one === null || range.value !== null) return range;
  const inside = (range.low ?? -Infinity) <= one && one <= (range.high ?? Infinity);
  return inside ? { ...range, value: one } : range;
}

function endsOf(key: string, written: string, unit: string, ways: ReadingWays) {
  const { text, condition } = cleanValue(written, unitOf(targetOf(key)));
  const marks = ways.mark === null ? ([',', '.'] as const) : [ways.mark];
  // Where the sheet does not show its decimal mark, the bounds of the figure may: “1.525” is no density of 1525.
  const read = marks.flatMap((mark) => {
    const reading = readCell(withRange(text), targetOf(key), unit, { ...ways, mark });
    const known = reading.ok && reading.value !== undefined && inBounds(key, reading.value as Ends);
    return known ? [reading.value as Ends] : [];
  });
  const [ends, other] = read;
  if (!ends || (other && !same(ends, other))) return null;
  const bare =
    unit === '' &&
    unitOf(targetOf(key)) !== '' &&
    !/[^\d\s.,<>≤≥~±–-]/.test(text.replace(/\b(max|min|ca|to|bis)\b/gi, ''));
  return { ends, condition, bare };
}

/** @param condition under what the label says that it was found */
function figureSaid(
  key: string,
  written: string,
  { unit, condition, typical }: ValueParts,
  ways: ReadingWays,
): Said[] {
  const read = endsOf(key, written, unit, ways);
  if (!read || (read.bare && NEEDS_UNIT.has(key))) return [];
  const ends = withTypical(
    read.ends,
    typical === '' ? null : (endsOf(key, typical, unit, ways)?.ends ?? null),
  );
  const found = read.condition || condition;
  if (key === 'figures.phAsSupplied' && found.includes('%'))
    return [
      said(
        key,
        ends,
        'unsure',
        `The sheet gives the pH of a dilution (${found}), not of the material itself.`,
      ),
    ];
  const at = found === '' ? '' : `Found at ${found}.`;
  return [said(key, ends, read.bare ? 'likely' : 'sure', read.bare ? 'The sheet gives no unit.' : at)];
}

const FORM_WORDS = Object.entries(VOCABULARY_WORDS.form ?? {})
  .flatMap(([word, spellings]) =>
    [word, ...spellings.split(',')].map((one): [string, string] => [plain(one), word]),
  )
  .sort((a, b) => b[0].length - a[0].length);

/** The one form that a text names; null for none, and for more than one. */
export function formIn(text: string): string | null {
  let left = ` ${plain(text)} `;
  const found = new Set<string>();
  for (const [spelling, word] of FORM_WORDS) {
    if (!left.includes(` ${spelling} `)) continue;
    found.add(word);
    left = left.replaceAll(` ${spelling} `, ' · ');
  }
  return found.size === 1 ? [...found][0]! : null;
}

const MOST_WORDS = 9;
/** A name as INCI writes one: few words that begin with a letter or a number before a hyphen, and no sentence. */
const isName = (text: string): boolean =>
  /^[\p{L}\d]/u.test(text) &&
  /\p{L}{2}/u.test(text) &&
  text.split(' ').length <= MOST_WORDS &&
  !/[:;]|\.\s|\b(?:is|are|see|ist|siehe|est|voir|es|ver)\b/i.test(text);

export function compositionSaid(parts: readonly InciPart[]): Said[] {
  const low = parts.reduce((sum, { lowPpm }) => sum + lowPpm, 0);
  const high = parts.reduce((sum, { highPpm }) => sum + highPpm, 0);
  const names = new Set(parts.map(({ inci }) => plain(inci)));
  if (parts.length === 0 || names.size < parts.length || !parts.every(({ inci }) => isName(inci))) return [];
  if (low > WHOLE_PPM) return [];
  if (high < WHOLE_PPM * 0.99)
    return [
      said('composition', parts, 'unsure', 'The shares do not come to 100 %: some of it may not be named.'),
    ];
  return [said('composition', parts)];
}

function textSaid(key: string, text: string, ways: ReadingWays): Said[] {
  const reading = readCell(text, targetOf(key), '', ways);
  return reading.ok && reading.value !== undefined ? [said(key, reading.value)] : [];
}

const LONGEST_TEXT = 280;

function appearanceSaid(text: string, ways: ReadingWays): Said[] {
  if (text.length > LONGEST_TEXT || !/\p{L}{3}/u.test(text)) return [];
  const form = formIn(text);
  return [...textSaid('appearance', text, ways), ...(form ? [said('form', form, 'likely')] : [])];
}

function keptSaid(text: string, once: boolean): Said[] {
  const { unopened, opened } = keepingOf(text, once);
  return [
    ...(unopened === null ? [] : [said('storage.shelfLifeMonths', unopened)]),
    ...(opened === null ? [] : [said('storage.afterOpeningMonths', opened)]),
  ];
}

export function storageSaid(text: string): Said[] {
  const ends = storageTemperatures(text);
  const from = keptFrom(text);
  return [
    ...(ends ? [said('storage.range', ends)] : []),
    ...(from.length > 0 ? [said('storage.keepFrom', from, 'likely')] : []),
  ];
}

export interface ValueParts {
  unit: string;
  condition: string;
  typical: string;
}

/** What a text says beside a label; nothing where it cannot be told for certain. */
export function valueSaid(key: string, written: string, parts: ValueParts, ways: ReadingWays): Said[] {
  const text = written.trim();
  if (saysNothing(text)) return [];
  switch (key) {
    case 'composition': {
      const { parts, lost } = readNames(text.replace(/\s*\bINCI\b:?\s*/g, ''), ways.mark);
      return lost === null ? compositionSaid(parts) : [];
    }
    case 'casNumbers': {
      const found = casNumbersOf(text);
      return found && found.length > 0 ? [said(key, found.join(', '))] : [];
    }
    case 'form': {
      const form = formIn(text);
      return form ? [said(key, form)] : [];
    }
    case 'appearance':
      return appearanceSaid(text, ways);
    case 'hazards': {
      const found = hazardsStated(text);
      if (found.length === 0) return [];
      return found.includes('caustic') ? [said(key, found, 'unsure', BURNS)] : [said(key, found, 'likely')];
    }
    case 'storage':
      return storageSaid(text);
    case 'storage.shelfLifeMonths':
      return keptSaid(text, false);
    case 'storage.afterOpeningMonths':
      return keptSaid(text, true);
    case 'tradeName':
      return text.length <= 120 && /\p{L}/u.test(text)
        ? textSaid(key, text.replace(/[®™©]/g, '').trim(), ways)
        : [];
    case 'usage.range': {
      const [one] = figureSaid(key, text, parts, ways);
      const { low = null, high = null } = (one?.value ?? {}) as Partial<Ends>;
      return one && !(low !== null && high === null) ? [one] : [];
    }
    default:
      return figureSaid(key, text, parts, ways);
  }
}

export const isFigure = (key: string): boolean => key.startsWith('figures.') && key.slice(8) in FIGURE_KINDS;
export type { FigureKind };
