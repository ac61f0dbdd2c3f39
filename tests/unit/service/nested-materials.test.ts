import { blankMaterial, type Material } from '@core/materials/material';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

const half = (...names: string[]) =>
  names.map((inci) => ({ inci, lowPpm: 1_000_000 / names.length, highPpm: 1_000_000 / names.length }));

describe('a material within a material', () => {
  it('counts in formulas with what it holds, and reads back as it was written', async () => {
    const { ask } = await serviceWith();
    const add = (name: string, ...names: string[]) =>
      ask<Material>('POST', '/materials', { ...blankMaterial(name, ''), composition: half(...names) });
    await add('Larder Mix', 'Phenoxyethanol', 'Benzyl Alcohol');
    const { body: outer } = await add('Larder Base', 'larder mix', 'Aqua');
    expect((await ask<Material>('GET', `/materials/${outer.id}`)).body.composition).toEqual(
      outer.composition,
    );
    const { body: whole } = await ask<Material>('GET', `/materials/${outer.id}/whole`);
    expect(whole.composition).toEqual([
      { inci: 'Phenoxyethanol', lowPpm: 250_000, highPpm: 250_000 },
      { inci: 'Benzyl Alcohol', lowPpm: 250_000, highPpm: 250_000 },
      { inci: 'Aqua', lowPpm: 500_000, highPpm: 500_000 },
    ]);
  });

  it('is refused where it leads back, with what to do, and nothing is changed', async () => {
    const { ask } = await serviceWith();
    const { body: first } = await ask<Material>('POST', '/materials', {
      ...blankMaterial('Ring One', ''),
      composition: half('Aqua'),
    });
    await ask('POST', '/materials', {
      ...blankMaterial('Ring Two', ''),
      composition: half('Ring One', 'Urea'),
    });
    const { revision, id, createdAt: _c, updatedAt: _u, ...content } = first;
    const { status, body } = await ask<ProblemDetails>('PUT', `/materials/${id}`, {
      revision,
      content: { ...content, composition: half('Ring Two') },
    });
    expect(status).toBe(422);
    expect(body.title).toContain('leads back to itself');
    expect((await ask<Material>('GET', `/materials/${id}`)).body).toEqual(first);
  });

  it('is refused where a deleted one that is brought back would lead back, and the library stays as it was', async () => {
    const { ask } = await serviceWith();
    const add = async (name: string, ...names: string[]) =>
      (await ask<Material>('POST', '/materials', { ...blankMaterial(name, ''), composition: half(...names) }))
        .body;
    const inner = await add('Loop In', 'Aqua');
    const outer = await add('Loop Out', 'Loop In', 'Urea');
    expect((await ask('DELETE', `/materials/${outer.id}`)).status).toBe(204);
    const { revision, id, createdAt: _c, updatedAt: _u, ...content } = inner;
    const edited = { revision, content: { ...content, composition: half('Loop Out', 'Aqua') } };
    expect((await ask('PUT', `/materials/${id}`, edited)).status).toBe(200);
    const { status, body } = await ask<ProblemDetails>(
      'POST',
      `/records/deleted/material/${outer.id}/bring-back`,
    );
    expect(status).toBe(422);
    expect(body.title).toContain('leads back to itself');
    expect((await ask('GET', `/materials/${outer.id}`)).status).toBe(404);
  });

  it('may still be edited where it came to lead back without an edit of its own, all but what it is called and holds', async () => {
    const { ask } = await serviceWith();
    const add = async (name: string, ...names: string[]) =>
      (await ask<Material>('POST', '/materials', { ...blankMaterial(name, ''), composition: half(...names) }))
        .body;
    // A name that two materials share means neither, until one of them goes.
    const plain = await add('Twin', 'Aqua');
    await add('Twin', 'Ring', 'Urea');
    const ring = await add('Ring', 'Twin', 'Glycerin');
    expect((await ask('DELETE', `/materials/${plain.id}`)).status).toBe(204);
    const { revision, id, createdAt: _c, updatedAt: _u, ...content } = ring;
    const put = (at: number, changed: object) =>
      ask<Material>('PUT', `/materials/${id}`, { revision: at, content: { ...content, ...changed } });
    const noted = await put(revision, { notes: 'kept dry' });
    expect([noted.status, noted.body.notes]).toEqual([200, 'kept dry']);
    expect((await put(noted.body.revision, { composition: half('Twin', 'Urea') })).status).toBe(422);
    expect((await put(noted.body.revision, { composition: half('Aqua', 'Urea') })).status).toBe(200);
  });

  it('tells of what holds it when it changes, so that every window counts it anew', async () => {
    const { ask, session } = await serviceWith();
    const add = async (name: string, ...names: string[]) =>
      (await ask<Material>('POST', '/materials', { ...blankMaterial(name, ''), composition: half(...names) }))
        .body;
    const inner = await add('Told In', 'Aqua');
    const middle = await add('Told Between', 'told in', 'Urea');
    const outer = await add('Told Out', 'Told Between');
    const told: string[] = [];
    const { tell } = session.changes;
    session.changes.tell = (change) => (
      told.push(`${change.kind} ${change.id}`),
      tell.call(session.changes, change)
    );
    const { revision, id, createdAt: _c, updatedAt: _u, ...content } = inner;
    const changed = { ...content, composition: half('Aqua', 'Glycerin') };
    const { body } = await ask<Material>('PUT', `/materials/${id}`, { revision, content: changed });
    expect(told).toEqual([inner, middle, outer].map((one) => `material ${one.id}`));
    told.length = 0;
    // What is written beside the composition concerns nobody else.
    await ask('PUT', `/materials/${id}`, {
      revision: body.revision,
      content: { ...changed, notes: 'kept dry' },
    });
    expect(told).toEqual([`material ${id}`]);
  });
});
