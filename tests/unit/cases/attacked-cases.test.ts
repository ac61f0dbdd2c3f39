import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { runCase } from '@core/cases/run-case';
import { KINDS } from '@core/cases/kinds';
import { describe, expect, it } from 'vitest';
import { publishedCaseFiles } from '../../reference/published';

interface Raw {
  id: string;
  kind: string;
  inputs: Record<string, unknown>;
  expect: unknown;
}
const cases = publishedCaseFiles().flatMap((file) => JSON.parse(readFileSync(file, 'utf8')) as Raw[]);
const passes = (raw: unknown): boolean => runCase(raw, 'here').passed;
const isFigure = (one: unknown): one is { value: number; tolerance: number } =>
  typeof one === 'object' && one !== null && typeof (one as { value?: unknown }).value === 'number';

/** The figures of what a case expects, each with the case expecting another in its place. */
function figuresOf(raw: Raw): { value: number; tolerance: number; put: (value: number) => Raw }[] {
  if (isFigure(raw.expect))
    return [{ ...raw.expect, put: (value) => ({ ...raw, expect: { ...(raw.expect as object), value } }) }];
  if (typeof raw.expect !== 'object' || raw.expect === null || Array.isArray(raw.expect)) return [];
  return Object.entries(raw.expect).flatMap(([name, one]) =>
    isFigure(one)
      ? [
          {
            ...one,
            put: (value: number) => ({
              ...raw,
              expect: { ...(raw.expect as object), [name]: { ...one, value } },
            }),
          },
        ]
      : [],
  );
}

describe('the published cases, put wrong', () => {
  it('are of many kinds, and pass as they are', () => {
    expect(new Set(cases.map(({ kind }) => kind)).size).toBeGreaterThan(60);
    expect(cases.filter((raw) => !passes(raw)).map(({ id }) => id)).toEqual([]);
  });

  it('fail where a figure is expected twice its tolerance and more away', () => {
    const held = cases.flatMap((raw) =>
      figuresOf(raw).flatMap(({ value, tolerance, put }) => {
        const away = 2.1 * tolerance + 1e-6 * Math.max(1e-9, Math.abs(value));
        return [put(value + away), put(value - away)].filter(passes).map(({ id }) => id);
      }),
    );
    expect(held).toEqual([]);
  });

  it('fail where another text or list is expected', () => {
    const worded = cases.filter(({ expect: one }) => typeof one === 'string' || Array.isArray(one));
    expect(worded.length).toBeGreaterThan(5);
    for (const raw of worded) {
      expect(passes({ ...raw, expect: 'something else' }), raw.id).toBe(false);
      if (Array.isArray(raw.expect))
        expect(passes({ ...raw, expect: [...(raw.expect as unknown[]), 'X'] }), raw.id).toBe(false);
    }
  });

  const computed = cases.filter((raw) => raw.expect !== 'refused');
  it('never throw, and say what is wrong, when an input is a text, a list or nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...computed),
        fc.nat(),
        fc.constantFrom<unknown>('much', [], {}, true, Number.NaN, Infinity),
        (raw, at, wrong) => {
          const keys = Object.keys(raw.inputs);
          const key = keys[at % keys.length]!;
          const { passed, why, got, id } = runCase(
            { ...raw, inputs: { ...raw.inputs, [key]: wrong } },
            'here',
          );
          expect(id).toBe(raw.id);
          // What is said of an input that the kind does not need may stay unread.
          if (!passed && got === 'nothing') expect(why).not.toBe('');
          expect(why).not.toMatch(/^error: .*(undefined|is not a function|Cannot read)/);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('without their inputs are not computed: each kind asks for something', () => {
    for (const kind of Object.keys(KINDS)) {
      const { passed, why } = runCase(
        { id: kind, kind, inputs: {}, expect: { value: 1, unit: '', tolerance: 1e12 } },
        'here',
      );
      expect(passed, kind).toBe(false);
      expect(why, kind).not.toBe('');
    }
  });

  it('that expect a refusal pass by a clear problem only, never by a malformed input', () => {
    const refused = cases.filter((raw) => raw.expect === 'refused');
    expect(refused.length).toBeGreaterThan(5);
    for (const raw of refused) {
      expect(passes({ ...raw, inputs: {} }), raw.id).toBe(false);
      expect(passes({ ...raw, kind: 'no-such-kind' }), raw.id).toBe(false);
    }
    expect(computed.filter((raw) => passes({ ...raw, expect: 'refused' })).map(({ id }) => id)).toEqual([]);
  });

  it.each([
    [null, 'malformed'],
    [{}, 'malformed'],
    [{ id: 'a', kind: 'fill', inputs: {}, expect: { value: 1, unit: '', tolerance: 0 } }, 'unknown kind'],
    [
      { id: 'a', kind: 'constructor', inputs: {}, expect: { value: 1, unit: '', tolerance: 0 } },
      'unknown kind',
    ],
    [{ id: 'a', kind: 'rcf', inputs: {}, expect: { value: 1, unit: '', tolerance: -1 } }, 'malformed'],
    [{ id: 'a', kind: 'rcf', inputs: {}, expect: {} }, 'malformed'],
  ])('what is no case at all is told apart: %j', (raw, why) => {
    const found = runCase(raw, 'case 3');
    expect([found.passed, found.why.startsWith(why)]).toEqual([false, true]);
    expect(found.id).toBe(raw && 'id' in raw ? 'a' : 'case 3');
  });
});
