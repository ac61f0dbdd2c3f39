import { z } from 'zod';
import { currency } from '../quantities/money';
import { sharePpm } from '../quantities/share';
import type { Target } from './target';
import { isTarget, targetOf } from './targets';
import { KEYS } from './read-rows';
import type { TableRow } from './row';

const amount = z.number().nullable();
const text = z.string().max(20_000);
const plainValue = z.union([text, z.number(), z.boolean(), z.array(text).max(100)]);

/** The shape in which a value of a target is sent; what it may say is ruled by the material's own fields. */
function shapeOf({ key, reading }: Target): z.ZodType {
  switch (reading.kind) {
    case 'figure':
      return z.object({ low: amount, value: amount, high: amount });
    case 'money':
      return z.object({ amount: z.number(), currency: currency.nullable() });
    case 'names':
      return key === 'allergens'
        ? z.array(z.object({ inci: text, ppm: sharePpm })).max(500)
        : z.array(z.object({ inci: text, lowPpm: sharePpm, highPpm: sharePpm })).max(500);
    case 'currency':
      return currency;
    case 'number':
    case 'whole':
    case 'share':
    case 'mass':
      return z.number();
    case 'amount':
      return z.object({ percent: amount, toHundred: z.boolean() });
    default:
      return plainValue.nullable();
  }
}

/** A line of a formula, as several rows make one. */
const formulaRow = z.object({
  line: z.int().min(1),
  names: z.array(text).min(1).max(3),
  percent: amount,
  toHundred: z.boolean(),
  phase: z.string().max(80),
  note: z.string().max(300),
});

/** Each shape is made once: a table asks for them at every cell. */
const SHAPES = new Map<string, z.ZodType>([['lines', z.array(formulaRow).max(2_600)]]);
function shapeAt(key: string): z.ZodType | null {
  const known = SHAPES.get(key);
  if (known || !isTarget(key)) return known ?? null;
  const shape = shapeOf(targetOf(key));
  SHAPES.set(key, shape);
  return shape;
}

const isHeld = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** By key; looked at once, key by key: one that fills nothing is refused, whatever it is. */
const values: z.ZodType<Record<string, unknown>> = z
  .custom<Record<string, unknown>>(isHeld, 'The values of a row are named by what they fill.')
  .superRefine((held, found) => {
    for (const [key, value] of Object.entries(held)) {
      const several = key === 'offers' && Array.isArray(value) && value.length <= 60;
      const known = several
        ? value.every((one) => values.safeParse(one).success)
        : (shapeAt(key)?.safeParse(value).success ?? false);
      if (!known) found.addIssue({ code: 'custom', path: [key], message: `${key} cannot be read here.` });
    }
  });

const fault = z.object({
  heading: z.string().max(300),
  message: z.string().max(2_000),
  words: z.object({ target: z.string().max(60), written: z.array(z.string().max(300)) }).optional(),
});

/** A row of a table as a page sends it. */
export const tableRow: z.ZodType<TableRow> = z.object({
  line: z.int().min(1),
  values,
  faults: z.array(fault).max(100),
}) as z.ZodType<TableRow>;

export const keyTarget = z.enum(KEYS);
