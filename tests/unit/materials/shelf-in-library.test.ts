import { newestOffer, newestPrice, pricePerKgMinor } from '@core/costing/offers';
import { figureValue } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import { readSketches } from '@db/lookalikes/sketches';
import { readGlances } from '@db/record/glance';
import { MATERIALS_TABLE, readMaterialEntries } from '@db/materials/list';
import { idsWithFunction, idsWithInciEnding, readMaterial, withdrawnAmong } from '@db/materials/materials';
import { materialUses } from '@db/materials/uses';
import type { Engine } from '@db/library/sql/engine';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { anyContent } from '../record/any-record';
import {
  add,
  edit,
  emptyLibrary,
  formulaOf,
  plan,
  record,
  smallLibrary,
  wax,
} from '../merging/two-libraries';

/* What lists, pickers and look-ups say of materials, against the materials themselves. */

let engine: Engine;
beforeEach(async () => {
  engine = await emptyLibrary();
});

/** Some materials as odd as a library may hold them, on a shelf that is empty afterwards. */
function onShelf(count: number, law: (all: Material[]) => void): void {
  const contents = fc.array(anyContent(MATERIAL.fields), { maxLength: count });
  fc.assert(
    fc.property(contents, (some) => {
      engine.control('BEGIN');
      try {
        const ids = some.map((content) => add(engine, 'material', MATERIAL.read(content)));
        law(ids.map((id) => readMaterial(engine, id)!));
      } finally {
        engine.control('ROLLBACK');
      }
    }),
    { numRuns: 30 },
  );
}
const byName = (one: Material, other: Material): number =>
  Buffer.compare(Buffer.from(one.tradeName), Buffer.from(other.tradeName)) || (one.id < other.id ? -1 : 1);
const onHand = ({ status, withdrawnOn }: Material): boolean => status !== 'archived' && withdrawnOn === '';

describe('the list of materials', () => {
  it('shows of each what the material says: its newest supplier and price, its largest part first', () => {
    onShelf(4, (all) => {
      const entries = new Map(readMaterialEntries(engine).map((entry) => [entry.id, entry]));
      expect([...entries.keys()].sort()).toEqual(all.map(({ id }) => id).sort());
      for (const one of all) {
        const { inci, suppliers, ...entry } = entries.get(one.id)!;
        const price = newestPrice(one.offers);
        const { tradeName, code, status, charge, form, origin, notes, photo, functions, withdrawnOn } = one;
        expect(entry).toMatchObject({
          ...{ tradeName, code, status, charge, form, origin, notes, photo, functions, withdrawnOn },
          keepFrom: one.storage.keepFrom,
          hlb: figureValue(one.figures.hlb),
          requiredHlbOw: figureValue(one.figures.requiredHlbOw),
          meltingPoint: figureValue(one.figures.meltingPoint),
          supplier: newestOffer(one.offers)?.supplier ?? '',
          pricePerKg: price && Math.round(pricePerKgMinor(price)),
          currency: price && price.currency,
        });
        expect([...suppliers].sort()).toEqual(
          [...new Set(one.offers.map(({ supplier }) => supplier))].sort(),
        );
        const parts = one.composition.toSorted((a, b) => b.lowPpm + b.highPpm - a.lowPpm - a.highPpm);
        expect(inci).toBe(parts.map((part) => part.inci).join(', '));
      }
    });
  });

  it('reads some as it reads all, those that are gone left out', () => {
    onShelf(5, (all) => {
      const whole = readMaterialEntries(engine);
      const wanted = all.filter((_, at) => at % 2 === 0).map(({ id }) => id);
      expect(readMaterialEntries(engine, [...wanted, 'gone', ...wanted])).toEqual(
        whole.filter(({ id }) => wanted.includes(id)),
      );
      expect(readMaterialEntries(engine, [])).toEqual([]);
    });
  });

  it('says at a glance what it says in whole, of those that are not put away', () => {
    onShelf(5, (all) => {
      const keys = ['tradeName', 'code', 'charge', 'updatedAt', 'tradeName'];
      const shown = all.filter(({ status }) => status !== 'archived');
      const glances = readGlances(engine, MATERIALS_TABLE, keys)!;
      expect(new Map(glances.map((one) => [one.id, one]))).toEqual(
        new Map(
          shown.map(({ id, tradeName, code, charge, updatedAt }) => [
            id,
            { id, tradeName, code, charge, updatedAt },
          ]),
        ),
      );
      // What has to be worked out is not to be had so.
      expect(readGlances(engine, MATERIALS_TABLE, ['tradeName', 'pricePerKg'])).toBeUndefined();
    });
  });
});

