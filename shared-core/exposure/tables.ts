import type { ProductKind } from '../products/product-kinds';
import type { Source } from '../working/working';

/** The committee's notes of guidance: tables read in a published summary, or recalled where `basis` says so. */
export const GUIDANCE: Source = {
  text: 'SCCS Notes of Guidance, 12th revision, SCCS/1647/22 (2023)',
  basis: 'read',
};

/** How much of a product an adult uses a day, and how much of it stays. */
export interface DailyUse {
  /** As the table calls it. */
  product: string;
  /** g a day. */
  amount: number;
  /** Retention factor on the skin or is swallowed. */
  retention: number;
  /** Relative daily exposure, mg/kg body weight a day, as printed; a survey's percentile of its own, not amount by 60 kg. */
  perKg: number | null;
  /** Area exposed, cm², and applications a day; null where no table gives them. */
  area: number | null;
  timesADay: number | null;
  /** Read at the table, or recalled. */
  basis: Source['basis'];
}

const row = (
  product: string,
  amount: number,
  retention: number,
  perKg: number | null,
  area: number | null,
  timesADay: number | null,
  basis: Source['basis'] = 'read',
): DailyUse => ({ product, amount, retention, perKg, area, timesADay, basis });

/** Adults' daily use by kind of product; a kind that the tables do not know is missing. */
export const DAILY_USE: Readonly<Partial<Record<ProductKind, DailyUse>>> = {
  'shower gel': row('Shower gel', 18.67, 0.01, 2.79, 17500, 1.43),
  shampoo: row('Shampoo', 10.46, 0.01, 1.51, 1440, 1),
  'hair styling product': row('Hair styling', 4, 0.1, 5.74, 1010, 1.14),
  'body lotion': row('Body lotion', 7.82, 1, 123.2, 15670, 2.28),
  'face cream': row('Face cream', 1.54, 1, 24.14, 565, 2.14),
  'hand cream': row('Hand cream', 2.16, 1, 32.7, 860, 2),
  'liquid foundation': row('Liquid foundation', 0.51, 1, 7.9, 565, 1),
  'lip product': row('Lipstick, lip salve', 0.057, 1, 0.9, 4.8, 2),
  'roll-on deodorant': row('Deodorant, non-spray', 1.5, 1, 22.08, 200, 2),
  'deodorant spray': row('Deodorant spray', 0.69, 1, 10, 200, 2),
  toothpaste: row('Toothpaste (adult)', 2.75, 0.05, 2.16, 216.8, 2),
  mouthwash: row('Mouthwash', 21.62, 0.1, 32.54, 216.8, 5),
  'hair conditioner': row('Hair conditioner', 3.92, 0.01, 0.67, null, null),
  'hand wash': row('Hand wash soap', 20, 0.01, 3.33, 860, 10, 'memory'),
  'make-up remover': row('Make-up remover', 5, 0.1, 8.33, 565, 1, 'memory'),
  'eye make-up': row('Eye make-up', 0.02, 1, 0.33, 24, 2, 'memory'),
  mascara: row('Mascara', 0.025, 1, 0.42, 1.6, 2, 'memory'),
  eyeliner: row('Eyeliner', 0.005, 1, 0.08, 3.2, 2, 'memory'),
  'sunscreen product': row('Sunscreen lotion or cream', 18, 1, 300, 17500, 2, 'memory'),
  'oxidative hair dye': row('Oxidative hair dye', 100, 0.1, null, 580, null, 'memory'),
  'non-oxidative hair dye': row('Semi-permanent hair dye', 35, 0.1, null, 580, null, 'memory'),
};

/** Of a preservative that may stand in every product that an adult uses: mg of products per kg body weight a day. */
export const AGGREGATE_PER_KG = 269;
/** Adult body weight, kg; dermal absorption where no data exist, %; the margin that is generally required. */
export const ADULT_KG = 60;
export const DEFAULT_ABSORPTION = 50;
export const USUAL_MARGIN = 100;
/** Surface to weight of a child against an adult, by age. */
export const CHILD_RATIOS = [
  { age: '0 months', ratio: 2.3 },
  { age: '6 months', ratio: 1.8 },
  { age: '12 months', ratio: 1.6 },
  { age: '5 years', ratio: 1.5 },
  { age: '10 years', ratio: 1.3 },
] as const;
