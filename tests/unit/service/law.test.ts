import type { Law } from '@core/limits/law';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

interface Page {
  total: number;
  rows: { id: string }[];
}

describe('substances and limits through the service', () => {
  it('begin with the examples, are listed, found, edited, and remembered', async () => {
    const { ask } = await serviceWith('empty');
    const { body: law } = await ask<Law>('GET', '/law');
    expect(law.limits.every(({ checked }) => checked.startsWith('example'))).toBe(true);
    const { body: found } = await ask<Page>('GET', '/substances?text=beeswax');
    expect(found.total).toBe(1);
    const { body: limits } = await ask<Page>('GET', '/limits?text=phenoxyethanol');
    expect(limits.total).toBeGreaterThan(0);
    const id = limits.rows[0]?.id ?? '';
    const { body: one } = await ask<Law['limits'][number]>('GET', `/limits/${id}`);
    const { revision, ...content } = one;
    const changed = { ...content, percent: 0.9, checked: 'checked' };
    expect((await ask('PUT', `/limits/${id}`, { revision, content: changed })).status).toBe(200);
    const { body: states } = await ask<{ changed: string[] }[]>('GET', `/records/limit/${id}/history`);
    expect(states[0]?.changed).toEqual(['Limit', 'Checked']);
    // What is there already is not added a second time; what was changed stays.
    const { body: again } = await ask<{ substances: number }>('POST', '/law/starter-set');
    expect(again.substances).toBe(0);
  });
});
