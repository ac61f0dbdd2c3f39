import type { ProblemDetails } from '@service/problems/problem-details';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

it('keeps searches under different names only, whatever their case', async () => {
  const { ask } = await serviceWith();
  const keep = (name: string) => ask<ProblemDetails>('POST', '/searches', { name, query: 'charge=cationic' });
  expect((await keep('Cationic, solid')).status).toBe(201);
  const second = await keep('CATIONIC, solid');
  expect(second.status).toBe(409);
  expect(second.body.title).toContain('already');
  expect((await ask<unknown[]>('GET', '/searches')).body).toHaveLength(1);
});
