import { z } from 'zod';
import { CHARGES, FORMS, ORIGINS } from '../../materials/vocabulary';
import type { Charge, Form, Origin } from '../../materials/vocabulary';

const hlbEnd = z
  .number('An HLB must be a number.')
  .min(0, 'HLB runs from 0 to 40.')
  .max(40, 'HLB runs from 0 to 40.')
  .nullable()
  .default(null);

/** Which of the library's emulsifiers may be chosen; an empty list allows all. */
export const candidateFilter = z
  .object({
    charges: z.array(z.enum(CHARGES)).default([]),
    forms: z.array(z.enum(FORMS)).default([]),
    origins: z.array(z.enum(ORIGINS)).default([]),
    hlbFrom: hlbEnd,
    hlbTo: hlbEnd,
  })
  .refine((filter) => filter.hlbFrom === null || filter.hlbTo === null || filter.hlbFrom <= filter.hlbTo, {
    message: 'The lowest HLB is above the highest.',
    path: ['hlbFrom'],
  });
export type CandidateFilter = z.infer<typeof candidateFilter>;

interface Filtered {
  id: string;
  charge: Charge | null;
  form: Form | null;
  origin: Origin | null;
  hlb: number | null;
}

const allows = <T>(list: readonly T[], value: T | null): boolean =>
  list.length === 0 || (value !== null && list.includes(value));

/** The candidates that a filter lets through, and those pinned whatever they are. */
export function filtered<T extends Filtered>(
  candidates: readonly T[],
  filter: CandidateFilter,
  pinned: readonly string[] = [],
): T[] {
  const { charges, forms, origins, hlbFrom, hlbTo } = filter;
  const inWindow = (hlb: number | null): boolean =>
    (hlbFrom === null || (hlb !== null && hlb >= hlbFrom)) &&
    (hlbTo === null || (hlb !== null && hlb <= hlbTo));
  return candidates.filter(
    (one) =>
      pinned.includes(one.id) ||
      (allows(charges, one.charge) &&
        allows(forms, one.form) &&
        allows(origins, one.origin) &&
        inWindow(one.hlb)),
  );
}
