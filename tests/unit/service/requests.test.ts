import { describe, expect, test } from 'vitest';
import { serviceWith } from './service-fixture';

const MATERIAL = '0190a6b0-0000-7000-8000-000000000001';
const MB = 1024 * 1024;

interface Refused {
  code: string;
  title: string;
  fields: { path: string; message: string }[];
}

describe('a request that is too large', () => {
  test('is refused above 2 MB of JSON, said so, and changes nothing', async () => {
    const { ask } = await serviceWith();
    const before = (await ask('GET', '/library')).body;
    const { status, body } = await ask<Refused>('POST', '/materials', { note: 'x'.repeat(2 * MB) });
    expect([status, body.code]).toEqual([413, 'too-large']);
    expect((await ask('GET', '/library')).body).toEqual(before);
  });

  test('is refused without its end, when it comes in pieces of unknown length', async () => {
    const { service } = await serviceWith();
    let sent = 0;
    const body = new ReadableStream<Uint8Array>({
      pull: (controller) => {
        sent += 1;
        controller.enqueue(new Uint8Array(MB));
      },
    });
    const init: RequestInit & { duplex: 'half' } = { method: 'POST', body, duplex: 'half' };
    const answer = await service.request(new Request('http://stillroom/api/searches', init));
    expect(answer.status).toBe(413);
    expect(sent).toBeLessThan(6);
  });

  test('as an attachment, may have 25 MB and not more', async () => {
    const { service } = await serviceWith();
    const send = async (bytes: number) => {
      const body = new Uint8Array(bytes);
      body.set(new TextEncoder().encode('%PDF-1.7'));
      return (await service.request('/api/attachments', { method: 'POST', body })).status;
    };
    expect(await send(3 * MB)).toBe(201);
    expect(await send(25 * MB)).toBe(201);
    expect(await send(25 * MB + 1)).toBe(413);
  });
});

describe('a body that is wrong throughout', () => {
  test('is told by the first faults of each part, and not line by line', async () => {
    const { ask } = await serviceWith();
    const materialIds = Array.from({ length: 190 }, (_, index) => `no id ${index}`);
    const { status, body } = await ask<Refused>('POST', '/sheets', { kind: 'comparison', materialIds });
    expect(status).toBe(422);
    expect(body.fields.map((field) => field.path)).toEqual([0, 1, 2, 3, 4].map((at) => `materialIds.${at}`));
  });

  test('names every part of a material that is at fault', async () => {
    const { ask } = await serviceWith();
    const wrong = Array.from({ length: 500 }, () => 7);
    const content = { tradeName: '', documents: wrong, functions: wrong };
    const { status, body } = await ask<Refused>('PUT', `/materials/${MATERIAL}`, {
      revision: 1,
      content,
    });
    expect(status).toBe(422);
    const parts = new Set(body.fields.map((field) => field.path.split('.').slice(0, 2).join('.')));
    expect([...parts]).toEqual(
      expect.arrayContaining([
        'content.tradeName',
        'content.functions',
        'content.documents',
        'content.notes',
      ]),
    );
    expect(body.fields.length).toBeLessThanOrEqual(200);
  });
});
