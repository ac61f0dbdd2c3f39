import { blankMaterial, type Material } from '@core/materials/material';
import { isItsOwnSubstance, tradeNameKey, wholeComposition, type Composed } from '@core/materials/nested';
import { Problem } from '@core/problems/problem';
import { blankContent } from '@core/record/field';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Engine } from '@db/library/sql/engine';
import { materials, readMaterials, refuseCircularComposition } from '@db/materials/materials';
import { materialsHolding, materialsWithin } from '@db/materials/nested';
import { standingOf } from '@db/materials/standing';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { add, emptyLibrary } from '../merging/two-libraries';

/* Materials within materials, as a library finds them by their names, against looking through the whole shelf. */

let engine: Engine;
beforeEach(async () => {
  engine = await emptyLibrary();
});

const blend = (tradeName: string, ...parts: string[]) => ({
  ...blankMaterial(tradeName, 'Aqua'),
  composition: parts.map((inci) => ({ inci, lowPpm: 100_000, highPpm: 100_000 })),
});
const put = (tradeName: string, ...parts: string[]): string =>
  add(engine, 'material', blend(tradeName, ...parts));
const substance = (name: string): string =>
  add(engine, 'substance', { ...blankContent(SUBSTANCE_FIELDS), name });

/** The rule, asked of all that there is: exactly one material goes by that name, and no substance. */
function byScan(all: readonly Material[], substances: readonly string[]) {
  return (name: string): Material | undefined => {
    const key = tradeNameKey(name);
    const named = all.filter(({ tradeName }) => tradeNameKey(tradeName) === key);
    return named.length === 1 && !substances.some((one) => tradeNameKey(one) === key) ? named[0] : undefined;
  };
}
const NAMES = [
  'Base',
  'BASE',
  'Gel',
  'GEL',
  'Crème Nova',
  'CRÈME NOVA',
  'Straße',
  'Aqua',
  'aqua',
  'Öl %',
  'öl %',
];
const name = fc.constantFrom(...NAMES);
const parts = fc.uniqueArray(name, { minLength: 1, maxLength: 3, selector: (one) => tradeNameKey(one) });
const shelf = fc.array(fc.tuple(name, parts), { maxLength: 6 });

function onShelf(
  runs: number,
  law: (all: Material[], find: (name: string) => Composed | undefined) => void,
): void {
  fc.assert(
    fc.property(shelf, fc.subarray(['Aqua', 'GEL', 'Öl %']), (blends, substances) => {
      engine.control('BEGIN');
      try {
        const ids = blends.map(([tradeName, parts]) => put(tradeName, ...parts));
        substances.forEach(substance);
        const all = [...materials.readMany(engine, ids).values()];
        law(all, byScan(all, substances));
      } finally {
        engine.control('ROLLBACK');
      }
    }),
    { numRuns: runs },
  );
}

describe('a part that names a material', () => {
  it('means it by the rule: by one name, letter case aside in any alphabet, and no substance', () => {
    onShelf(60, (all, find) => {
      const within = materialsWithin(engine, materials, all);
      for (const one of all)
        for (const { inci } of one.composition) expect(within(inci), inci).toEqual(find(inci));
    });
  });

  it('is computed with what it holds, and written as it is', () => {
    onShelf(40, (all, find) => {
      const read = readMaterials(
        engine,
        all.map(({ id }) => id),
      );
      for (const one of all) expect(read.get(one.id)!.composition).toEqual(wholeComposition(one, find));
    });
  });

  it('marks its holder as one to be looked into; what is not marked holds no material', () => {
    onShelf(60, (all, find) => {
      const standing = standingOf(
        engine,
        all.map(({ id }) => id),
      );
      expect(standing.map(({ id }) => id)).toEqual(all.map(({ id }) => id));
      for (const [at, one] of all.entries()) {
        const { nests, revision, updatedAt } = standing[at]!;
        expect([revision, updatedAt]).toEqual([one.revision, one.updatedAt]);
        const holds = one.composition.some(({ inci }) => {
          const held = find(inci);
          return held && tradeNameKey(inci) !== tradeNameKey(one.tradeName) && !isItsOwnSubstance(held);
        });
        if (holds) expect(nests, one.tradeName).toBe(true);
      }
    });
  });

  it('is refused where it would lead back, exactly where a scan finds a way back', () => {
    onShelf(60, (all, find) => {
      for (const one of all) {
        const own = tradeNameKey(one.tradeName);
        const refused = ((): boolean => {
          try {
            refuseCircularComposition(engine, one);
            return false;
          } catch (error) {
            expect(error).toMatchObject({ code: 'invalid-input' });
            return error instanceof Problem;
          }
        })();
        expect(refused, one.tradeName).toBe(
          leadsBack(one, (part) => (tradeNameKey(part) === own ? one : find(part))),
        );
      }
    });
  });
});

