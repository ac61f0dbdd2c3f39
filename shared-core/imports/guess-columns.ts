import { cellText, type Cell, type SheetRow } from '../tables/table';
import { FORMULA_HEADINGS } from './formula-targets';
import { HEADINGS, listed } from './headings';
import { plain, saysNothing } from './plain';
import { readCell, type ReadingWays } from './read-cell';
import { SUBJECT_WORDS, type Subject } from './subjects';
import { unitOf, type Target } from './target';
import { targetOf, targetsOf } from './targets';
import { isUnitFor } from './units';

/** What a column of a table is taken for, and why. */
export interface Column {
  /** From 0. */
  at: number;
  heading: string;
  /** The unit that its heading names; empty for none. */
  unit: string;
  /** The key of what it fills; null to leave it out. */
  target: string | null;
  /** In a sentence, for whoever checks it. */
  reason: string;
}

/** So many cells tell what a column holds. */
const SAMPLE = 200;
/** A column is what its heading says where at least this share of its cells can be read so. */
const LEAST_READ = 0.5;
/** Without a heading that is known, at least this share of its cells must be words of a vocabulary. */
const LEAST_WORDS = 0.8;
const LEAST_CELLS = 3;

const FORMULA_HEADING_LISTS = Object.fromEntries(
  Object.entries(FORMULA_HEADINGS).map(([key, text]) => [key, listed(text)]),
);

function byHeadings(
  subject: Subject,
  names: Readonly<Record<string, readonly string[]>>,
): Map<string, string> {
  const known = new Map<string, string>();
  for (const { key, label } of targetsOf(subject)) {
    known.set(plain(label), key);
    if (subject === 'limits') known.set(plain(key.replace(/^limit\./, '')), key);
  }
  for (const [key, all] of Object.entries(names))
    for (const name of all) if (!known.has(name)) known.set(name, key);
  return known;
}

const BY_HEADING: Readonly<Record<Subject, ReadonlyMap<string, string>>> = {
  materials: byHeadings('materials', HEADINGS),
  formulas: byHeadings('formulas', FORMULA_HEADING_LISTS),
  limits: byHeadings('limits', {}),
};

/** A column as it is looked at. */
interface Seen {
  at: number;
  heading: string;
  cells: readonly Cell[];
  subject: Subject;
}

/** A heading without what stands in brackets or behind a comma at its end, and that. */
function parted(heading: string): { name: string; end: string } {
  const found = /^(.*?)[\s]*(?:[([]([^()[\]]*)[)\]]|,\s*([^,]*)|\s(%|°C|€\/kg|kg))\s*$/.exec(heading.trim());
  return found
    ? { name: found[1] ?? '', end: found[2] ?? found[3] ?? found[4] ?? '' }
    : { name: heading, end: '' };
}

/** What a heading names, the surest first: all of it, without its unit, without a number at its end. */
function namedBy(heading: string, subject: Subject): string | null {
  if (subject === 'formulas' && /^\s*%/.test(heading)) return 'line.amount';
  const { name } = parted(heading);
  const unbracketed = heading.replace(/\s*[([][^()[\]]*[)\]]\s*$/, '');
  for (const text of [heading, unbracketed, name, name.replace(/\s*\d+$/, '')]) {
    const key = BY_HEADING[subject].get(plain(text));
    if (key !== undefined) return key;
  }
  return null;
}

/** The first cells of each column that say something: row by row, as they lie in memory. */
function cellsOf(rows: readonly SheetRow[], width: number): Cell[][] {
  const columns = Array.from({ length: width }, (): Cell[] => []);
  let wanting = width;
  for (const { cells } of rows) {
    if (wanting === 0) break;
    for (let at = 0; at < width; at += 1) {
      const cell = cells[at] ?? null;
      if (cell === null) continue;
      const column = columns[at]!;
      if (column.length === SAMPLE || saysNothing(cellText(cell))) continue;
      if (column.push(cell) === SAMPLE) wanting -= 1;
    }
  }
  return columns;
}

