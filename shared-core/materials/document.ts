import { z } from 'zod';
import { nameText } from '../quantities/text';
import { DOCUMENT_KINDS } from './vocabulary';

/** An attached file, known by its content. */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'This attachment is not known.');

export const materialDocument = z.object({
  kind: z.enum(DOCUMENT_KINDS),
  title: nameText('the document’s title'),
  sha256,
  mediaType: z.enum(['application/pdf', 'image/png', 'image/jpeg', 'image/webp']),
  bytes: z.int('A size is a whole number of bytes.').positive('This file is empty.'),
});
export type MaterialDocument = z.infer<typeof materialDocument>;
