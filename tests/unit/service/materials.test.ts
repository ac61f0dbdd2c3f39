import { blankMaterial, type Material } from '@core/materials/material';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

const add = (ask: Ask, name: string, inci: string) =>
  ask<Material>('POST', '/materials', blankMaterial(name, inci));

describe('raw materials through the service', () => {
  it('adds a material, finds it by a word start without accents, and reads it back whole', async () => {
    const { ask } = await serviceWith();
    const { status, body: added } = await add(ask, 'Émulsane 20', 'Ceteareth-20');
    expect(status).toBe(201);
    const { body: found } = await ask<ListPage<MaterialRow>>('GET', '/materials?text=emuls%20cete');
    expect(found.rows.map((row) => row.id)).toEqual([added.id]);
    expect((await ask<Material>('GET', `/materials/${added.id}`)).body).toEqual(added);
  });

  it('counts as on the shelf what the list shows: archived materials are counted apart', async () => {
    const { ask } = await serviceWith('demonstration');
    type Status = { open: { materials: number; archived: number } };
    const { open } = (await ask<Status>('GET', '/library')).body;
    const total = async (query: string) =>
      (await ask<ListPage<MaterialRow>>('GET', `/materials?limit=0${query}`)).body.total;
    expect(await total('')).toBe(open.materials - open.archived);
    expect(await total('&status=archived')).toBe(open.archived);
    expect(open.archived).toBeGreaterThan(0);
  });

  it('keeps every field of a full material through a close and an opening', async () => {
    const { ask, session } = await serviceWith('demonstration');
    const { body } = await ask<ListPage<MaterialRow>>(
      'GET',
      '/materials?limit=500&status=in%20use&status=on%20trial&status=archived',
    );
    const read = async () =>
      Promise.all(body.rows.map(async (row) => (await ask<Material>('GET', `/materials/${row.id}`)).body));
    const before = await read();
    const folder = session.current().library.folder;
    await session.close();
    await session.open(folder);
    expect(before.length).toBeGreaterThan(70);
    expect(await read()).toEqual(before);
  });

  it('refuses an edit that began from an older state, and says so', async () => {
    const { ask } = await serviceWith();
    const { body: material } = await add(ask, 'Wax', 'Cetyl Alcohol');
    const edit = (notes: string) =>
      ask<ProblemDetails>('PUT', `/materials/${material.id}`, {
        revision: 1,
        content: { ...blankMaterial('Wax', 'Cetyl Alcohol'), notes },
      });
    expect((await edit('first')).status).toBe(200);
    const second = await edit('second');
    expect(second.status).toBe(409);
    expect(second.type).toBe('application/problem+json');
    expect(second.body.code).toBe('conflict');
  });

  it.each([
    [
      'a share over 100 %',
      { composition: [{ inci: 'Aqua', lowPpm: 1_000_001, highPpm: 1_000_001 }] },
      'composition.0.lowPpm',
    ],
    [
      'shares that add up to more than 100 %',
      {
        composition: [
          { inci: 'Aqua', lowPpm: 700_000, highPpm: 700_000 },
          { inci: 'Glycerin', lowPpm: 400_000, highPpm: 400_000 },
        ],
      },
      'composition',
    ],
    ['an empty composition', { composition: [] }, 'composition'],
    [
      'an HLB of 41',
      { figures: { hlb: { low: null, value: 41, high: null, provenance: 'supplier', source: '' } } },
      'figures.hlb',
    ],
    [
      'a negative HLB',
      { figures: { hlb: { low: null, value: -1, high: null, provenance: 'supplier', source: '' } } },
      'figures.hlb',
    ],
    [
      'text where a number belongs',
      { figures: { hlb: { low: null, value: 'ten', high: null, provenance: 'supplier', source: '' } } },
      'figures.hlb.value',
    ],
    ['a name of 10,000 characters', { tradeName: 'x'.repeat(10_000) }, 'tradeName'],
    ['control characters in a name', { tradeName: 'Wax\u0007' }, 'tradeName'],
    ['a name of blanks', { tradeName: '   ' }, 'tradeName'],
  ])('refuses %s, naming the field and keeping what was there', async (_what, part, path) => {
    const { ask } = await serviceWith();
    const { body: material } = await add(ask, 'Wax', 'Cetyl Alcohol');
    const content = { ...blankMaterial('Wax', 'Cetyl Alcohol'), ...part };
    const answer = await ask<ProblemDetails>('PUT', `/materials/${material.id}`, { revision: 1, content });
    expect(answer.status).toBe(422);
    expect(answer.body.fields.map((field) => field.path)).toContain(`content.${path}`);
    expect(answer.body.title.length).toBeGreaterThan(10);
    expect((await ask<Material>('GET', `/materials/${material.id}`)).body).toEqual(material);
  });

  it('copies, archives and deletes; a used material is kept, and the refusal says where it is used', async () => {
    const { ask } = await serviceWith('demonstration');
    const { body: lists } = await ask<ListPage<MaterialRow>>('GET', '/materials?text=glycerin');
    const used = lists.rows.find((row) => row.inci === 'Glycerin');
    const refused = await ask<ProblemDetails>('DELETE', `/materials/${used?.id}`);
    expect(refused.status).toBe(409);
    expect(refused.body.code).toBe('in-use');
    expect(refused.body.title).toMatch(/is used in .+/);
    const { body: copy } = await ask<Material>('POST', `/materials/${used?.id}/copy`);
    expect(copy.tradeName).toMatch(/\(copy\)$/);
    expect((await ask('DELETE', `/materials/${copy.id}`)).status).toBe(204);
    expect((await ask('GET', `/materials/${copy.id}`)).status).toBe(404);
    const { id, revision, createdAt, updatedAt, ...content } = (
      await ask<Material>('GET', `/materials/${used?.id}`)
    ).body;
    expect([createdAt, updatedAt].every(Boolean)).toBe(true);
    await ask('PUT', `/materials/${id}`, { revision, content: { ...content, status: 'archived' } });
    const after = await ask<ListPage<MaterialRow>>('GET', '/materials?text=glycerin');
    expect(after.body.rows.map((row) => row.id)).not.toContain(id);
  });

  it('answers a body that is no JSON, and an unknown address, as problem details', async () => {
    const { service } = await serviceWith();
    const bad = await service.request('/api/materials', {
      method: 'POST',
      body: '{',
      headers: { 'Content-Type': 'application/json' },
    });
    expect(bad.status).toBe(422);
    expect(((await bad.json()) as ProblemDetails).code).toBe('invalid-input');
    const lost = await service.request('/api/nothing');
    expect(lost.status).toBe(404);
    expect(lost.headers.get('content-type')).toBe('application/problem+json');
  });
});
