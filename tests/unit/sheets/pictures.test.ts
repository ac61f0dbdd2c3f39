import { readPicture } from '@service/attachments/pictures/read-picture';
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
});
