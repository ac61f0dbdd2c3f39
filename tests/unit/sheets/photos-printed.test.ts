import { blankMaterial, type Material } from '@core/materials/material';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';
import { readPdf } from './read-pdf';
import { JPEG, PNG, png, WEBP } from './sample-pictures';

type Fixture = Awaited<ReturnType<typeof serviceWith>>;

const upload = ({ service }: Fixture, body: Uint8Array) =>
  service.request('/api/attachments', { method: 'POST', body: body.slice() });

/** Keeps bytes as an older release did, which took any file with the right first bytes. */
const kept = ({ session }: Fixture, bytes: Uint8Array) => session.current().library.attachments.put(bytes);

async function withPhoto({ ask }: Fixture, name: string, photo: string): Promise<string> {
  const { body } = await ask<Material>('POST', '/materials', { ...blankMaterial(name, 'Aqua'), photo });
  return body.id;
}

async function textOf({ service }: Fixture, request: object): Promise<string> {
  const answer = await service.request('/api/sheets', {
    method: 'POST',
    body: JSON.stringify(request),
    headers: { 'Content-Type': 'application/json' },
  });
  expect(answer.status).toBe(200);
  return (await readPdf(new Uint8Array(await answer.arrayBuffer()))).text;
}

describe('a photo that is added', () => {
  it.each([
    ['twelve bytes of a PNG', PNG.subarray(0, 12)],
    ['half a JPEG', JPEG.subarray(0, JPEG.length / 2)],
    ['half a WebP', WEBP.subarray(0, WEBP.length / 2)],
  ])('is refused with what to do when it is damaged: %s', async (_, bytes) => {
    const refused = await upload(await serviceWith('empty'), bytes);
    expect(refused.status).toBe(422);
    const problem = (await refused.json()) as ProblemDetails;
    expect(problem.title).toBe('This picture is damaged or cut short.');
    expect(problem.detail).toContain('save it as PNG or JPEG');
  });

  it('is refused when it has too many pixels, and kept when it is whole', async () => {
    const fixture = await serviceWith('empty');
    const vast = png({ width: 100_000, height: 100_000, data: new Uint8Array(1) });
    expect((await upload(fixture, vast)).status).toBe(413);
    for (const bytes of [PNG, JPEG, WEBP]) expect((await upload(fixture, bytes)).status).toBe(201);
  });
});

describe('a photo that cannot be printed', () => {
  it('leaves a line in its place, on the specification and on a hand-out of two or of many', async () => {
    const fixture = await serviceWith('empty');
    const damaged = await withPhoto(fixture, 'Cut short', await kept(fixture, PNG.subarray(0, 12)));
    const webp = await withPhoto(fixture, 'WebP', await kept(fixture, WEBP));
    const gone = await withPhoto(fixture, 'Gone', 'ab'.repeat(32));
    const fine = await withPhoto(fixture, 'Fine', await kept(fixture, JPEG));
    const said = 'Photo cannot be printed:';

    expect(await textOf(fixture, { kind: 'material', materialId: damaged })).toContain(
      `${said} its file is damaged; add it again.`,
    );
    expect(await textOf(fixture, { kind: 'material', materialId: webp })).toContain(
      `${said} a PDF cannot hold WebP; add the photo as PNG or JPEG.`,
    );
    expect(await textOf(fixture, { kind: 'material', materialId: gone })).toContain(said);
    expect(await textOf(fixture, { kind: 'material', materialId: fine })).not.toContain(said);

    const few = { kind: 'comparison', materialIds: [damaged, webp, gone, fine] };
    expect((await textOf(fixture, few)).split(said)).toHaveLength(4);
    const more: string[] = [];
    for (const name of ['a', 'b', 'c', 'd'])
      more.push(await withPhoto(fixture, name, await kept(fixture, JPEG)));
    const many = { kind: 'comparison', materialIds: [damaged, webp, gone, fine, ...more] };
    expect((await textOf(fixture, many)).split(said)).toHaveLength(4);
  });
});
