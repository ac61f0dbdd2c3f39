import { outcomeWords, yieldPercent, type BatchOutcome } from '@core/batches/outcome';
import type { Batch } from '@core/batches/batch';
import type { BatchRow } from '@core/batches/list';
import type { ListPage } from '@core/lists/query';
import { afterEach, expect, it, vi } from 'vitest';
import { readPdf } from '../sheets/read-pdf';
import { serviceWith } from './service-fixture';

interface Told {
  batch: Batch;
  outcomes: BatchOutcome[];
}

afterEach(() => vi.useRealTimers());

it('tells what came of a batch, keeps what was told before, and prints the last', async () => {
  const { ask, service } = await serviceWith('demonstration');
  const list = async (query = '') => (await ask<ListPage<BatchRow>>('GET', `/batches${query}`)).body.rows;
  const open = (await list('?state=planned'))[0];
  expect((await list('?state=finished')).map(({ number }) => number)).toEqual(['B-002', 'B-001']);
  const path = `/batches/${open?.id ?? ''}`;
  const outcome = { finishedOn: '2026-09-10', unitsFilled: 97, by: 'A. Maker', remarks: 'Foamed a little.' };
  const tell = (obtainedMg: number, part = {}) =>
    ask('POST', `${path}/outcomes`, { ...outcome, obtainedMg, ...part });

  expect((await tell(4_000_000)).status).toBe(201);
  expect((await tell(4_896_000)).status).toBe(201);
  const { batch, outcomes } = (await ask<Told>('GET', path)).body;
  expect(outcomes.map(({ obtainedMg }) => obtainedMg)).toEqual([4_000_000, 4_896_000]);
  // 5 kg with 2 % overage is 5.1 kg: 4.896 of it is 96 %.
  expect(batch.totalMg).toBe(5_100_000);
  expect(yieldPercent(outcomes[1]!, batch.totalMg)).toBeCloseTo(96, 9);
  expect(outcomeWords(outcomes[1]!, batch.totalMg, 'de-DE')).toBe(
    '10.09.2026, 4,896\u00a0kg, 96,0\u00a0% of what was weighed, 97 units',
  );
  expect((await list('?state=planned')).some(({ id }) => id === open?.id)).toBe(false);

  const body = JSON.stringify({ kind: 'batch', batchId: open?.id });
  const headers = { 'Content-Type': 'application/json' };
  const printed = await service.request('/api/sheets', { method: 'POST', body, headers });
  const { pages } = await readPdf(new Uint8Array(await printed.arrayBuffer()));
  expect(pages.join(' ').replaceAll('\u00a0', ' ')).toContain('96.0 % of what was weighed');
});

it('refuses a day to come, nothing obtained, and nobody who recorded it', async () => {
  const { ask } = await serviceWith('demonstration');
  const [batch] = (await ask<ListPage<BatchRow>>('GET', '/batches?state=planned')).body.rows;
  const good = { finishedOn: '2026-09-10', obtainedMg: 1000, unitsFilled: null, by: 'A. Maker', remarks: '' };
  for (const wrong of [{ finishedOn: '2999-01-01' }, { obtainedMg: 0 }, { by: ' ' }, { unitsFilled: 1.5 }]) {
    const refused = await ask('POST', `/batches/${batch?.id ?? ''}/outcomes`, { ...good, ...wrong });
    expect(refused.status, JSON.stringify(wrong)).toBe(422);
  }
  const nowhere = await ask('POST', '/batches/0195c7a0-0000-7000-8000-000000000001/outcomes', good);
  expect(nowhere.status).toBe(404);
});

it('holds the correction that was written down last, although the clock was set back before it', async () => {
  const { ask } = await serviceWith('demonstration');
  const [batch] = (await ask<ListPage<BatchRow>>('GET', '/batches?state=planned')).body.rows;
  const path = `/batches/${batch?.id ?? ''}`;
  const outcome = { finishedOn: '2026-09-10', unitsFilled: null, by: 'A. Maker', remarks: '' };
  vi.useFakeTimers({ toFake: ['Date'] });
  for (const [moment, obtainedMg] of [
    ['2026-09-11T10:00:00.000Z', 1000],
    ['2026-09-11T09:00:00.000Z', 2000],
    ['2026-09-11T08:00:00.000Z', 3000],
  ] as const) {
    vi.setSystemTime(new Date(moment));
    expect((await ask('POST', `${path}/outcomes`, { ...outcome, obtainedMg })).status).toBe(201);
  }
  const { outcomes } = (await ask<Told>('GET', path)).body;
  expect(outcomes.map(({ obtainedMg }) => obtainedMg)).toEqual([1000, 2000, 3000]);
});
