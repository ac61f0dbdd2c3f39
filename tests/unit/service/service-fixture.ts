import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { composeService } from '@service/compose';
import { afterEach } from 'vitest';

type Composed = ReturnType<typeof composeService>;

const cleanUps: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0)) await cleanUp();
});

/** The real service over a real library in a folder of its own, which goes when the test ends. */
export async function serviceWith(
  kind: 'empty' | 'demonstration' | 'none' = 'empty',
  /** The name of the home folder within that, where a page may list its folders. */
  { home }: { home?: string } = {},
) {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'stillroom-test-')));
  const composed: Composed = composeService({
    documents: join(folder, 'documents'),
    config: join(folder, 'config'),
    ...(home ? { home: join(folder, home) } : {}),
  });
  cleanUps.push(async () => {
    await composed.session.close();
    rmSync(folder, { recursive: true, force: true });
  });
  if (kind !== 'none') await composed.session.create(join(folder, 'documents', 'Shelf'), kind);

  /** Sends a request as a screen would, and reads the JSON answer. */
  async function ask<T = Record<string, unknown>>(method: string, path: string, body?: unknown) {
    const response = await composed.service.request(`/api${path}`, {
      method,
      ...(body === undefined
        ? {}
        : { body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } }),
    });
    const text = await response.text();
    return {
      status: response.status,
      type: response.headers.get('content-type'),
      body: (text ? JSON.parse(text) : null) as T,
    };
  }
  return { ...composed, ask, folder };
}

export type Ask = Awaited<ReturnType<typeof serviceWith>>['ask'];
