import type { Formula } from '@core/formulas/formula';
import { blankMaterial, type Material } from '@core/materials/material';
import type { Attention } from '@db/today/attention';
import type { Unfinished } from '@service/today/unfinished';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

it('names the drafts that are no whole, and the materials without a price or a needed figure', async () => {
  const { ask } = await serviceWith('empty');
  const today = async () => (await ask<Attention>('GET', '/today')).body;
  expect(Object.values(await today()).map(({ total }) => total)).toEqual([0, 0, 0, 0]);

  const wax = { ...blankMaterial('Wax', 'Ceteareth-20'), charge: 'non-ionic', functions: ['emulsifier'] };
  const { body: material } = await ask<Material>('POST', '/materials', wax);
  const start = { name: 'Cream', productType: 'o/w emulsion', use: 'leave-on' };
  const { body: formula } = await ask<Formula>('POST', '/formulas', start);
  const line = { id: material.id, materialId: material.id, toHundred: false, note: '' };
  const put = async (revision: number, ppm: number, toHundred = false) => {
    const { archived: _a, revision: _r, createdAt: _c, updatedAt: _u, id: _i, ...content } = formula;
    const [first, ...others] = content.phases;
    const phases = [{ ...first, lines: [{ ...line, ppm, toHundred }] }, ...others];
    const path = `/formulas/${formula.id}`;
    expect((await ask('PUT', path, { revision, content: { ...content, phases } })).status).toBe(200);
  };
  await put(1, 900_000);
  expect(await today()).toEqual({
    notWhole: { total: 1, first: [{ id: formula.id, name: 'Cream' }] },
    withoutPrice: { total: 1, first: [{ id: material.id, name: 'Wax' }] },
    oldPrice: { total: 0, first: [] },
    withoutHlb: { total: 1, first: [{ id: material.id, name: 'Wax' }] },
  });
  await put(2, 0, true);
  expect((await today()).notWhole.total).toBe(0);

  const offer = { supplier: 'Oak', itemCode: '', packMg: 1_000_000, priceMinor: 500, currency: 'EUR' };
  const { revision, createdAt: _c, updatedAt: _u, id: _i, ...content } = material;
  const priced = { ...content, offers: [{ ...offer, date: '2001-02-03' }] };
  await ask('PUT', `/materials/${material.id}`, { revision, content: priced });
  const now = await today();
  expect([now.withoutPrice.total, now.oldPrice.total]).toEqual([0, 1]);
});

it('names the unfinished drafts with what their checks found, until a version holds them', async () => {
  const { ask } = await serviceWith('empty');
  const unfinished = async () => (await ask<Unfinished[]>('GET', '/today/unfinished')).body;
  expect(await unfinished()).toEqual([]);
  const start = { name: 'Cream', productType: 'o/w emulsion', use: 'leave-on' };
  const { body: formula } = await ask<Formula>('POST', '/formulas', start);
  const { body: wax } = await ask<Material>('POST', '/materials', blankMaterial('Wax', 'Ceteareth-20'));
  const { archived: _a, revision, createdAt: _c, updatedAt: _u, id: _i, ...content } = formula;
  const [first, ...others] = content.phases;
  const put = (revision: number, ppm: number) => {
    const line = { id: wax.id, materialId: wax.id, ppm, toHundred: false, note: '' };
    const phases = [{ ...first, lines: [line] }, ...others];
    return ask('PUT', `/formulas/${formula.id}`, { revision, content: { ...content, phases } });
  };
  await put(revision, 900_000);
  const [found] = await unfinished();
  expect(found).toMatchObject({ id: formula.id, name: 'Cream' });
  expect(found?.findings).toBeGreaterThan(0);
  // What makes no whole is not recorded.
  await put(revision + 1, 1_000_000);
  const recorded = await ask('POST', `/formulas/${formula.id}/versions`, { reason: 'First', recordedBy: '' });
  expect(recorded.status).toBe(201);
  expect(await unfinished()).toEqual([]);
});
