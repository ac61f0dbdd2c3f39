import { z } from 'zod';
import { nameText } from '../quantities/text';
import { DOCUMENT_KINDS } from './vocabulary';

/** An attached file, known by its content. */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'This attachment is not known.');

/** What an attached file is, by its first bytes; any other file is kept as one that is only ever saved, never shown. */
export const MEDIA_TYPES = [
  'application/pdf',
  'image/png',
  'image/jpeg',
  'image/webp',
  'application/octet-stream',
] as const;
export type MediaType = (typeof MEDIA_TYPES)[number];
export type PictureType = Extract<MediaType, `image/${string}`>;
export const isPicture = (type: MediaType): type is PictureType => type.startsWith('image/');

const ENDINGS: Readonly<Partial<Record<MediaType, string>>> = {
  'application/pdf': 'pdf',
  'image/png': 'png',
  'image/jpeg': 'jpg',
  'image/webp': 'webp',
};

/** The ending of a file of that type; of any other file the one that its title has. */
export function endingOf({ mediaType, title }: { mediaType: MediaType; title: string }): string {
  return ENDINGS[mediaType] ?? /\.([a-z0-9]{1,8})$/i.exec(title)?.[1]?.toLowerCase() ?? 'bin';
}

/** What a file is called by, as its maker named it: without its ending, where that goes without saying. */
export function titleOfFile(name: string, mediaType: MediaType): string {
  const bare = mediaType === 'application/octet-stream' ? name : name.replace(/\.[a-z]+$/i, '');
  return bare.trim().slice(-200);
}

/** A paper on file among the library's attachments, by its title. */
export const filedPaper = z.object({
  title: nameText('the document’s title'),
  sha256,
  mediaType: z.enum(MEDIA_TYPES),
  bytes: z.int('A size is a whole number of bytes.').positive('This file is empty.'),
});
export type FiledPaper = z.infer<typeof filedPaper>;

/** A day, ISO 8601; empty where it is not known. */
export const dayOrNone = z.iso
  .date('Write the date as year-month-day, for example 2026-03-31.')
  .or(z.literal(''))
  .default('');

/** A paper on file with the days that it bears. */
export const datedPaper = filedPaper.extend({
  /** The day that it bears. */
  dated: dayOrNone,
  /** The last day on which it holds. */
  validUntil: dayOrNone,
});

type Days = Pick<z.infer<typeof datedPaper>, 'dated' | 'validUntil'>;

/** Whether a paper's days follow each other; so far as they are known. */
export const daysFollow = ({ dated, validUntil }: Days): boolean =>
  dated === '' || validUntil === '' || dated <= validUntil;
export const DAYS_MUST_FOLLOW = {
  path: ['validUntil'],
  message: 'A document cannot be valid until a day before its own date.',
};

export const materialDocument = datedPaper
  .extend({ kind: z.enum(DOCUMENT_KINDS) })
  .refine(daysFollow, DAYS_MUST_FOLLOW);
export type MaterialDocument = z.infer<typeof materialDocument>;

/** A paper of whichever noun, by its kind there. */
export type KindedPaper = z.infer<typeof datedPaper> & { kind: string };

/** Kinds of which a newer one takes the place of the older; certificates stand beside each other. */
export const REPLACED_KINDS: readonly string[] = ['safety data sheet', 'specification', 'safety assessment'];

/** Whether a document is past on a day, and no newer one has taken its place. @param onDay ISO 8601 */
export function isPast(document: KindedPaper, all: readonly KindedPaper[], onDay: string): boolean {
  const { kind, dated, validUntil } = document;
  if (validUntil === '' || validUntil >= onDay) return false;
  return !(REPLACED_KINDS.includes(kind) && all.some((other) => other.kind === kind && other.dated > dated));
}
