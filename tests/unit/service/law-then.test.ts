import type { FormulaVersion } from '@core/formulas/formula';
import type { Law } from '@core/limits/law';
import { lawAsItWas, type LawThen } from '@core/limits/law-then';
import type { Limit } from '@core/limits/limit';
import { beforeEach, describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

// Edits follow each other by milliseconds here, all of one sitting: what stood when a version was recorded is kept all the same.

let ask: Ask;
let versionId: string;

const limitsNow = async (): Promise<Law> => (await ask<Law>('GET', '/law')).body;
const about = (law: Law, subject: string): Limit[] => law.limits.filter((one) => one.subject === subject);
async function asItWas(): Promise<Law> {
  const { status, body } = await ask<LawThen>('GET', `/formulas/versions/${versionId}/law`);
  expect(status).toBe(200);
  return lawAsItWas(await limitsNow(), body);
}
async function edit({ id, ...was }: Limit, change: Partial<Limit>): Promise<Limit> {
  const { revision, createdAt: _came, updatedAt: _at, ...content } = was;
  const answer = await ask<Limit>('PUT', `/limits/${id}`, { revision, content: { ...content, ...change } });
  expect(answer.status).toBe(200);
  return (await ask<Limit>('GET', `/limits/${id}`)).body;
}

async function recordVersion(): Promise<string> {
  const { body } = await ask<{ rows: { id: string }[] }>('GET', '/formulas?text=hedgerow');
  const id = body.rows[0]?.id ?? '';
  const made = await ask<FormulaVersion>('POST', `/formulas/${id}/versions`, {
    reason: '',
    recordedBy: 'Ada',
  });
  expect(made.status).toBe(201);
  return made.body.id;
}

beforeEach(async () => {
  ({ ask } = await serviceWith('demonstration'));
});

describe('the law of the day on which a version was recorded', () => {
  it('is the law of now where nobody changed it', async () => {
    versionId = await recordVersion();
    const { body } = await ask<LawThen>('GET', `/formulas/versions/${versionId}/law`);
    expect(body).toEqual({ was: { substances: [], limits: [] }, since: [] });
  });

  it('is what stood at that moment, between two edits of one sitting', async () => {
    const [first] = about(await limitsNow(), 'Phenoxyethanol');
    const before = await edit(first!, { percent: 0.9 });
    versionId = await recordVersion();
    const after = await edit(before, { percent: 0.8 });
    await edit(after, { percent: 0.7 });
    expect(about(await asItWas(), 'Phenoxyethanol').map(({ percent }) => percent)).toEqual([0.9]);
    expect(about(await limitsNow(), 'Phenoxyethanol').map(({ percent }) => percent)).toEqual([0.7]);
  });

  it('holds what was deleted since, and not what came since, nor what came and went', async () => {
    versionId = await recordVersion();
    const [gone] = about(await limitsNow(), 'Phenoxyethanol');
    const stood = (await limitsNow()).limits.length;
    expect((await ask('DELETE', `/limits/${gone!.id}`)).status).toBe(204);
    const { id: _id, revision: _revision, createdAt: _came, updatedAt: _at, ...content } = gone!;
    const added = await ask<Limit>('POST', '/limits', { ...content, percent: 0.1 });
    expect(added.status).toBe(201);
    const brief = await ask<Limit>('POST', '/limits', { ...content, percent: 0.2 });
    expect((await ask('DELETE', `/limits/${brief.body.id}`)).status).toBe(204);
    const then = await asItWas();
    expect(then.limits).toHaveLength(stood);
    expect(about(then, 'Phenoxyethanol').map(({ id, percent }) => [id, percent])).toEqual([
      [gone!.id, gone!.percent],
    ]);
  });

  it('keeps what a substance was called and counted as', async () => {
    versionId = await recordVersion();
    const one = (await limitsNow()).substances.find(({ name }) => name === 'Phenoxyethanol')!;
    const { id, revision, createdAt: _came, updatedAt: _at, ...content } = one;
    const renamed = { revision, content: { ...content, name: 'Another name' } };
    expect((await ask('PUT', `/substances/${id}`, renamed)).status).toBe(200);
    expect((await asItWas()).substances.find((other) => other.id === id)?.name).toBe('Phenoxyethanol');
  });

  it('is refused in words for a version that there is not', async () => {
    const answer = await ask('GET', '/formulas/versions/0195c7a0-0000-7000-8000-00000000ffff/law');
    expect(answer.status).toBe(404);
  });
});
