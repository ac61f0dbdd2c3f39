import type { Formula } from '@core/formulas/formula';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { blankMaterial, type Material } from '@core/materials/material';
import type { FormulaRow } from '@core/formulas/list';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from '../service/service-fixture';

const read = async <T>(ask: Ask, path: string) => (await ask<T>('GET', path)).body;

async function usedOne(ask: Ask) {
  const formulas = (await read<ListPage<FormulaRow>>(ask, '/formulas')).rows;
  const { formula } = await read<{ formula: Formula }>(ask, `/formulas/${formulas[0]!.id}`);
  return { formula, material: formula.phases[0]!.lines[0]!.materialId };
}

describe('joining two materials that are one', () => {
  it('moves all uses, keeps what either said, puts away what versions were made of; and is taken back as one', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula, material } = await usedOne(ask);
    const was = await read<Material>(ask, `/materials/${material}`);
    const { body: made } = await ask<Material>('POST', '/materials', {
      ...blankMaterial('Larkspur Twin', was.composition[0]!.inci),
      countryOfOrigin: 'Ireland',
    });
    const { body: done } = await ask<{ moved: number; archived: string }>('POST', '/look-alikes/join', {
      keep: made.id,
      other: material,
    });
    expect(done.moved).toBeGreaterThan(0);
    expect(done.archived).toBe(was.tradeName);
    const after = await read<{ formula: Formula }>(ask, `/formulas/${formula.id}`);
    expect(JSON.stringify(after.formula)).not.toContain(material);
    expect(after.formula.phases[0]!.lines[0]!.materialId).toBe(made.id);
    const kept = await read<Material>(ask, `/materials/${made.id}`);
    expect(kept).toMatchObject({
      tradeName: 'Larkspur Twin',
      countryOfOrigin: 'Ireland',
      charge: was.charge,
    });
    expect(kept.offers).toHaveLength(was.offers.length);
    expect(kept.notes).toContain(`Joined with “${was.tradeName}”`);
    expect((await read<Material>(ask, `/materials/${material}`)).status).toBe('archived');

    expect((await ask('POST', '/look-alikes/take-back')).status).toBe(204);
    const back = await read<{ formula: Formula }>(ask, `/formulas/${formula.id}`);
    expect({ ...back.formula, revision: 0, updatedAt: '' }).toEqual({
      ...formula,
      revision: 0,
      updatedAt: '',
    });
    expect((await read<Material>(ask, `/materials/${material}`)).status).toBe(was.status);
    expect((await ask('POST', '/look-alikes/take-back')).status).toBe(404);
  });

  it('lets one that nothing was made of go, its history kept, and blends name the other', async () => {
    const { ask } = await serviceWith('empty');
    const add = async (content: object) => (await ask<Material>('POST', '/materials', content)).body;
    const keep = await add(blankMaterial('Larkspur Wax', 'Cetyl Alcohol'));
    const other = await add(blankMaterial('Larkspur Waxx', 'Cetyl Alcohol'));
    const blend = await add(blankMaterial('Blend', 'Larkspur Waxx'));
    const { body: found } = await ask<{ pairs: { by: string[] }[] }>('GET', '/look-alikes');
    expect(found.pairs.map(({ by }) => by)).toEqual([['name', 'substances']]);
    await ask('POST', '/look-alikes/join', { keep: keep.id, other: other.id });
    expect((await ask('GET', `/materials/${other.id}`)).status).toBe(404);
    expect((await read<Material>(ask, `/materials/${blend.id}`)).composition[0]!.inci).toBe('Larkspur Wax');
    const deleted = await read<{ title: string }[]>(ask, '/records/deleted');
    expect(deleted.map(({ title }) => title)).toEqual(['Larkspur Waxx']);
    expect((await ask('POST', '/look-alikes/take-back')).status).toBe(204);
    expect((await read<Material>(ask, `/materials/${other.id}`)).tradeName).toBe('Larkspur Waxx');
    expect((await read<Material>(ask, `/materials/${blend.id}`)).composition[0]!.inci).toBe('Larkspur Waxx');
    expect((await read<ListPage<MaterialRow>>(ask, '/materials')).total).toBe(3);
  });

  it('is not taken back over later work', async () => {
    const { ask } = await serviceWith('empty');
    const add = async (content: object) => (await ask<Material>('POST', '/materials', content)).body;
    const keep = await add(blankMaterial('Larkspur Wax', 'Cetyl Alcohol'));
    const other = await add(blankMaterial('Larkspur Waxx', 'Cetyl Alcohol'));
    await ask('POST', '/look-alikes/join', { keep: keep.id, other: other.id });
    const {
      id: _i,
      createdAt: _c,
      updatedAt: _u,
      revision,
      ...content
    } = await read<Material>(ask, `/materials/${keep.id}`);
    await ask('PUT', `/materials/${keep.id}`, { revision, content: { ...content, appearance: 'white' } });
    expect((await ask('POST', '/look-alikes/take-back')).body).toMatchObject({ code: 'conflict' });
    expect((await read<Material>(ask, `/materials/${keep.id}`)).appearance).toBe('white');
  });
});

describe('a table on its way in', () => {
  it('is told of a new material that looks like one of the library', async () => {
    const { ask } = await serviceWith('empty');
    await ask('POST', '/materials', blankMaterial('Larkspur Wax', 'Cetyl Alcohol'));
    const { body: begun } = await ask<{ id: string }>('POST', '/imports', {
      key: 'tradeName',
      file: 'x.csv',
    });
    const row = (tradeName: string, inci: string, line: number) => ({
      line,
      faults: [],
      values: { tradeName, composition: [{ inci, lowPpm: 1_000_000, highPpm: 1_000_000 }] },
    });
    const { body } = await ask<{ notes: string[] }[]>('POST', `/imports/${begun.id}/rows`, {
      rows: [
        row('Larkspur-Waxx', 'cetyl alcohol', 2),
        row('Larkspur Waxy', 'Aqua', 3),
        row('Foxglove Oil', 'Helianthus Annuus Seed Oil', 4),
      ],
    });
    expect(body.map(({ notes }) => notes)).toEqual([
      [
        'It looks like “Larkspur Wax”, which is in the library: nearly the same name and the same substances.',
      ],
      [],
      [],
    ]);
  });
});
