import { blankMaterial } from '@core/materials/material';
import { hearChanges, type Heard } from '@renderer/record/change-stream';
import { describe, expect, it, onTestFinished } from 'vitest';
import { serviceWith } from './service-fixture';

type Composed = Awaited<ReturnType<typeof serviceWith>>;

/** Hears a service's changes as a window does, until the test ends. */
function hear({ service, session }: Composed, from: { run: string; told: number } | null = null) {
  const heard: Heard[] = [];
  const stop = new AbortController();
  let position = from ?? session.changes.position();
  const ended = hearChanges(
    {
      connect: async (signal) => service.request('/api/changes', { signal }),
      position: () => position,
      hear: (one) => {
        if ('position' in one) position = one.position;
        heard.push(one);
      },
    },
    stop.signal,
  );
  onTestFinished(async () => {
    stop.abort();
    session.changes.end();
    await ended;
  });
  return {
    heard,
    changes: () => heard.flatMap((one) => (one.is === 'change' ? [one.change] : [])),
    connected: () => expect.poll(() => heard).toContainEqual({ is: 'connected' }),
  };
}

const glycerin = blankMaterial('Glycerin 99', 'Glycerin');

describe('The changes of a library', () => {
  it('are told to a window that did not make them, with the count of edits', async () => {
    const composed = await serviceWith();
    const window = hear(composed);
    await window.connected();
    const made = await composed.ask<{ id: string }>('POST', '/materials', glycerin);
    const { id } = made.body;
    await composed.ask('PUT', `/materials/${id}`, { revision: 1, content: { ...glycerin, notes: 'New.' } });
    await composed.ask('PATCH', '/settings', { theme: 'dark' });
    await composed.ask('DELETE', `/materials/${id}`);
    await expect.poll(() => window.changes()).toHaveLength(4);
    expect(window.changes()).toEqual([
      { kind: 'material', id, revision: 1 },
      { kind: 'material', id, revision: 2 },
      { kind: 'settings', id: 'settings', revision: 1 },
      { kind: 'material', id, revision: null },
    ]);
  });

  it('are not told of what was refused', async () => {
    const composed = await serviceWith();
    const window = hear(composed);
    await window.connected();
    const { body } = await composed.ask<{ id: string }>('POST', '/materials', glycerin);
    const refused = await composed.ask('PUT', `/materials/${body.id}`, { revision: 7, content: glycerin });
    expect(refused.status).toBe(409);
    await composed.ask('PATCH', '/settings', { theme: 'light' });
    await expect.poll(() => window.changes()).toHaveLength(2);
  });

  it('are told of each kind of record', async () => {
    const composed = await serviceWith('demonstration');
    const window = hear(composed);
    await window.connected();
    const wanted = { name: 'Balm', productType: 'anhydrous', use: 'leave-on' };
    const { body } = await composed.ask<{ id: string }>('POST', '/formulas', wanted);
    await composed.ask('PUT', `/formulas/${body.id}/archived`, { revision: 1, archived: true });
    await composed.ask('POST', '/searches', { name: 'Waxes', query: 'form=wax' });
    await expect.poll(() => window.changes()).toHaveLength(3);
    expect(window.changes()).toMatchObject([
      { kind: 'formula', id: body.id, revision: 1 },
      { kind: 'formula', id: body.id, revision: 2 },
      { kind: 'saved search' },
    ]);
  });

  it('say that another library, or none, is open', async () => {
    const composed = await serviceWith();
    const window = hear(composed);
    await window.connected();
    await composed.ask('POST', '/library/close');
    await expect.poll(() => window.changes()).toEqual([{ kind: 'library', id: '', revision: null }]);
  });

  it('that went by unheard are said to be missed, and none when there were none', async () => {
    const composed = await serviceWith();
    const before = composed.session.changes.position();
    const current = hear(composed, before);
    await current.connected();
    expect(current.heard).toEqual([{ is: 'connected' }]);
    await composed.ask('POST', '/materials', glycerin);
    const late = hear(composed, before);
    await expect.poll(() => late.heard.map(({ is }) => is)).toEqual(['connected', 'missed']);
  });

  it('are heard again by itself after the service let go, as when its host starts anew', async () => {
    const composed = await serviceWith();
    const window = hear(composed);
    await window.connected();
    composed.session.changes.end();
    await expect.poll(() => window.heard.filter(({ is }) => is === 'connected')).toHaveLength(2);
    await composed.ask('POST', '/materials', glycerin);
    await expect.poll(() => window.changes()).toHaveLength(1);
  });
});
