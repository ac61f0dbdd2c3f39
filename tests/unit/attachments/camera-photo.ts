import { deflateSync, crc32 } from 'node:zlib';

/* Pictures as cameras write them: with where they were taken, in which way they were held, and a note. */

/** Words that may not be found in what is kept. */
export const SECRETS = ['Larkspur Phone', 'Taken at home', 'GPSsecret', 'xpacket', 'Trailing film'];

const short = (value: number): number[] => [value >> 8, value & 0xff];
const long = (value: number): number[] => [...short(value >>> 16), ...short(value & 0xffff)];
const letters = (text: string): number[] => [...Buffer.from(text, 'latin1')];

/** Exif data (TIFF, big-endian): the camera, the orientation, a position as degrees, minutes and seconds. */
export function exif(orientation: number): number[] {
  const make = letters('Larkspur Phone\0\0');
  const position = [52, 1, 31, 1, 1234, 100].flatMap(long);
  const first = 8;
  const tags = 3;
  const behind = first + 2 + 12 * tags + 4;
  const gps = behind + make.length;
  const values = gps + 2 + 12 * 2 + 4;
  return [
    ...[0x4d, 0x4d, 0, 42, ...long(first), ...short(tags)],
    ...[...short(0x010f), ...short(2), ...long(make.length), ...long(behind)],
    ...[...short(0x0112), ...short(3), ...long(1), ...short(orientation), 0, 0],
    ...[...short(0x8825), ...short(4), ...long(1), ...long(gps)],
    ...long(0),
    ...make,
    ...short(2),
    ...[...short(1), ...short(2), ...long(2), ...letters('N\0'), 0, 0],
    ...[...short(2), ...short(5), ...long(3), ...long(values)],
    ...long(0),
    ...position,
    ...letters('GPSsecret'),
  ];
}

const segment = (marker: number, body: number[]): number[] => [
  0xff,
  marker,
  ...short(body.length + 2),
  ...body,
];

/** The smallest JPEG that a browser draws: 8 by 8 pixels, grey (ITU-T T.81). */
const PLAIN = Buffer.from(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/wAALCAABAAEBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAACf/EABQQAQAAAAAAAAAAAAAAAAAAAAD/2gAIAQEAAD8AVN//2Q==',
  'base64',
);

/** A camera's JPEG, from a plain one, with all that it writes beside the picture, before, within and behind it. */
export function cameraJpeg(orientation: number, plain: Uint8Array = PLAIN): Uint8Array {
  const bytes = [...plain];
  const jfif = 2 + 2 + ((plain[4]! << 8) | plain[5]!);
  return Uint8Array.from([
    ...bytes.slice(0, jfif),
    ...segment(0xe1, [...letters('Exif\0\0'), ...exif(orientation)]),
    ...segment(0xe1, letters('http://ns.adobe.com/xap/1.0/\0<?xpacket begin=""?>')),
    ...segment(0xed, letters('Photoshop 3.0\0Taken at home')),
    ...segment(0xfe, letters('Taken at home')),
    ...bytes.slice(jfif),
    ...letters('Trailing film GPSsecret'),
  ]);
}

function chunk(kind: string, body: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), body]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(body.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** A PNG of one grey pixel with notes and camera data. */
export function notedPng(): Uint8Array {
  const head = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('tEXt', Buffer.from('Comment\0Taken at home')),
    chunk('eXIf', Uint8Array.from(exif(6))),
    chunk('IDAT', deflateSync(Buffer.from([0, 128]))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** A WebP in its extended form, with Exif and XMP data. The picture data are of one pixel (VP8L). */
export function notedWebp(): Uint8Array {
  const part = (kind: string, body: Uint8Array): Buffer => {
    const length = Buffer.alloc(4);
    length.writeUInt32LE(body.length);
    return Buffer.concat([Buffer.from(kind), length, body, Buffer.alloc(body.length % 2)]);
  };
  const pixel = Buffer.from([0x2f, 0, 0, 0, 0, 0x07, 0x10, 0x11, 0x11, 0x88, 0x88, 0xfe, 0x07, 0]);
  const parts = Buffer.concat([
    Buffer.from('WEBP'),
    part('VP8X', Buffer.from([0x0c, 0, 0, 0, 0, 0, 0, 0, 0, 0])),
    part('VP8L', pixel),
    part('EXIF', Uint8Array.from(exif(6))),
    part('XMP ', Buffer.from('<?xpacket Taken at home')),
  ]);
  return part('RIFF', parts);
}
