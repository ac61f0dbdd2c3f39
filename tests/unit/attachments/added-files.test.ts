import { materialContent, type Material } from '@core/materials/material';
import { endingOf, titleOfFile } from '@core/materials/document';
import { readPicture } from '@service/attachments/pictures/read-picture';
import { withoutMetadata } from '@service/attachments/pictures/without-metadata';
import { blankMaterial } from '@core/materials/material';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';
import { cameraJpeg, notedPng, notedWebp, SECRETS } from './camera-photo';

const lettersOf = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const PICTURES = {
  'image/jpeg': cameraJpeg(6),
  'image/png': notedPng(),
  'image/webp': notedWebp(),
} as const;
const TYPES = Object.keys(PICTURES) as (keyof typeof PICTURES)[];

describe('a picture with what a camera writes beside it', () => {
  it.each(TYPES)(
    '%s: is kept whole, without the place, the camera, the notes and what follows its end',
    async (type) => {
      const taken = PICTURES[type];
      const was = await readPicture(taken, type);
      expect(SECRETS.some((word) => lettersOf(taken).includes(word))).toBe(true);
      const kept = withoutMetadata(taken, type);
      for (const word of SECRETS) expect(lettersOf(kept)).not.toContain(word);
      expect(await readPicture(kept, type)).toEqual(was);
      expect(was).not.toBeNull();
      expect(withoutMetadata(kept, type)).toEqual(kept);
    },
  );

  it('keeps how a JPEG is turned, and nothing else of its Exif data', () => {
    for (const turned of [2, 3, 4, 5, 6, 7, 8]) {
      const kept = withoutMetadata(cameraJpeg(turned), 'image/jpeg');
      const at = lettersOf(kept).indexOf('Exif');
      expect(at).toBeGreaterThan(0);
      // One tag, 0112, of type SHORT, and its value: TIFF 6.0, section 2.
      expect([...kept.subarray(at + 14, at + 28)]).toEqual([
        0,
        1,
        0x01,
        0x12,
        0,
        3,
        0,
        0,
        0,
        1,
        0,
        turned,
        0,
        0,
      ]);
    }
    expect(lettersOf(withoutMetadata(cameraJpeg(1), 'image/jpeg'))).not.toContain('Exif');
  });

  it('ends with every damaged one that could be read', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...TYPES),
        fc.array(fc.tuple(fc.nat(), fc.nat({ max: 255 })), { minLength: 1, maxLength: 5 }),
        async (type, changes) => {
          const bytes = PICTURES[type].slice();
          for (const [at, by] of changes) bytes[at % bytes.length] = by;
          const was = await readPicture(bytes, type);
          if (!was) return;
          const kept = withoutMetadata(bytes, type);
          const now = await readPicture(kept, type);
          expect(now).toMatchObject({ width: was.width, height: was.height });
          for (const word of SECRETS.slice(0, 1)) expect(lettersOf(kept)).not.toContain(word);
        },
      ),
      { numRuns: 400 },
    );
  });
});

async function added(of: Awaited<ReturnType<typeof serviceWith>>, bytes: Uint8Array) {
  const response = await of.service.request('/api/attachments', {
    method: 'POST',
    body: new Uint8Array(bytes),
  });
  expect(response.status).toBe(201);
  return (await response.json()) as { sha256: string; mediaType: 'image/jpeg'; bytes: number };
}

describe('a file that is added', () => {
  it('is kept without where its photo was taken', async () => {
    const of = await serviceWith('empty');
    const { sha256, bytes } = await added(of, cameraJpeg(6));
    const kept = new Uint8Array(await (await of.service.request(`/api/attachments/${sha256}`)).arrayBuffer());
    expect(kept.length).toBe(bytes);
    for (const word of SECRETS) expect(lettersOf(kept)).not.toContain(word);
    expect((await added(of, cameraJpeg(6))).sha256).toBe(sha256);
  });

  it('mends the very one that a record shows from before, which was kept with all of it', async () => {
    const of = await serviceWith('empty');
    const raw = cameraJpeg(6);
    const sha256 = await of.session.current().library.attachments.put(raw);
    const { body } = await of.ask<Material>('POST', '/materials', blankMaterial('Wax', 'Cetyl Alcohol'));
    const content = { ...materialContent.parse(body), photo: sha256 };
    await of.ask('PUT', `/materials/${body.id}`, { revision: body.revision, content });
    expect((await added(of, raw)).sha256).toBe(sha256);
  });

  // Kept as it is, and never run: a browser that is asked for it saves it.
  it.each([
    [
      'an SVG with a script',
      '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
      'a.svg',
    ],
    ['a page with a script', '<!doctype html><script>alert(1)</script>', 'page.html'],
    ['a spreadsheet', 'PK\u0003\u0004', '../../“Übersicht”.xlsx'],
  ])('%s is only ever saved', async (_, text, name) => {
    const of = await serviceWith('empty');
    const { sha256, mediaType } = await added(of, new TextEncoder().encode(text));
    expect(mediaType).toBe('application/octet-stream');
    const got = await of.service.request(`/api/attachments/${sha256}?name=${encodeURIComponent(name)}`);
    expect(await got.text()).toBe(text);
    expect(got.headers.get('content-type')).toBe('application/octet-stream');
    expect(got.headers.get('content-disposition')).toMatch(/^attachment; filename\*=UTF-8''[\w.%~!-]+$/);
    expect(got.headers.get('content-disposition')).not.toMatch(/[/\\]|%2F|%5C/i);
  });

  it('of nothing is refused', async () => {
    const of = await serviceWith('empty');
    const response = await of.service.request('/api/attachments', {
      method: 'POST',
      body: new Uint8Array(0),
    });
    expect(response.ok).toBe(false);
    expect(await response.json()).toMatchObject({ title: 'This file is empty.' });
  });

  it('is titled without its ending, unless only that tells what it is', () => {
    expect(titleOfFile('Data sheet.PDF', 'application/pdf')).toBe('Data sheet');
    expect(titleOfFile('Stock.xlsx', 'application/octet-stream')).toBe('Stock.xlsx');
    expect(endingOf({ mediaType: 'application/octet-stream', title: 'Stock.XLSX' })).toBe('xlsx');
    expect(endingOf({ mediaType: 'application/octet-stream', title: 'Stock' })).toBe('bin');
    expect(endingOf({ mediaType: 'image/jpeg', title: 'a.exe' })).toBe('jpg');
  });
});
