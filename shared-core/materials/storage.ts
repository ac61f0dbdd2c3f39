import { z } from 'zod';
import { KEEP_FROM } from './vocabulary';

export const temperature = z
  .number('Write the temperature as a number.')
  .min(-80, 'Too cold to be true.')
  .max(200, 'Too hot to be true.')
  .nullable();
export const months = z
  .int('Write whole months, without decimals.')
  .min(0, 'Months cannot be negative.')
  .max(600, 'Fifty years at most.')
  .nullable();

/** As a library may hold it. */
export const storedStorage = z.object({
  minC: temperature,
  maxC: temperature,
  keepFrom: z.array(z.enum(KEEP_FROM)).max(KEEP_FROM.length),
  shelfLifeMonths: months,
  afterOpeningMonths: months,
});

export const storage = storedStorage.refine(
  ({ minC, maxC }) => minC === null || maxC === null || minC <= maxC,
  {
    message: '“Not colder than” must not be above “not warmer than”.',
    path: ['minC'],
  },
);
export type Storage = z.infer<typeof storage>;
