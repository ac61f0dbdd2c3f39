import type { Writer } from '../database';

/** What running numbers are drawn for. */
export interface Numbering {
  /** Each prefix counts for itself. */
  prefix: string;
  /** Every number in use that begins so: looked at once, when the first is drawn. */
  inUse(): readonly string[];
  /** Whether one bears this number already, such as one that was written by hand. */
  isTaken(number: string): boolean;
}

/**
 * The next running number behind a prefix: F-001, F-002… None is given twice, also after what bore it was deleted.
 * @param name of what is numbered
 */
export function drawNumber(tx: Writer, name: string, { prefix, inUse, isTaken }: Numbering): string {
  const key = `${name} ${prefix}`;
  const drawn = tx.get<{ last: number }>('SELECT last FROM sequence WHERE name = ?', key)?.last;
  const written = (next: number): string => `${prefix}${String(next).padStart(3, '0')}`;
  let next = (drawn !== undefined && NUMBER.test(String(drawn)) ? drawn : highest(inUse(), prefix)) + 1;
  while (isTaken(written(next))) next += 1;
  tx.run(
    'INSERT INTO sequence (name, last) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET last = excluded.last',
    ...[key, next],
  );
  return written(next);
}

/** Digits alone, and so many that the next one is still told from it: a longer one, or 1e9, is some mark of a maker's own. */
const NUMBER = /^\d{1,15}$/;

function highest(numbers: readonly string[], prefix: string): number {
  const used = numbers.map((number) => number.slice(prefix.length)).filter((end) => NUMBER.test(end));
  return used.reduce((most, number) => Math.max(most, Number(number)), 0);
}
