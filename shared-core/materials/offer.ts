import { z } from 'zod';
import { currency } from '../quantities/money';
import { lineText, nameText } from '../quantities/text';

const isoDate = z.iso.date('Write the date as year-month-day, for example 2026-03-31.');

/** A supplier's offer: one pack size at one price on one date; who supplies it may be known before the price. */
export const offer = z
  .object({
    supplier: nameText('the supplier'),
    itemCode: lineText(60),
    packMg: z
      .int('A pack is weighed to the milligram at most.')
      .positive('The pack must weigh something.')
      .max(1e12, 'That pack is larger than a tanker.')
      .nullable(),
    priceMinor: z
      .int('This price has more decimals than its currency.')
      .min(0, 'A price cannot be negative.')
      .max(1e12, 'That price is too large.')
      .nullable(),
    currency,
    date: isoDate,
  })
  .refine(({ packMg, priceMinor }) => priceMinor === null || packMg !== null, {
    path: ['packMg'],
    message: 'A price needs the size of its pack.',
  });
export type Offer = z.infer<typeof offer>;
