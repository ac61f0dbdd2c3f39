import { Problem } from '@core/problems/problem';
import { strToU8 } from 'fflate';
import fc from 'fast-check';
import { expect } from 'vitest';

/* Whatever stands in a file that comes from outside: it is read, or refused with a reason, in bounded time. */

const LONGEST_MS = 5_000;
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Reads; what is refused says what is wrong and what to do. Anything else that is thrown is a defect. */
export async function readOrRefuse<T>(read: () => T | Promise<T>): Promise<T | null> {
  const began = cpuMs();
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    expect(error.code).not.toBe('internal');
    expect(error.message).toMatch(/^[A-Z“].*[.?!”]$/s);
    expect(error.advice).not.toBe('');
    return null;
  } finally {
    expect(cpuMs() - began).toBeLessThan(LONGEST_MS);
  }
}

/** Bytes changed here and there, a stretch gone or there twice, or something put in. */
export const someDamage = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('flip' as const), at: fc.nat(), by: fc.integer({ min: 1, max: 255 }) }),
    fc.record({ kind: fc.constant('cut' as const), at: fc.nat(), by: fc.nat({ max: 400 }) }),
    fc.record({ kind: fc.constant('twice' as const), at: fc.nat(), by: fc.nat({ max: 400 }) }),
    fc.record({
      kind: fc.constant('put' as const),
      at: fc.nat(),
      bytes: fc.oneof(
        fc.uint8Array({ maxLength: 12 }),
        fc.constantFrom('"', '\r', '\0', ';;;', '=1+1', '-', '1e999', '\ufeff', '\ud83d', '∞').map(strToU8),
      ),
    }),
  ),
  { minLength: 1, maxLength: 6 },
);
type Damage = typeof someDamage extends fc.Arbitrary<infer D> ? D : never;

export function damaged(bytes: Uint8Array, damage: Damage): Uint8Array {
  return damage.reduce((now: Uint8Array, one): Uint8Array => {
    const at = now.length === 0 ? 0 : one.at % now.length;
    if (one.kind === 'flip') {
      const copy = now.slice();
      if (copy.length > 0) copy[at]! ^= one.by;
      return copy;
    }
    if (one.kind === 'put') return Buffer.concat([now.subarray(0, at), one.bytes, now.subarray(at)]);
    const to = one.kind === 'cut' ? at + one.by : Math.max(0, at - one.by);
    return Buffer.concat([now.subarray(0, at), now.subarray(to)]);
  }, bytes);
}
