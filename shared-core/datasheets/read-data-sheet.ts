import { plain } from '../imports/plain';
import { decimalMarkOf } from '../imports/quantity';
import type { ReadingWays } from '../imports/read-cell';
import { same } from '../record/same';
import { compositionTables } from './composition-table';
import { lineText, linesOf, type Line, type PageText } from './lines';
import { pairsOf, type Pair } from './pairs';
import { SURENESS, type Proposal, type Sureness } from './proposal';
import { valueSaid, type Ends } from './read-value';
import { ofTheMaterial } from './sections';
import { saidInSentences } from './sentences';
import { titleOf } from './trade-name';

export interface SheetRead {
  /** In the order of {@link ORDER}; what the sheet says of one thing in two ways stands there twice, unsure. */
  proposals: Proposal[];
  /** Whether there is text at all: a scanned sheet has none. */
  hasText: boolean;
}

const ORDER = [
  'tradeName',
  'composition',
  'casNumbers',
  'appearance',
  'form',
  'figures.hlb',
  'figures.acidValue',
  'figures.saponificationValue',
  'figures.iodineValue',
  'figures.phAsSupplied',
  'figures.workingPh',
  'figures.meltingPoint',
  'figures.density',
  'figures.viscosity',
  'usage.range',
  'storage.range',
  'storage.keepFrom',
  'storage.shelfLifeMonths',
  'storage.afterOpeningMonths',
  'hazards',
];

function fromPair(pair: Pair, ways: ReadingWays): Proposal[] {
  const { label, value, typical, page, rect, line, layout } = pair;
  if (label.key === null) return [];
  return valueSaid(label.key, value, { ...label, typical }, ways).map((one) => ({
    ...one,
    sure: layout === 'below' && one.sure === 'sure' ? 'likely' : one.sure,
    page,
    rect,
    line,
  }));
}

const surest = (all: readonly Proposal[]): Proposal =>
  [...all].sort((a, b) => SURENESS.indexOf(a.sure) - SURENESS.indexOf(b.sure))[0]!;

function isEnds(value: unknown): value is Ends {
  return typeof value === 'object' && value !== null && 'low' in value && 'high' in value;
}

/** Whether one says the same as the other, or less of it: “58–62” and “60”, two words of three. */
function within(less: Proposal, more: Proposal): boolean {
  if (same(less.value, more.value)) return true;
  const [a, b] = [less.value, more.value];
  if (isEnds(a) && isEnds(b))
    return (
      a.value !== null &&
      a.low === null &&
      a.high === null &&
      (b.value ?? a.value) === a.value &&
      (b.low ?? -Infinity) <= a.value &&
      a.value <= (b.high ?? Infinity) &&
      (b.low !== null || b.high !== null)
    );
  if (Array.isArray(a) && Array.isArray(b) && typeof a[0] === 'string')
    return (a as unknown[]).every((one) => (b as unknown[]).includes(one));
  if (typeof a === 'string' && typeof b === 'string') {
    if (less.key === 'tradeName') return plain(b).includes(plain(a)) || plain(a).includes(plain(b));
    return plain(a) === plain(b) || (less.key === 'casNumbers' && b.includes(a));
  }
  return false;
}

const NAMES_ONLY = (proposal: Proposal): string =>
  proposal.key === 'composition'
    ? (proposal.value as { inci: string }[])
        .map(({ inci }) => plain(inci))
        .sort()
        .join()
    : '';

/** One proposal for each thing, where all that the sheet says of it agrees; else each, unsure. */
function settled(all: readonly Proposal[]): Proposal[] {
  if (all.length === 0) return [];
  const sure = all.filter((one) => one.sure !== 'unsure');
  const pool = sure.length > 0 ? sure : all;
  const fullest = pool.find((one) => pool.every((other) => within(other, one)));
  if (fullest) {
    const best = surest(pool.filter((one) => within(fullest, one) || one === fullest));
    const alike = pool.every((one) => same(one.value, fullest.value));
    return [alike ? best : { ...fullest, sure: surest(pool).sure === 'sure' ? fullest.sure : 'likely' }];
  }
  // A composition told twice, once with shares: the one with them.
  const names = new Set(pool.map(NAMES_ONLY));
  if (names.size === 1 && !names.has('')) {
    const told = pool.filter(({ value }) => (value as { lowPpm: number }[]).some(({ lowPpm }) => lowPpm > 0));
    if (told.length === 1) return told;
  }
  if (pool[0]?.key === 'appearance') return [surest(pool)];
  // A name behind its label goes before what is set large.
  const labelledOnes = pool.filter((one) => one.sure === 'sure');
  if (pool[0]?.key === 'tradeName' && labelledOnes.length === 1) return labelledOnes;
  const distinct = pool.filter((one, at) => pool.findIndex((other) => same(other.value, one.value)) === at);
  const note = 'The sheet says this in more than one way. Check which is right.';
  return distinct.map((one): Proposal => ({ ...one, sure: 'unsure' satisfies Sureness, note }));
}

function waysOf(lines: readonly Line[]): ReadingWays {
  const texts = lines.map(lineText).filter((text) => !/tel|fax|phone|www|@/i.test(text));
  return { mark: decimalMarkOf(texts), order: null, words: {} };
}

/**
 * What a supplier's data sheet says of its material: from tables, from labels with their values, and from sentences that
 * begin with the material or a property of it. A value that may be another's, of another unit, or is not told clearly is
 * left out: a wrong value is worse than none.
 * @param pages their texts as they lie on the page
 */
export function readDataSheet(pages: readonly PageText[]): SheetRead {
  const all = linesOf(pages);
  if (all.length === 0) return { proposals: [], hasText: false };
  const title = titleOf(all, pages[0]?.height ?? 842);
  const ways = waysOf(all);
  const own = ofTheMaterial(all);
  const { proposals: tables, left } = compositionTables(own, ways);
  const named = pairsOf(left, []).filter(({ label }) => label.key === 'tradeName');
  const names = [...named.map(({ value }) => value), ...(title ? [String(title.value)] : [])].map(plain);
  const found = [
    ...(title ? [title] : []),
    ...tables,
    ...pairsOf(left, names).flatMap((pair) => fromPair(pair, ways)),
    ...saidInSentences(left, names, ways),
  ];
  const proposals = ORDER.flatMap((key) => settled(found.filter((one) => one.key === key)));
  return { proposals, hasText: true };
}