/** Whether the way down from a material meets a name again that it came by. */
function leadsBack(
  one: Composed,
  find: (name: string) => Composed | undefined,
  above: string[] = [],
): boolean {
  const own = tradeNameKey(one.tradeName);
  return one.composition.some(({ inci }) => {
    const key = tradeNameKey(inci);
    if (key === own) return false;
    if (above.includes(key)) return true;
    const held = find(inci);
    return held !== undefined && !isItsOwnSubstance(held) && leadsBack(held, find, [...above, own]);
  });
}

describe('the materials that hold one', () => {
  const holders = (...names: string[]): string[] =>
    materialsHolding(engine, names)
      .map(({ id }) => id)
      .sort();

  it('are all that name it, or a material that does, however written', () => {
    const inner = put('Crème Nova', 'Aqua');
    const holder = put('Gel', 'CRÈME NOVA');
    const outer = put('Serum', 'gel');
    put('Other', 'Aqua');
    expect(holders('Crème Nova')).toEqual([holder, outer].sort());
    expect(holders('SERUM')).toEqual([]);
    expect(holders('Aqua')).toContain(inner);
    expect(holders()).toEqual([]);
  });

  it('are told each once where they hold each other', () => {
    const [one, two] = [put('One', 'Two'), put('Two', 'One')];
    expect(holders('One')).toEqual([one, two].sort());
  });

  it('are told behind hundreds of others that hold it as well', () => {
    put('Base', 'Aqua');
    const middle = Array.from({ length: 900 }, (_, n) => blend(`Middle ${n}`, 'Base'));
    const ids = middle.map((content) => add(engine, 'material', content));
    const outer = [0, 450, 899].map((n) => put(`Outer ${n}`, `Middle ${n}`));
    expect(holders('Base')).toEqual([...ids, ...outer].sort());
    const names = middle.map(({ tradeName }) => tradeName);
    expect(holders(...names)).toEqual(outer.sort());
  });

  it('are counted with the state that they are in', () => {
    put('Base', 'Aqua');
    const holder = put('Gel', 'Base');
    engine.run('UPDATE material SET revision = 7 WHERE id = ?', holder);
    expect(materialsHolding(engine, ['base'])).toEqual([{ id: holder, revision: 7 }]);
  });
});

describe('reading materials for computing', () => {
  it('passes over those that are gone, and asks for none where none is named', () => {
    const id = put('Base', 'Aqua');
    expect([...readMaterials(engine, ['gone', id, id]).keys()]).toEqual([id]);
    expect(readMaterials(engine, []).size).toBe(0);
  });

  it('looks into blends within blends to the bottom: ten deep', () => {
    for (let depth = 0; depth < 10; depth += 1)
      put(`Layer ${depth}`, depth === 9 ? 'Squalane' : `Layer ${depth + 1}`);
    const top = engine.get<{ id: string }>("SELECT id FROM material WHERE trade_name = 'Layer 0'")!.id;
    expect(
      readMaterials(engine, [top])
        .get(top)!
        .composition.map(({ inci }) => inci),
    ).toEqual(['Squalane']);
  });
});
