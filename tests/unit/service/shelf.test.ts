import { blankMaterial, type Material } from '@core/materials/material';
import type { Reader } from '@db/database';
import { idsWithFunction, materials } from '@db/materials/materials';
import { KeptShelf, stampOf, type Lacking, type Shelf } from '@service/shelf/kept-shelf';
import { overShelf } from '@service/shelf/over-shelf';
import { describe, expect, test } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

async function add(ask: Ask, tradeName: string, inci: string): Promise<Material> {
  const content = { ...blankMaterial(tradeName, inci), functions: ['emulsifier'] };
  return (await ask<Material>('POST', '/materials', content)).body;
}

/** An edit as the screen makes it, of the material as it stands now. */
async function edit(ask: Ask, { id }: Material, change: Partial<Material>): Promise<void> {
  const { body } = await ask<Material>('GET', `/materials/${id}`);
  const { id: _i, revision, createdAt: _c, updatedAt: _u, ...content } = body;
  await ask('PUT', `/materials/${id}`, { revision, content: { ...content, ...change } });
}

/** A thread's side, and what was sent to it. */
function thread() {
  const kept = new KeptShelf();
  const sent: number[] = [];
  const names = async (shelf: Shelf): Promise<{ names: string[] } | Lacking> => {
    sent.push(shelf.rows.flatMap(({ records }) => records).length);
    const taken = kept.take(shelf);
    return 'lacking' in taken ? taken : { names: taken.map(({ tradeName }) => tradeName) };
  };
  return { names, sent };
}

describe('materials that a thread computes with', () => {
  test('come once, and then only those that changed since, in the order asked for', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const [wax, gel] = [
      await add(ask, 'Thistle Wax', 'Glyceryl Stearate'),
      await add(ask, 'Thistle Gel', 'Carbomer'),
    ];
    const { names, sent } = thread();
    expect(await overShelf(library, () => [wax.id, gel.id], names)).toEqual({
      names: ['Thistle Wax', 'Thistle Gel'],
    });
    expect(sent).toEqual([0, 2]);
    expect(await overShelf(library, () => [gel.id, wax.id], names)).toEqual({
      names: ['Thistle Gel', 'Thistle Wax'],
    });
    expect(sent).toEqual([0, 2, 0]);
    await edit(ask, gel, { tradeName: 'Bramble Gel' });
    expect(await overShelf(library, () => [wax.id, gel.id], names)).toEqual({
      names: ['Thistle Wax', 'Bramble Gel'],
    });
    expect(sent).toEqual([0, 2, 0, 0, 1]);
  });

  test('are asked for again by a thread that was started anew', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const wax = await add(ask, 'Thistle Wax', 'Glyceryl Stearate');
    expect(await overShelf(library, () => [wax.id], thread().names)).toEqual({ names: ['Thistle Wax'] });
    expect(await overShelf(library, () => [wax.id], thread().names)).toEqual({ names: ['Thistle Wax'] });
  });

  test('one that is edited while it is read comes as it is after that', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const wax = await add(ask, 'Thistle Wax', 'Glyceryl Stearate');
    const { names } = thread();
    let rounds = 0;
    const answer = await overShelf(
      library,
      () => [wax.id],
      async (shelf) => {
        const told = await names(shelf);
        rounds += 1;
        if (rounds === 1) await edit(ask, wax, { tradeName: 'Bramble Wax' });
        return told;
      },
    );
    expect(answer).toEqual({ names: ['Bramble Wax'] });
  });

  test('one that is deleted meanwhile is left out', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const [wax, gel] = [
      await add(ask, 'Thistle Wax', 'Glyceryl Stearate'),
      await add(ask, 'Thistle Gel', 'Carbomer'),
    ];
    await ask('DELETE', `/materials/${gel.id}`);
    expect(materials.read(library, gel.id)).toBeUndefined();
    expect(await overShelf(library, () => [wax.id, gel.id], thread().names)).toEqual({
      names: ['Thistle Wax'],
    });
  });

  test('a blend brings what the material within it holds now, though the blend itself was never edited', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const inner = await add(ask, 'Thistle Base', 'Ceteareth-20');
    const blend = await add(ask, 'Thistle Blend', 'thistle base');
    const kept = new KeptShelf();
    const held = async (): Promise<{ inci: string[] }> =>
      overShelf(
        library,
        () => [blend.id],
        async (shelf) => {
          const taken = kept.take(shelf);
          return 'lacking' in taken
            ? taken
            : { inci: taken.flatMap(({ composition }) => composition.map((part) => part.inci)) };
        },
      );
    expect(await held()).toEqual({ inci: ['Ceteareth-20'] });
    const composition = inner.composition.map((part) => ({ ...part, inci: 'Steareth-21' }));
    await edit(ask, inner, { composition });
    expect(await held()).toEqual({ inci: ['Steareth-21'] });
  });

  test('are looked for once as long as nothing changes, and anew after every change', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const wax = await add(ask, 'Thistle Wax', 'Glyceryl Stearate');
    let looked = 0;
    const which = (db: Reader): string[] => {
      looked += 1;
      return idsWithFunction(db, ['emulsifier']);
    };
    const { names } = thread();
    expect(await overShelf(library, which, names)).toEqual({ names: ['Thistle Wax'] });
    expect(await overShelf(library, which, names)).toEqual({ names: ['Thistle Wax'] });
    expect(looked).toBe(1);
    await add(ask, 'Thistle Gel', 'Carbomer');
    expect(await overShelf(library, which, names)).toEqual({ names: ['Thistle Gel', 'Thistle Wax'] });
    const backup = await library.backUp();
    await edit(ask, wax, { status: 'archived' });
    expect(await overShelf(library, which, names)).toEqual({ names: ['Thistle Gel'] });
    await library.restore(backup.name);
    expect(await overShelf(library, which, names)).toEqual({ names: ['Thistle Gel', 'Thistle Wax'] });
    expect(looked).toBe(4);
  });

  test('every edit gives another stamp, even within one moment', async () => {
    const { ask, session } = await serviceWith();
    const { library } = session.current();
    const wax = await add(ask, 'Thistle Wax', 'Glyceryl Stearate');
    const before = materials.read(library, wax.id)!;
    await edit(ask, wax, { tradeName: 'Bramble Wax' });
    expect(stampOf(materials.read(library, wax.id)!)).not.toBe(stampOf(before));
    expect(stampOf({ ...before, revision: before.revision + 1 })).not.toBe(stampOf(before));
  });
});
