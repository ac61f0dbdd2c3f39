import { badInput } from '../working/inputs';
import { ATOMIC_WEIGHTS } from './atomic-weights';

/** Atoms of each element; fractions stand for an average formula. */
export type AtomCounts = Map<string, number>;

const LONGEST = 500;
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';
const OPENING = '([{';
const CLOSING: Record<string, string> = { '(': ')', '[': ']', '{': '}' };

/**
 * Counts the atoms of a written formula: "C18H36O2", "Al2(SO4)3", "CuSO4·5H2O" or "CuSO4 x 5 H2O", "[Cu(NH3)4]SO4", subscripts
 * and a trailing charge ("Na+", "SO4^2-") included; the charge weighs nothing here.
 *
 * @throws Problem `invalid-input` that names the place or the element at fault
 */
export function countAtoms(formula: string): AtomCounts {
  const text = normalise(formula);
  if (text === '') throw unreadable(formula, 'it is empty');
  if (text.length > LONGEST) throw unreadable(formula, `it is longer than ${LONGEST} characters`);
  const counts: AtomCounts = new Map();
  for (const part of text.split('·')) {
    const [, factor = '', rest = ''] = /^(\d+(?:\.\d+)?)?(.*)$/.exec(part) ?? [];
    if (rest === '') throw unreadable(formula, 'a part of it names no element');
    add(counts, readGroup(new Reader(rest, formula)), countOf(factor, formula));
  }
  return counts;
}

function normalise(formula: string): string {
  const text = formula
    .replace(/[₀-₉]/g, (digit) => String(SUBSCRIPTS.indexOf(digit)))
    // Labels and certificates write the water of a hydrate behind a times sign: "MgSO4 x 7 H2O".
    .replace(/(?<=\S)\s*[xX×]\s*(?=\d*(?:\.\d+)?\s*H2O(?![a-z0-9]))/g, '·')
    .replace(/\s+/g, '')
    .replace(/½/g, '0.5')
    .replace(/[•∙⋅*]/g, '·')
    // A full stop parts a hydrate or an adduct ("CuSO4.5H2O", "C2H7N.HCl"); else it is a decimal point.
    .replace(/(?<![·.]\d*)\.(?=\d*(?:\.\d+)?H2O(?![a-z0-9])|[A-Z([])/g, '·')
    .replace(/\^\d*[+\-−]\d*$/, '');
  if (/\d[+\-−]$/.test(text))
    throw unreadable(
      formula,
      'its charge could be part of the count; write the charge after ^, as in SO4^2-',
    );
  return text.replace(/[+\-−]$/, '');
}

class Reader {
  position = 0;
  constructor(
    readonly text: string,
    readonly whole: string,
  ) {}

  peek(): string {
    return this.text.charAt(this.position);
  }

  take(pattern: RegExp): string {
    const found = new RegExp(pattern.source, 'y');
    found.lastIndex = this.position;
    const match = found.exec(this.text)?.[0] ?? '';
    this.position += match.length;
    return match;
  }
}

function readGroup(reader: Reader, closing = ''): AtomCounts {
  const counts: AtomCounts = new Map();
  while (reader.position < reader.text.length) {
    const next = reader.peek();
    if (closing && next === closing) {
      reader.position += 1;
      return nonEmpty(counts, reader);
    }
    if (OPENING.includes(next)) {
      reader.position += 1;
      const inner = readGroup(reader, CLOSING[next]);
      add(counts, inner, readCount(reader));
    } else {
      const element = readElement(reader);
      add(counts, new Map([[element, 1]]), readCount(reader));
    }
  }
  if (closing) throw unreadable(reader.whole, `a “${closing}” is missing`);
  return nonEmpty(counts, reader);
}

function readElement(reader: Reader): string {
  const symbol = reader.take(/[A-Z][a-z]?/);
  if (symbol === '') throw unreadable(reader.whole, `“${reader.peek()}” is not an element`);
  if (!Object.hasOwn(ATOMIC_WEIGHTS, symbol)) throw unreadable(reader.whole, `“${symbol}” is not an element`);
  return symbol;
}

function readCount(reader: Reader): number {
  return countOf(reader.take(/\d+(\.\d+)?/), reader.whole);
}

function countOf(digits: string, formula: string): number {
  const count = digits === '' ? 1 : Number(digits);
  if (count === 0) throw unreadable(formula, 'a count is zero');
  return count;
}

function nonEmpty(counts: AtomCounts, reader: Reader): AtomCounts {
  if (counts.size === 0) throw unreadable(reader.whole, 'a bracket is empty');
  return counts;
}

function add(into: AtomCounts, from: AtomCounts, factor: number): void {
  for (const [element, count] of from) into.set(element, (into.get(element) ?? 0) + count * factor);
}

function unreadable(formula: string, why: string) {
  const shown = formula.length > 60 ? `${formula.slice(0, 60)}…` : formula;
  return badInput(
    `The formula “${shown}” cannot be read: ${why}.`,
    'Write it like C18H36O2, Al2(SO4)3 or CuSO4·5H2O, with capitals where elements begin.',
    'formula',
  );
}
