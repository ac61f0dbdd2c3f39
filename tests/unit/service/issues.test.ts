import type { Material } from '@core/materials/material';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../sheets/read-pdf';
import { serviceWith, type Ask } from './service-fixture';

beforeAll(async () => {
  await import('@service/sheets/render');
});

describe('issues of a specification', () => {
  let service: Awaited<ReturnType<typeof serviceWith>>['service'];
  let ask: Ask;
  let id: string;

  async function print(issue: boolean): Promise<{ text: string; name: string }> {
    const response = await service.request('/api/sheets', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ kind: 'material', materialId: id, issue }),
    });
    expect(response.status).toBe(200);
    const { text } = await readPdf(new Uint8Array(await response.arrayBuffer()));
    return { text, name: response.headers.get('content-disposition') ?? '' };
  }
  async function edit(change: Partial<Material>): Promise<void> {
    const {
      revision,
      id: _id,
      createdAt: _came,
      updatedAt: _at,
      ...content
    } = (await ask<Material>('GET', `/materials/${id}`)).body;
    const answer = await ask('PUT', `/materials/${id}`, { revision, content: { ...content, ...change } });
    expect(answer.status).toBe(200);
  }

  it('are numbered by what was printed, not by how often it was saved', async () => {
    ({ ask, service } = await serviceWith('demonstration'));
    id = (await ask<{ rows: { id: string }[] }>('GET', '/materials?text=glycerin')).body.rows[0]?.id ?? '';
    expect((await print(false)).text).toContain('Not issued as it is');
    await edit({ notes: 'a' });
    await edit({ notes: 'b' });
    const first = await print(true);
    expect(first.text).toMatch(/issue 1\b/);
    expect(first.name).toContain('-issue-1.pdf');
    // Printed again as it is, it is the same issue, also where it is only looked at.
    expect((await print(true)).name).toContain('-issue-1.pdf');
    expect((await print(false)).text).toMatch(/issue 1\b/);

    await edit({ notes: 'c' });
    expect((await print(false)).text).toContain('Not issued as it is');
    expect((await print(true)).name).toContain('-issue-2.pdf');
    // What it was before, put back, is issued anew: a reader of two sheets sees which came later.
    await edit({ notes: 'b' });
    expect((await print(true)).name).toContain('-issue-3.pdf');
  });
});