describe('looking up materials', () => {
  it('by what they do finds those on hand, each once, by name', () => {
    onShelf(6, (all) => {
      const wanted = ['emulsifier', 'humectant', 'solvent'];
      const found = all.filter((one) => onHand(one) && one.functions.some((word) => wanted.includes(word)));
      expect(idsWithFunction(engine, wanted)).toEqual(found.sort(byName).map(({ id }) => id));
      expect(idsWithFunction(engine, [])).toEqual([]);
    });
  });

  it('by the end of an INCI name ignores case, and passes over what is put away', () => {
    const holding = (inci: string) => ({ ...wax('One'), composition: [{ inci, lowPpm: 1, highPpm: 1 }] });
    const [oil, upper] = ['Rosa Canina Seed Oil', 'PERSEA GRATISSIMA OIL'].map((inci) =>
      add(engine, 'material', holding(inci)),
    );
    add(engine, 'material', holding('Oil of nothing'));
    add(engine, 'material', { ...holding('Olea Europaea Fruit Oil'), status: 'archived' });
    expect(idsWithInciEnding(engine, ' oil')).toEqual([oil, upper].sort());
  });

  it('of those withdrawn tells when and why, of some materials, however many are asked about', () => {
    onShelf(6, (all) => {
      const asked = [...all.map(({ id }) => id), ...Array.from({ length: 1_500 }, (_, n) => `gone ${n}`)];
      const found = withdrawnAmong(engine, asked);
      expect(found.map(({ id }) => id).sort()).toEqual(
        all
          .filter(({ withdrawnOn }) => withdrawnOn !== '')
          .map(({ id }) => id)
          .sort(),
      );
      for (const { id, withdrawnOn, withdrawnWhy } of found)
        expect(all.find((one) => one.id === id)).toMatchObject({ withdrawnOn, withdrawnWhy });
      expect(withdrawnAmong(engine, [])).toEqual([]);
    });
  });

  it('for those that look alike leaves out what is put away, and keeps parts in their order', () => {
    onShelf(5, (all) => {
      const shown = all.filter(({ status }) => status !== 'archived');
      expect(new Map(readSketches(engine).map((sketch) => [sketch.id, sketch]))).toEqual(
        new Map(
          shown.map(({ id, tradeName, code, composition }) => [id, { id, tradeName, code, composition }]),
        ),
      );
    });
  });
});

describe('where a material is used', () => {
  it('is told by draft, version and batch, each once, and whether it is still as a version froze it', async () => {
    const { engine: library, water, oil, formula, version, batch } = await smallLibrary();
    const second = record(library, formula, 2);
    plan(library, second, 'B-002', water);
    const uses = () => materialUses(library, readMaterial(library, water)!);
    expect(uses()).toEqual([
      ...[
        {
          formulaId: formula,
          formulaName: 'Balm',
          versionNumber: null,
          versionId: null,
          asNow: true,
          batches: [],
        },
        {
          formulaId: formula,
          formulaName: 'Balm',
          versionNumber: 1,
          versionId: version,
          asNow: true,
          batches: ['B-001'],
        },
        {
          formulaId: formula,
          formulaName: 'Balm',
          versionNumber: 2,
          versionId: second,
          asNow: true,
          batches: ['B-002'],
        },
      ],
    ]);
    expect(batch).toBeDefined();
    edit(library, 'material', water, { notes: 'another drum' });
    expect(uses().map(({ asNow }) => asNow)).toEqual([true, false, false]);
    edit(library, 'formula', formula, { phases: [] });
    expect(uses().map(({ versionNumber }) => versionNumber)).toEqual([1, 2]);
    expect(materialUses(library, readMaterial(library, oil)!)).toHaveLength(2);
  });

  it('is nowhere for one that nothing uses, and once where a formula holds it in two phases', () => {
    const id = add(engine, 'material', wax('Spare Wax'));
    expect(materialUses(engine, readMaterial(engine, id)!)).toEqual([]);
    const [one, two] = [formulaOf('Twice', '', [id, id]), formulaOf('Twice', '', [id])];
    add(engine, 'formula', {
      ...one,
      phases: [...one.phases, ...two.phases].map((phase, at) => ({
        ...phase,
        lines: phase.lines.map((line) => ({ ...line, toHundred: at === 0 && line.toHundred })),
      })),
    });
    expect(materialUses(engine, readMaterial(engine, id)!)).toHaveLength(1);
  });
});
