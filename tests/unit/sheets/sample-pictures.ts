import { crc32, deflateSync } from 'node:zlib';

// Small pictures made for these tests.
const of = (base64: string): Uint8Array => new Uint8Array(Buffer.from(base64, 'base64'));

export const JPEG = of(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//2wBDAQ4ODhMREyYVFSZPNS01T09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT0//wAARCAAIAAgDASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAb/xAAWEAEBAQAAAAAAAAAAAAAAAAAAFGH/xAAVAQEBAAAAAAAAAAAAAAAAAAAEBv/EABcRAAMBAAAAAAAAAAAAAAAAAAAEFVL/2gAMAwEAAhEDEQA/AJGzQFbGUyMrNaP/2Q==',
);
export const WEBP = of(
  'UklGRlAAAABXRUJQVlA4IEQAAACwAgCdASoIAAgAAgA0JagCdLcAlgH8AuP8D0P9gAAA/vaw64VOXrH/ji+FUl6/eFUl/8Cd/4U1/5nM6/LrKOkkS4AAAA==',
);
export const WEBP_LOSSLESS = of('UklGRhwAAABXRUJQVlA4TA8AAAAvAkAAAAcQ/Y/+ByKi/wEA');

export interface PngParts {
  width: number;
  height: number;
  bits?: number;
  colourType?: number;
  interlaced?: boolean;
  /** Unpacked data; rows of zeros without a filter when left out, which fit RGB of 8 bits. */
  data?: Uint8Array;
  /** More chunks before the data, by name. */
  more?: Record<string, Uint8Array>;
}

function chunk(name: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** A PNG of those parts, with right checksums. */
export function png(parts: PngParts): Uint8Array {
  const { width, height, bits = 8, colourType = 2, interlaced = false, more = {} } = parts;
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width);
  head.writeUInt32BE(height, 4);
  head.set([bits, colourType, 0, 0, interlaced ? 1 : 0], 8);
  const data = parts.data ?? Buffer.alloc(height * (1 + width * 3));
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', head),
      ...Object.entries(more).map(([name, bytes]) => chunk(name, bytes)),
      chunk('IDAT', deflateSync(data)),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  );
}

export const PNG = png({ width: 8, height: 6 });
