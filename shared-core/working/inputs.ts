import { Problem } from '../problems/problem';
import { show } from './show';

/** The refusal of one bad input, said so that a maker can mend it. */
export function badInput(title: string, advice: string, path = '', facts?: Record<string, unknown>): Problem {
  const fields = path ? [{ path, message: title }] : [];
  return new Problem({ code: 'invalid-input', title, advice, fields, facts });
}

/** A real, finite number, or a `Problem` that names what it is. */
export function finite(value: number, what: string): number {
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw badInput(`${what} is not a number.`, `Enter a number for ${lower(what)}.`, what);
  return value;
}

/** A number within bounds, both ends allowed. `unit` is only for the message. */
export function between(value: number, min: number, max: number, what: string, unit = ''): number {
  finite(value, what);
  const tail = unit && ` ${unit}`;
  if (value < min || value > max)
    throw badInput(
      `${what} is ${show(value)}${tail}; it must lie between ${show(min)} and ${show(max)}${tail}.`,
      `Check the number and the unit of ${lower(what)}.`,
      what,
    );
  return value;
}

/** A number above zero. */
export function positive(value: number, what: string): number {
  finite(value, what);
  if (value <= 0)
    throw badInput(
      `${what} is ${show(value)}; it must be more than zero.`,
      `Enter a number above zero for ${lower(what)}.`,
      what,
    );
  return value;
}

/** A number of zero or more. */
export function nonNegative(value: number, what: string): number {
  finite(value, what);
  if (value < 0)
    throw badInput(
      `${what} is ${show(value)}; it cannot be negative.`,
      `Enter zero or more for ${lower(what)}.`,
      what,
    );
  return value;
}

/** A temperature in °C that can exist and that the laws used here can bear. */
export function celsius(value: number, what: string): number {
  return between(value, -273.15, 1000, what, '°C');
}

/** Refuses a result that overflowed; the inputs were each believable but not together. */
export function finiteResult(value: number, what: string): number {
  if (!Number.isFinite(value))
    throw badInput(
      `${what} is beyond what can be computed.`,
      'Check the size and unit of each number entered.',
    );
  return value;
}

function lower(what: string): string {
  return /^[A-Z][a-z]/.test(what) ? what.charAt(0).toLowerCase() + what.slice(1) : what;
}
