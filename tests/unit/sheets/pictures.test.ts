import { TEXT_FONT, type SheetDefinition } from '@core/sheets/kit/definition';
import { mediaTypeOf } from '@service/attachments/media-type';
import { readPicture } from '@service/attachments/pictures/read-picture';
import { renderSheet } from '@service/sheets/render';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { JPEG, PNG, png, WEBP, WEBP_LOSSLESS } from './sample-pictures';

const WHOLE = [
  ['PNG', PNG, 'image/png', 8, 6],
  ['JPEG', JPEG, 'image/jpeg', 8, 8],
  ['WebP', WEBP, 'image/webp', 8, 8],
  ['lossless WebP', WEBP_LOSSLESS, 'image/webp', 3, 2],
] as const;

describe('a picture that is kept', () => {
  it.each(WHOLE)('is read with its size: %s', async (_, bytes, type, width, height) => {
    expect(await readPicture(bytes, type)).toMatchObject({ width, height, tooLarge: false });
  });

  it.each(WHOLE)('is found out wherever it is cut: %s', async (_, bytes, type) => {
    for (let length = 0; length < bytes.length; length += 1)
      expect(await readPicture(bytes.subarray(0, length), type), `${length} bytes`).toBeNull();
  });

  it('is found out as a PNG with any one byte wrong, and needs data for all its rows', async () => {
    for (let at = 8; at < PNG.length; at += 1) {
      const wrong = PNG.slice();
      wrong[at] = (wrong[at] ?? 0) ^ 0x40;
      expect(await readPicture(wrong, 'image/png'), `byte ${at}`).toBeNull();
    }
    for (const data of [new Uint8Array(6 * 25 - 1), new Uint8Array(6 * 25 + 1), new Uint8Array(150).fill(9)])
      expect(await readPicture(png({ width: 8, height: 6, data }), 'image/png')).toBeNull();
    for (const parts of [
      { width: 0, height: 6 },
      { width: 8, height: 6, colourType: 5 },
      { width: 8, height: 6, bits: 4 },
    ])
      expect(await readPicture(png(parts), 'image/png')).toBeNull();
  });

  it('may have letters before and pictures after it, as a telephone writes them', async () => {
    const note = Buffer.from('A note that has \xff\xd9 in it', 'latin1');
    const segment = Buffer.from([0xff, 0xfe, 0, note.length + 2, ...note]);
    const bytes = new Uint8Array(Buffer.concat([JPEG.subarray(0, 2), segment, JPEG.subarray(2), JPEG]));
    expect(await readPicture(bytes, 'image/jpeg')).toMatchObject({ width: 8, height: 8 });
  });

  it('is told to be too large from its head, before it is unpacked', async () => {
    const bytes = png({ width: 100_000, height: 100_000, data: new Uint8Array(1) });
    expect(await readPicture(bytes, 'image/png')).toMatchObject({ tooLarge: true });
    // The height stands five bytes behind the mark of the frame.
    const large = JPEG.slice();
    const frame = large.findIndex((byte, at) => byte === 0xff && large[at + 1] === 0xc0);
    large.set([0xff, 0xff, 0xff, 0xff], frame + 5);
    expect(await readPicture(large, 'image/jpeg')).toMatchObject({ tooLarge: true, width: 65_535 });
  });

  it('is told apart when a PDF cannot hold it', async () => {
    expect((await readPicture(PNG, 'image/png'))?.unprintable).toBe('');
    expect((await readPicture(JPEG, 'image/jpeg'))?.unprintable).toBe('');
    expect((await readPicture(WEBP, 'image/webp'))?.unprintable).toContain('WebP');
    const palette = { PLTE: new Uint8Array(6), tRNS: new Uint8Array(1) };
    const odd = png({
      ...{ width: 3, height: 1, bits: 4, colourType: 3 },
      data: Buffer.alloc(3),
      more: palette,
    });
    expect((await readPicture(odd, 'image/png'))?.unprintable).toContain('this kind of PNG');
    const lossless = JPEG.slice();
    lossless[lossless.findIndex((byte, at) => byte === 0xff && lossless[at + 1] === 0xc0) + 1] = 0xc3;
    expect((await readPicture(lossless, 'image/jpeg'))?.unprintable).toContain('this kind of JPEG');
  });

  const before = (...marker: number[]): Uint8Array =>
    new Uint8Array([...JPEG.subarray(0, 2), ...marker, ...JPEG.subarray(2)]);
  it.each([
    ['a fill byte', before(0xff)],
    ['a restart mark', before(0xff, 0xd0)],
    ['arithmetic conditioning', before(0xff, 0xcc, 0, 4, 0, 0)],
  ])(
    'is told apart when the printer would lose its way in it: JPEG with %s before the frame',
    async (_, bytes) => {
      const picture = await readPicture(bytes, 'image/jpeg');
      expect(picture).toMatchObject({ width: 8, height: 8 });
      expect(picture?.unprintable).toContain('this kind of JPEG');
    },
  );

  const palette = (bytes: number) => ({
    ...{ width: 4, height: 2, colourType: 3, bits: 8, data: Buffer.alloc(2 * 5) },
    more: { PLTE: new Uint8Array(bytes) },
  });
  it.each([
    ['a palette of half a colour', palette(5)],
    ['an empty palette', palette(0)],
    ['more colours than there are', palette(257 * 3)],
    ['a palette beside full colours', { width: 8, height: 6, more: { PLTE: new Uint8Array(6) } }],
    [
      'a note of 200 KB',
      { width: 8, height: 6, more: { tEXt: Buffer.from(`Note\0${'x'.repeat(200_000)}`) } },
    ],
  ])('is told apart when the printer would lose its way in it: PNG with %s', async (_, parts) => {
    expect((await readPicture(png(parts), 'image/png'))?.unprintable).toContain('this kind of PNG');
  });

  it.each([
    ['a palette', palette(9)],
    ['a short note', { width: 8, height: 6, more: { tEXt: Buffer.from('Note\0Cream') } }],
  ])('prints with %s', async (_, parts) => {
    expect((await readPicture(png(parts), 'image/png'))?.unprintable).toBe('');
    await expect(printed(png(parts), 'image/png')).resolves.toBeGreaterThan(1000);
  });

  it('prints whenever it is said that it can, however it was damaged or made', async () => {
    const kinds = [
      [JPEG, 'image/jpeg'],
      [PNG, 'image/png'],
    ] as const;
    const change = fc.record({
      at: fc.nat(JPEG.length - 1),
      to: fc.constantFrom(0x00, 0xff, 0xc0, 0xc4, 0xcc, 0xd0, 0xd9, 0xda, 0xdb, 0x01, 0x80),
      insert: fc.boolean(),
    });
    let said = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.nat(1),
        fc.array(change, { minLength: 1, maxLength: 3 }),
        async (which, changes) => {
          const [whole, type] = kinds[which as 0 | 1];
          let bytes = [...whole];
          for (const { at, to, insert } of changes)
            bytes = [...bytes.slice(0, at), to, ...bytes.slice(insert ? at : at + 1)];
          if (mediaTypeOf(new Uint8Array(bytes)) !== type) return;
          const picture = await readPicture(new Uint8Array(bytes), type);
          if (!picture || picture.unprintable || picture.tooLarge) return;
          said += 1;
          expect(await printed(new Uint8Array(bytes), type)).toBeGreaterThan(1000);
        },
      ),
      { numRuns: 400 },
    );
    expect(said).toBeGreaterThan(20);
  });
});

/** The bytes of a sheet that holds only this picture, by the real printer. */
async function printed(bytes: Uint8Array, type: string): Promise<number> {
  const image = `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;
  const definition: SheetDefinition = {
    ...{ pageSize: 'A4', pageOrientation: 'portrait', pageMargins: [40, 40, 40, 40], language: 'en-GB' },
    info: { title: 'A picture', author: '', subject: '' },
    defaultStyle: { font: TEXT_FONT },
    content: [{ image, fit: [100, 100], alt: 'A picture' }],
    footer: () => ({ text: '' }),
  };
  return (await renderSheet(definition, { now: new Date(0) })).length;
}
