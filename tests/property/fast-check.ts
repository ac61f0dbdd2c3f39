import { createRequire } from 'node:module';
import type * as FastCheck from 'fast-check';

/**
 * fast-check as the tests get it (build/vitest.config.ts puts this in its place): the same examples at each run, so that
 * a rare one is found by looking for it, `npm run test:properties`, and not by whoever runs the tests next.
 */
const { default: real } = createRequire(import.meta.url)('fast-check') as typeof FastCheck;

const seed = Number(process.env['PROPERTY_SEED'] ?? 1);
const times = Number(process.env['PROPERTY_TIMES'] ?? 1);
const EXAMPLES = 100;

// One implementation of its overloads: what it answers is what the real one answers.
const assert = ((property: FastCheck.IRawProperty<unknown>, given: FastCheck.Parameters<unknown> = {}) =>
  real.assert(property, {
    seed,
    ...given,
    numRuns: Math.round((given.numRuns ?? EXAMPLES) * times),
  })) as typeof real.assert;

export default { ...real, assert };
