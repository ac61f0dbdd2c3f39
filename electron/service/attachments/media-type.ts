import { endingOf, type MediaType as AnyType } from '@core/materials/document';

/** Those that can be shown. */
type MediaType = Exclude<AnyType, 'application/octet-stream'>;

const SIGNATURES: [MediaType, (bytes: Uint8Array) => boolean][] = [
  ['application/pdf', (b) => startsWith(b, [0x25, 0x50, 0x44, 0x46, 0x2d])],
  ['image/png', (b) => startsWith(b, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])],
  ['image/jpeg', (b) => startsWith(b, [0xff, 0xd8, 0xff])],
  [
    'image/webp',
    (b) => startsWith(b, [0x52, 0x49, 0x46, 0x46]) && startsWith(b.subarray(8), [0x57, 0x45, 0x42, 0x50]),
  ],
];

function startsWith(bytes: Uint8Array, head: number[]): boolean {
  return head.every((byte, at) => bytes[at] === byte);
}

/** What a file is, by its first bytes and never by its name; null when it is nothing that Stillroom shows. */
export function mediaTypeOf(bytes: Uint8Array): MediaType | null {
  return SIGNATURES.find(([, matches]) => matches(bytes))?.[0] ?? null;
}

/** The ending of a file that can be shown. */
export const endingOfShown = (type: MediaType): string => endingOf({ mediaType: type, title: '' });
