import type { Formula } from '@core/formulas/formula';
import { blankMaterial, type Material } from '@core/materials/material';
import type { Attention } from '@db/today/attention';
import type { Unfinished } from '@service/today/unfinished';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

it('names the drafts that are no whole, and the materials without a price or a needed figure', async () => {
  const { ask } = await serviceWith('empty');
  const today = async () => (await ask<Attention>('GET', '/today')).body;
  expect(Object.values(await today()).map(({ total }) => total)).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);

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
  expect(await today()).toMatchObject({
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
  expect([now.withoutPrice.total, now.oldPrice.total, now.withdrawn.total]).toEqual([0, 1, 0]);
  const withdrawn = { ...priced, withdrawnOn: '2026-07-01', withdrawnWhy: 'Recalled' };
  await ask('PUT', `/materials/${material.id}`, { revision: revision + 1, content: withdrawn });
  expect((await today()).withdrawn).toEqual({ total: 1, first: [{ id: material.id, name: 'Wax' }] });
});

it('names documents past their last day or near it, and data sheets long not asked for anew', async () => {
  const { ask } = await serviceWith('empty');
  const day = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
  const paper = (title: string, kind: string, dated: string, validUntil: string, digit: string) => ({
    ...{ title, kind, dated, validUntil },
    ...{ sha256: digit.repeat(64), mediaType: 'application/pdf', bytes: 9 },
  });
  const add = async (name: string, ...documents: unknown[]) =>
    (await ask<Material>('POST', '/materials', { ...blankMaterial(name, 'Olus Oil'), documents })).body;
  const { id } = await add(
    'Oil',
    paper('Organic 1', 'certificate', day(-400), day(-1), '1'),
    paper('Organic 2', 'certificate', day(-30), day(59), '2'),
    // The newer specification has taken its place.
    paper('Old', 'specification', day(-900), day(-2), '3'),
    paper('New', 'specification', day(-9), day(0), '4'),
    paper('Much later', 'other', day(-9), day(90), '5'),
  );
  const { id: butter } = await add('Butter', paper('Sheet', 'safety data sheet', day(-366 * 5), '', '6'));
  await add(
    'Wax',
    paper('Sheet 1', 'safety data sheet', day(-366 * 6), '', '7'),
    paper('Sheet 2', 'safety data sheet', day(-366), '', '8'),
  );
  const archived = { ...blankMaterial('Gone', 'Olus Oil'), status: 'archived' };
  const past = [paper('Organic', 'certificate', day(-400), day(-1), '9')];
  await ask('POST', '/materials', { ...archived, documents: past });
  const { pastDocuments, pastSoon, oldDataSheets } = (await ask<Attention>('GET', '/today')).body;
  expect(pastDocuments).toEqual({ total: 1, first: [{ of: 'material', id, name: 'Oil: Organic 1' }] });
  expect(pastSoon.first.map(({ name }) => name)).toEqual(['Oil: New', 'Oil: Organic 2']);
  expect(oldDataSheets).toEqual({ total: 1, first: [{ id: butter, name: 'Butter' }] });
});

it('refuses a document that ends before its own day', async () => {
  const { ask } = await serviceWith('empty');
  const paper = { kind: 'certificate', title: 'A', dated: '2026-03-02', validUntil: '2026-03-01' };
  const documents = [{ ...paper, sha256: 'a'.repeat(64), mediaType: 'application/pdf', bytes: 9 }];
  const refused = await ask('POST', '/materials', { ...blankMaterial('Oil', 'Olus Oil'), documents });
  expect(refused.status).toBe(422);
  expect(JSON.stringify(refused.body)).toContain('before its own date');
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
