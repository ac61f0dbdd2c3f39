import { blankMaterial, type Material } from '@core/materials/material';
import type { Backup } from '@db/library/backups/backup-file';
import type { ProblemDetails } from '@service/problems/problem-details';
import type { HistoryStep } from '@service/record/history';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

type Served = Awaited<ReturnType<typeof serviceWith>>;

async function put(ask: Ask, one: Material, notes: string): Promise<{ status: number; body: Material }> {
  const { id, revision, createdAt: _c, updatedAt: _u, ...content } = one;
  return ask<Material>('PUT', `/materials/${id}`, { revision, content: { ...content, notes } });
}

/** Each by another author, so that each is a sitting of its own. */
async function sittings(ask: Ask, from: Material, notes: readonly string[]): Promise<Material> {
  let now = from;
  for (const [at, note] of notes.entries()) {
    await ask('PATCH', '/settings', { recordedBy: `Maker ${note} ${at}` });
    now = (await put(ask, now, note)).body;
  }
  return now;
}

const added = async (ask: Ask): Promise<Material> =>
  (await ask<Material>('POST', '/materials', blankMaterial('Brackwater Glycerin', 'Glycerin'))).body;

const history = async (ask: Ask, id: string): Promise<HistoryStep[]> =>
  (await ask<HistoryStep[]>('GET', `/records/material/${id}/history`)).body;

/** A state that is not what was kept, as a failing disk or another tool leaves it. */
function spoil(
  { session }: Served,
  record: string,
  n: number,
  part: { content: string; format?: number },
): void {
  session.current().library.transaction((tx) => {
    tx.run(
      `INSERT INTO state (id, hash, kind, record, format, content)
       SELECT (SELECT max(id) + 1 FROM state), 'f' || substr(s.hash, 2), s.kind, s.record, ?, ?
       FROM history h JOIN state s ON s.id = h.state WHERE h.record = ? AND h.n = ?`,
      ...[part.format ?? 1, part.content, record, n],
    );
    tx.run('UPDATE history SET state = (SELECT max(id) FROM state) WHERE record = ? AND n = ?', record, n);
  });
}

describe('a state whose hash does not match', () => {
  it('is said to be unreadable; the others are told, the present can be changed, and nothing is lost', async () => {
    const served = await serviceWith();
    const { ask } = served;
    const now = await sittings(ask, await added(ask), ['one', 'two', 'three']);
    spoil(served, now.id, 2, { content: '{"tradeName":"Something else"}' });

    const told = await history(ask, now.id);
    expect(told.map(({ n, unreadable }) => [n, unreadable !== null])).toEqual([
      [null, false],
      [3, false],
      [2, true],
      [1, false],
    ]);
    const asked = await ask<ProblemDetails>('GET', `/records/material/${now.id}/history/2`);
    expect(asked.body).toMatchObject({ code: 'library-damaged' });
    expect(asked.body.detail).toMatch(/backup/);
    expect((await ask<Material>('GET', `/records/material/${now.id}/history/3`)).body.notes).toBe('two');
    expect((await put(ask, now, 'four')).status).toBe(200);
  });
});

describe('history cut off by an old backup', () => {
  it('is what it was then, goes on from there, and a window that knows later states is told so', async () => {
    const { ask } = await serviceWith();
    const then = await sittings(ask, await added(ask), ['one', 'two']);
    const kept = await history(ask, then.id);
    const { body: backup } = await ask<Backup>('POST', '/library/backups');
    const later = await sittings(ask, then, ['three', 'four', 'five']);
    expect(later.revision).toBe(then.revision + 3);

    expect((await ask('POST', '/library/backups/restore', { name: backup.name })).status).toBe(200);
    expect(await history(ask, then.id)).toEqual(kept);
    // What a window still shows of the later state is not written over the restored one in silence.
    const refused = await put(ask, later, 'six');
    expect(refused.status).toBe(409);
    const { body: restored } = await ask<Material>('GET', `/materials/${then.id}`);
    expect(restored.notes).toBe('two');

    await sittings(ask, restored, ['another three', 'another four']);
    const after = await history(ask, then.id);
    expect(after.map(({ n }) => n)).toEqual([null, 4, 3, 2, 1]);
    const at4 = await ask<Material>('GET', `/records/material/${then.id}/history/4`);
    expect(at4.body.notes).toBe('another three');
    // The state before the restoring is in a backup of its own.
    const backups = (await ask<Backup[]>('GET', '/library/backups')).body;
    const before = backups.find(({ reason }) => reason === 'restore')!;
    expect((await ask('POST', '/library/backups/restore', { name: before.name })).status).toBe(200);
    expect((await ask<Material>('GET', `/materials/${then.id}`)).body.notes).toBe('five');
  });
});
