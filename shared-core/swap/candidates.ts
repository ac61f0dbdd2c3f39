import { newestPrice, pricePerKgMinor } from '../costing/offers';
import { figureValue } from '../materials/figure';
import type { MaterialRow } from '../materials/list';
import type { Material } from '../materials/material';
import { joined } from '../locale/words';
import { fold } from '../quantities/fold';

/** What of a material is held against its candidates. */
export type SwapFacts = Pick<
  MaterialRow,
  | 'id'
  | 'functions'
  | 'charge'
  | 'architecture'
  | 'phaseOfUse'
  | 'form'
  | 'origin'
  | 'hlb'
  | 'inci'
  | 'pricePerKg'
  | 'currency'
>;

/** A whole material as its candidates are held against it: also one that the lists have put aside. */
export function swapFacts(material: Material): SwapFacts {
  const { id, functions, charge, architecture, phaseOfUse, form, origin } = material;
  const price = newestPrice(material.offers);
  return {
    ...{ id, functions, charge, architecture, phaseOfUse, form, origin },
    hlb: figureValue(material.figures.hlb),
    inci: material.composition.map(({ inci }) => inci).join(', '),
    pricePerKg: price && pricePerKgMinor(price),
    currency: price?.currency ?? null,
  };
}

/** How a material compares with the one that it may replace. */
export interface SwapCandidate {
  row: MaterialRow;
  /** The functions that both have, and those that would be missed. */
  shared: string[];
  missed: string[];
  /** HLB of the candidate less that of the other; null where either is not known. */
  hlbStep: number | null;
  /** Price per kg less that of the other in the same currency, as a ratio to it; null where not known. */
  priceRatio: number | null;
  /** Names of substances that both hold. */
  substances: string[];
  /** What is the same, and what differs, in words. */
  same: string[];
  differs: string[];
  /** The higher the nearer. */
  nearness: number;
}

const namesOf = (row: Pick<MaterialRow, 'inci'>): string[] =>
  row.inci
    .split(/, (?![0-9])/)
    .map((name) => name.trim())
    .filter(Boolean);

/** Weights of what makes one material stand in for another: function before all else. Common practice, no source. */
const WEIGHTS = {
  function: 4,
  missed: -1.5,
  substance: 2,
  charge: 2,
  architecture: 1,
  phaseOfUse: 1,
  form: 0.5,
  origin: 0.75,
  hlbPerUnit: -0.4,
} as const;

const WORDS = [
  ['charge', 'charge'],
  ['architecture', 'architecture'],
  ['phaseOfUse', 'usual phase'],
  ['form', 'form'],
  ['origin', 'origin'],
] as const;

function compared(from: SwapFacts, row: MaterialRow): SwapCandidate {
  const shared = from.functions.filter((one) => row.functions.includes(one));
  const missed = from.functions.filter((one) => !row.functions.includes(one));
  const own = new Set(namesOf(from).map(fold));
  const substances = namesOf(row).filter((name) => own.has(fold(name)));
  const hlbStep = from.hlb !== null && row.hlb !== null ? row.hlb - from.hlb : null;
  const priced = from.pricePerKg !== null && row.pricePerKg !== null && from.currency === row.currency;
  const priceRatio =
    priced && from.pricePerKg ? ((row.pricePerKg ?? 0) - from.pricePerKg) / from.pricePerKg : null;
  const [same, differs]: [string[], string[]] = [[], []];
  let nearness =
    WEIGHTS.function * shared.length +
    WEIGHTS.missed * missed.length +
    WEIGHTS.substance * Math.min(2, substances.length);
  for (const [key, name] of WORDS) {
    if (from[key] === null && row[key] === null) continue;
    if (from[key] === row[key]) {
      nearness += WEIGHTS[key];
      same.push(name);
    } else differs.push(`${name}: ${row[key] ?? 'not known'}`);
  }
  if (hlbStep !== null) nearness += WEIGHTS.hlbPerUnit * Math.min(8, Math.abs(hlbStep));
  if (missed.length > 0) differs.push(`no ${joined(missed)}`);
  return { row, shared, missed, hlbStep, priceRatio, substances, same, differs, nearness };
}

/**
 * The materials that may take another's place, nearest first: by function, charge, HLB, substances, form and origin.
 * One that shares no function is none, unless the other has none recorded;
 * nor is one that was withdrawn, or will be: nothing is changed over to it.
 */
export function swapCandidates(from: SwapFacts, rows: readonly MaterialRow[]): SwapCandidate[] {
  return rows
    .filter((row) => row.id !== from.id && row.status !== 'archived' && row.withdrawnOn === '')
    .map((row) => compared(from, row))
    .filter(({ shared }) => shared.length > 0 || from.functions.length === 0)
    .sort((a, b) => b.nearness - a.nearness || a.row.tradeName.localeCompare(b.row.tradeName, 'en'));
}
