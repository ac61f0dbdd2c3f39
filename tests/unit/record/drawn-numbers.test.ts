import { insertBatch } from '@db/batches/batches';
import { drawBatchNumber } from '@db/batches/numbers';
import { drawFormulaCode } from '@db/formulas/numbers';
import type { Engine } from '@db/library/sql/engine';
import { drawNumber } from '@db/record/sequence';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { add, AT, emptyLibrary, formulaOf, newId, plan, smallLibrary } from '../merging/two-libraries';

let engine: Engine;
beforeEach(async () => {
  engine = await emptyLibrary();
});
afterEach(() => engine.close());

const withCode = (code: string): string => add(engine, 'formula', formulaOf(`Formula ${code}`, code, []));

describe('a running number', () => {
  it('is never given twice, whatever is written by hand, deleted and drawn in between', () => {
    type Step = { kind: 'draw' | 'delete'; prefix: string; by?: number } | { kind: 'write'; number: string };
    const prefix = fc.constantFrom('F-', 'B', 'Ä-', '😀', '');
    const step: fc.Arbitrary<Step> = fc.oneof(
      prefix.map((one): Step => ({ kind: 'draw', prefix: one })),
      fc.tuple(prefix, fc.integer({ min: 0, max: 12 })).map(([one, n]): Step => ({
        ...{ kind: 'write', number: `${one}${String(n).padStart(3, '0')}` },
      })),
      fc.nat(20).map((by): Step => ({ kind: 'delete', prefix: '', by })),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const given: string[] = [];
        const bearing = new Set<string>();
        engine.run('DELETE FROM sequence');
        for (const one of steps) {
          if (one.kind === 'write') bearing.add(one.number);
          else if (one.kind === 'delete')
            bearing.delete([...bearing][one.by! % Math.max(1, bearing.size)] ?? '');
          else {
            const number = drawNumber(engine, 'jar', {
              prefix: one.prefix,
              inUse: () => [...bearing].filter((known) => known.startsWith(one.prefix)),
              isTaken: (known) => bearing.has(known),
            });
            expect(bearing.has(number), number).toBe(false);
            expect(given, number).not.toContain(number);
            given.push(number);
            bearing.add(number);
          }
        }
      }),
    );
  });

  it('counts what is drawn for each noun, and behind each prefix, by itself', () => {
    const draw = (name: string, prefix: string) =>
      drawNumber(engine, name, { prefix, inUse: () => [], isTaken: () => false });
    expect([draw('formula', 'F-'), draw('batch', 'F-'), draw('formula', 'F'), draw('formula', 'F-')]).toEqual(
      [...['F-001', 'F-001', 'F001', 'F-002']],
    );
  });

  it.each(['1e9', '0x1F', '-7', ' 41', '4.0', 'Infinity', '9007199254740991', '20261129111829123'])(
    'takes F-%s for a mark of somebody’s own, and goes on from the last number',
    (end) => {
      for (const code of ['F-011', `F-${end}`]) withCode(code);
      expect([drawFormulaCode(engine, 'F-'), drawFormulaCode(engine, 'F-')]).toEqual(['F-012', 'F-013']);
    },
  );

  it('is drawn at all where a document said that more were drawn than can be counted', () => {
    withCode('F-004');
    engine.run('INSERT INTO sequence (name, last) VALUES (?, ?)', 'formula F-', Number.MAX_SAFE_INTEGER);
    expect([drawFormulaCode(engine, 'F-'), drawFormulaCode(engine, 'F-')]).toEqual(['F-005', 'F-006']);
  });

  it('goes past 999 without losing its order of magnitude', () => {
    withCode('F-999');
    expect(drawFormulaCode(engine, 'F-')).toBe('F-1000');
  });
});

describe('the code of a formula', () => {
  it('goes on behind its own prefix only, whatever signs that is made of', () => {
    for (const code of ['F-007', 'FX-090', '😀-020', '😀😀-050', 'f-300']) withCode(code);
    expect(drawFormulaCode(engine, 'F-')).toBe('F-008');
    expect(drawFormulaCode(engine, '😀-')).toBe('😀-021');
    expect(drawFormulaCode(engine, '')).toBe('001');
  });

  it('is not given again once what bore it is deleted', () => {
    const id = withCode(drawFormulaCode(engine, 'F-'));
    engine.run('DELETE FROM formula WHERE id = ?', id);
    expect(drawFormulaCode(engine, 'F-')).toBe('F-002');
  });
});

describe('the number of a batch', () => {
  it('goes on behind those that are planned, and steps over one that came from elsewhere', async () => {
    const { engine: library, version, water } = await smallLibrary();
    expect(drawBatchNumber(library, 'B-')).toBe('B-002');
    plan(library, version, 'B-003', water);
    expect(drawBatchNumber(library, 'B-')).toBe('B-004');
    expect(drawBatchNumber(library, 'L 😀 ')).toBe('L 😀 001');
    const one = {
      id: newId(),
      number: 'B-004',
      versionId: version,
      createdAt: AT,
      overagePpm: 0,
      readabilityMg: 1,
    };
    const made = { ...one, size: { by: 'mass' as const, massMg: 5 }, totalMg: 5, note: '', lines: [] };
    insertBatch(library, made);
    expect(() => insertBatch(library, { ...made, id: newId() })).toThrow(/UNIQUE/);
  });
});
