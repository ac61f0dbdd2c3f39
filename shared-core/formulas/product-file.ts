import { z } from 'zod';
import { datedPaper, daysFollow, DAYS_MUST_FOLLOW } from '../materials/document';
import { longText, nameText } from '../quantities/text';
import { id } from '../record/id';

/** What a report in a product's file is about: Regulation (EC) No 1223/2009, Article 11(2) and Annex I (from memory). */
export const REPORT_KINDS = [
  'stability report',
  'challenge test report',
  'microbiological quality',
  'safety assessment',
  'proof of a claim',
  'packaging',
  'other',
] as const;
export type ReportKind = (typeof REPORT_KINDS)[number];

/** A report on file, kept among the library's attachments. */
export const productReport = datedPaper
  .extend({
    id,
    kind: z.enum(REPORT_KINDS),
    /** The version that was examined; null where it speaks of the product as such. */
    versionNumber: z.int('A version has a whole number.').min(1, 'Versions begin at 1.').nullable(),
  })
  .refine(daysFollow, DAYS_MUST_FOLLOW);
export type ProductReport = z.infer<typeof productReport>;

/** What the pack or its advertising says of the product, and what bears it out. */
export const productClaim = z.object({
  id,
  says: nameText('what the product claims', 300),
  evidence: longText(2000),
  /** The report that bears it out; null where none does. */
  reportId: id.nullable(),
});
export type ProductClaim = z.infer<typeof productClaim>;

/** What the file states in the maker's own words. */
export const productStatements = z.object({
  /** That it is made by good manufacturing practice, and how. */
  goodPractice: longText(2000),
  animalTesting: longText(2000),
});
export type ProductStatements = z.infer<typeof productStatements>;

/** A product's file of which nothing is known yet. */
export function blankProductFile(): {
  claims: ProductClaim[];
  reports: ProductReport[];
  statements: ProductStatements;
} {
  return { claims: [], reports: [], statements: { goodPractice: '', animalTesting: '' } };
}
