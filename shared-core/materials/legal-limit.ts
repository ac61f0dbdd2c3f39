import { z } from 'zod';
import { sharePpm } from '../quantities/share';
import { lineText, nameText } from '../quantities/text';

/** A legal limit as the maker recorded it, in ppm of the finished product; always with its text and date. */
export const legalLimit = z.object({
  ppm: sharePpm,
  note: lineText(300),
  source: nameText('the source of the limit', 300),
});
export type LegalLimit = z.infer<typeof legalLimit>;