/** Whether at least this share of the cells can be read so; looked no further than until that is sure. */
function readable(
  cells: readonly Cell[],
  { target, unit = '', least }: { target: Target; unit?: string; least: number },
  ways: ReadingWays,
): boolean {
  let read = cells.length;
  return cells.every((cell) => {
    if (!readCell(cell, target, unit, ways).ok) read -= 1;
    return read / cells.length >= least;
  });
}

/** Headings that say a price of a kilogram by their unit. */
function refined(key: string, end: string): string {
  return key === 'offer.price' && /\/\s*kg$/i.test(end) ? 'offer.pricePerKg' : key;
}

function byHeading({ at, heading, cells, subject }: Seen, ways: ReadingWays): Column | null {
  const named = namedBy(heading, subject);
  if (named === null) return null;
  const { end } = parted(heading);
  const target = targetOf(refined(named, end));
  const unit = isUnitFor(unitOf(target), end) ? end : '';
  if (readable(cells, { target, unit, least: LEAST_READ }, ways))
    return { at, heading, unit, target: target.key, reason: `Its heading is a name of ${target.label}.` };
  const example = cells.find((cell) => !readCell(cell, target, unit, ways).ok) ?? null;
  return {
    at,
    heading,
    unit,
    target: null,
    reason: `Its heading would be ${target.label}, but most of its cells are not, such as “${cellText(example)}”.`,
  };
}

function byContent({ at, heading, cells, subject }: Seen, ways: ReadingWays): Column {
  const left = {
    at,
    heading,
    unit: '',
    target: null,
    reason: `Nothing of a ${SUBJECT_WORDS[subject].one} has this heading.`,
  };
  if (cells.length < LEAST_CELLS) return left;
  const fitting = targetsOf(subject).filter(
    (target) => target.reading.kind === 'word' && readable(cells, { target, least: LEAST_WORDS }, ways),
  );
  const [only] = fitting;
  if (!only || fitting.length > 1) return left;
  return { ...left, target: only.key, reason: `Its cells are words of ${only.label}.` };
}

/**
 * What the columns of a table hold, by their headings in several languages and by what stands in them.
 * Of two columns for one thing the first is taken.
 */
export function guessColumns(
  headings: readonly Cell[],
  rows: readonly SheetRow[],
  ways: ReadingWays,
  subject: Subject = 'materials',
): Column[] {
  const width = Math.max(headings.length, ...rows.slice(0, SAMPLE).map(({ cells }) => cells.length));
  const taken = new Set<string>();
  const byColumn = cellsOf(rows, width);
  return Array.from({ length: width }, (_, at): Column => {
    const heading = cellText(headings[at] ?? null)
      .replace(/\s+/g, ' ')
      .trim();
    const seen = { at, heading, cells: byColumn[at] ?? [], subject };
    const guess = byHeading(seen, ways) ?? byContent(seen, ways);
    if (guess.target === null) return guess;
    if (!taken.has(guess.target)) {
      taken.add(guess.target);
      return guess;
    }
    const { label } = targetOf(guess.target);
    return { ...guess, target: null, reason: `An earlier column fills ${label} already.` };
  });
}

/** A column taken for something else than was guessed; null leaves it out. */
export function columnFor({ at, heading }: Column, key: string | null): Column {
  const { end } = parted(heading);
  const unit = key !== null && isUnitFor(unitOf(targetOf(key)), end) ? end : '';
  return { at, heading, unit, target: key, reason: key === null ? 'Left out.' : 'Chosen by you.' };
}

/** So far down a table its headings are looked for. */
const DEEPEST_HEAD = 25;

/** Which of the rows names the columns: the one that names most of them; the first where none does. */
export function headingRow(rows: readonly SheetRow[], subject: Subject = 'materials'): number {
  const known = rows
    .slice(0, DEEPEST_HEAD)
    .map(({ cells }) => new Set(cells.flatMap((cell) => namedBy(cellText(cell), subject) ?? [])).size);
  const most = Math.max(0, ...known);
  return most < 2 ? 0 : known.indexOf(most);
}
