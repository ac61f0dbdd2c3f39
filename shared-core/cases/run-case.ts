import { ZodError } from 'zod';
import { Problem } from '../problems/problem';
import { expectations, isFigure, REFUSED, workedCase } from './case-schema';
import type { Expected, ExpectedFigure } from './case-schema';
import { KINDS } from './kinds';
import type { Outcome, Value } from './kind';

export interface CaseResult {
  id: string;
  passed: boolean;
  expected: string;
  got: string;
  /** Why it could not be computed or compared; empty when it could. */
  why: string;
}

/**
 * Runs one worked example as a file holds it. Never throws: what is wrong with a case is its result.
 *
 * @param raw one entry of a case file
 * @param place where it stands ("case 3"), for one that has no id
 */
export function runCase(raw: unknown, place: string): CaseResult {
  const read = workedCase.safeParse(raw);
  if (!read.success) return failed(idOf(raw) ?? place, '', `malformed: ${issues(read.error)}`);
  const wanted = expectations(read.data);
  const expected = wanted.map(({ name, expected: one }) => shown(name, one)).join(', ');
  const { id, kind, inputs } = read.data;
  const compute = Object.hasOwn(KINDS, kind) ? KINDS[kind] : undefined;
  if (!compute) return failed(id, expected, `unknown kind “${kind}”`);
  if (wanted.length === 0) return failed(id, expected, 'malformed: it expects nothing');
  const refusal = read.data.expect === REFUSED;
  let outcome: Outcome;
  try {
    outcome = compute(inputs);
  } catch (cause) {
    // Only a problem told to the maker turns inputs down; a malformed case or a crash does not.
    if (refusal && cause instanceof Problem)
      return { id, expected, passed: true, got: REFUSED, why: reason(cause) };
    return failed(id, expected, reason(cause));
  }
  const compared = wanted.map(({ name, expected: one }) => compare(name, one, outcome));
  return {
    id,
    expected,
    passed: compared.every((one) => one.passed),
    got: compared.map((one) => one.got).join(', '),
    why: compared.map((one) => one.why).find((why) => why !== '') ?? '',
  };
}

function compare(name: string, expected: Expected, outcome: Outcome) {
  const several = isSeveral(outcome);
  const got = several ? outcome[name] : name === '' ? outcome : undefined;
  if (got === undefined) {
    const names = several ? Object.keys(outcome).join(' and ') : 'one unnamed value';
    return { passed: false, got: 'nothing', why: `this kind gives ${names}` };
  }
  const passed = isFigure(expected)
    ? typeof got === 'number' && Number.isFinite(got) && within(got, expected)
    : JSON.stringify(got) === JSON.stringify(expected);
  return {
    passed,
    got: `${name && `${name} `}${typeof got === 'object' ? JSON.stringify(got) : got}`,
    why: '',
  };
}

function isSeveral(outcome: Outcome): outcome is Readonly<Record<string, Value>> {
  return typeof outcome === 'object' && !Array.isArray(outcome);
}

/** |got − value| ≤ tolerance in decimals: binary noise of a few units in the last place is not an excess. */
function within(got: number, { value, tolerance }: ExpectedFigure): boolean {
  const noise = 8 * Number.EPSILON * Math.max(Math.abs(got), Math.abs(value));
  return Math.abs(got - value) <= tolerance + noise;
}

function shown(name: string, expected: Expected): string {
  const before = name && `${name} `;
  if (!isFigure(expected))
    return before + (typeof expected === 'string' ? expected : JSON.stringify(expected));
  const { value, unit, tolerance } = expected;
  return `${before}${value}${unit && ` ${unit}`} ± ${tolerance}`;
}

function failed(id: string, expected: string, why: string): CaseResult {
  return { id, passed: false, expected, got: 'nothing', why };
}

function idOf(raw: unknown): string | null {
  if (typeof raw !== 'object' || raw === null || !('id' in raw)) return null;
  return typeof raw.id === 'string' && raw.id !== '' ? raw.id : null;
}

function reason(cause: unknown): string {
  if (cause instanceof ZodError) return `inputs: ${issues(cause)}`;
  if (cause instanceof Problem) return `${cause.message} ${cause.advice}`;
  return `error: ${cause instanceof Error ? cause.message : String(cause)}`;
}

function issues(error: ZodError): string {
  return error.issues
    .map((issue) => (issue.path.length > 0 ? `${issue.path.join('.')} ${issue.message}` : issue.message))
    .join('; ');
}
