import { blankMaterial, type Material } from '@core/materials/material';
import type { Formula } from '@core/formulas/formula';
import type { Deleted, HistoryStep } from '@service/record/history';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

async function material(ask: Ask, name: string): Promise<Material> {
  const { body } = await ask<Material>('POST', '/materials', blankMaterial(name, 'Glycerin'));
  return body;
}

async function change(ask: Ask, one: Material, part: Partial<Material>): Promise<Material> {
  const { id, revision, createdAt: _c, updatedAt: _u, ...content } = one;
  const { body } = await ask<Material>('PUT', `/materials/${id}`, {
    revision,
    content: { ...content, ...part },
  });
  return body;
}

describe('the history of a record, as a screen asks for it', () => {
  it('tells each sitting’s changes by their labels, newest first, and what it was then', async () => {
    const { ask } = await serviceWith();
    const first = await material(ask, 'Brackwater Glycerin');
    // Another author: another sitting.
    await ask('PATCH', '/settings', { recordedBy: 'Grace' });
    const second = await change(ask, first, { notes: 'viscous', origin: 'natural' });
    await ask('PATCH', '/settings', { recordedBy: 'Ada' });
    await change(ask, second, { tradeName: 'Brackwater Glycerin 99' });
    const { body } = await ask<HistoryStep[]>('GET', `/records/material/${first.id}/history`);
    expect(body.map(({ n, by, changed }) => [n, by, changed])).toEqual([
      [null, 'Ada', ['Trade name']],
      [2, 'Grace', ['Origin', 'Notes']],
      [1, '', []],
    ]);
    const then = await ask('GET', `/records/material/${first.id}/history/1`);
    expect(then.body).toMatchObject({ tradeName: 'Brackwater Glycerin', notes: '' });
    const nothing = await ask('GET', `/records/material/${first.id}/history/9`);
    expect(nothing.status).toBe(404);
    expect((await ask('GET', `/records/material/${first.id}/history/x`)).status).toBe(404);
    expect((await ask('GET', `/records/teapot/${first.id}/history`)).status).toBe(404);
  });

  it('lists what was deleted, and brings it back with its history', async () => {
    const { ask } = await serviceWith();
    const one = await material(ask, 'Brackwater Glycerin');
    await ask('DELETE', `/materials/${one.id}`);
    const { body: gone } = await ask<Deleted[]>('GET', '/records/deleted');
    expect(gone).toMatchObject([{ kind: 'material', id: one.id, title: 'Brackwater Glycerin' }]);
    const back = await ask('POST', `/records/deleted/material/${one.id}/bring-back`);
    expect(back.status).toBe(201);
    expect((await ask('GET', `/materials/${one.id}`)).body).toMatchObject({ tradeName: one.tradeName });
    expect((await ask('GET', '/records/deleted')).body).toEqual([]);
    expect((await ask('POST', `/records/deleted/material/${one.id}/bring-back`)).status).toBe(404);
    const found = await ask<{ total: number }>('GET', '/materials?text=brackwater');
    expect(found.body.total).toBe(1);
  });

  it('says which material to restore first, when a formula’s were deleted after it', async () => {
    const { ask } = await serviceWith();
    const one = await material(ask, 'Brackwater Glycerin');
    const start = { name: 'Gel', productType: 'gel', use: 'leave-on' };
    const { body: formula } = await ask<Formula>('POST', '/formulas', start);
    const line = { id: one.id, materialId: one.id, ppm: 1, toHundred: false, note: '' };
    const phases = formula.phases.map((phase, at) => (at === 0 ? { ...phase, lines: [line] } : phase));
    await ask('PUT', `/formulas/${formula.id}`, { revision: 1, content: { ...formula, phases } });
    await ask('DELETE', `/formulas/${formula.id}`);
    await ask('DELETE', `/materials/${one.id}`);
    const refused = await ask('POST', `/records/deleted/formula/${formula.id}/bring-back`);
    expect([refused.status, refused.body.code]).toEqual([409, 'in-use']);
    await ask('POST', `/records/deleted/material/${one.id}/bring-back`);
    expect((await ask('POST', `/records/deleted/formula/${formula.id}/bring-back`)).status).toBe(201);
    const next = await ask<Formula>('POST', '/formulas', start);
    expect(next.body.code).not.toBe(formula.code);
  });

  it('tells of a material which versions hold another state than it has now', async () => {
    const { ask } = await serviceWith('demonstration');
    const { body: list } = await ask<{ id: string }[] | { rows: { id: string }[] }>('GET', '/formulas');
    const [{ id } = { id: '' }] = Array.isArray(list) ? list : list.rows;
    const { body } = await ask<{ formula: Formula }>('GET', `/formulas/${id}`);
    const { materialId } = body.formula.phases.flatMap((phase) => phase.lines)[0]!;
    await ask('POST', `/formulas/${id}/versions`, { reason: '', recordedBy: '' });
    const uses = async () =>
      (await ask<{ versionNumber: number | null; asNow: boolean }[]>('GET', `/materials/${materialId}/uses`))
        .body;
    expect((await uses()).find(({ versionNumber }) => versionNumber === 1)?.asNow).toBe(true);
    const { body: used } = await ask<Material>('GET', `/materials/${materialId}`);
    await change(ask, used, { notes: 'Changed since.' });
    expect((await uses()).find(({ versionNumber }) => versionNumber === 1)?.asNow).toBe(false);
  });
});
