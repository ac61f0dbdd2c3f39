import { z } from 'zod';
import { ORIGINS } from '../../materials/vocabulary';
import { CURRENCIES } from '../../quantities/money';
import type { ChargeBearer } from '../conflicts/charge-bearers';
import type { OilLine, OilPhaseDemand } from './oil-phase';

export const SYSTEM_TYPES = ['o/w', 'w/o', 'cationic o/w'] as const;
export const FEELS = ['milk', 'lotion', 'cream', 'rich cream'] as const;
export const CLIMATES = ['frost', 'temperate', 'hot', 'both'] as const;
export const ELECTROLYTE_LEVELS = ['none', 'low', 'high'] as const;
export type Feel = (typeof FEELS)[number];

const level = z
  .number('The total level must be a number.')
  .min(0, 'A level cannot be negative.')
  .max(100, 'A level cannot be more than 100 %.');

/** What is wished of an emulsifier system, apart from the oil phase. */
export const systemWish = z.object({
  emulsionType: z.enum(SYSTEM_TYPES),
  feel: z.enum(FEELS),
  climate: z.enum(CLIMATES),
  /** The product's pH; null when not decided. */
  ph: z.number().min(0, 'pH runs from 0 to 14.').max(14, 'pH runs from 0 to 14.').nullable(),
  electrolyte: z.enum(ELECTROLYTE_LEVELS),
  /** Origins that are welcome; empty for all. */
  origins: z.array(z.enum(ORIGINS)).default([]),
  /** Emulsifier in all, % of the formula, at least and at most; null leaves an end to the feel. */
  levelFrom: level.nullable().default(null),
  levelTo: level.nullable().default(null),
  currency: z.enum(CURRENCIES),
});
export type SystemWish = z.infer<typeof systemWish>;
/** A wish as it is entered: what has a default may be left out. */
export type SystemWishInput = z.input<typeof systemWish>;

/** What emulsifiers must get on with. */
export interface RestFacts {
  /** What carries a charge among oils and rest. */
  bearers: readonly ChargeBearer[];
  hasBase: boolean;
  /** Salt that the other lines bring, ppm of the formula, at the upper end of the suppliers' ranges. */
  saltPpm: number;
}

/** A wish with what follows from the oil phase. */
export interface Wish extends SystemWish {
  /** With their shares in % of the formula. */
  oils: readonly OilLine[];
  /** Fatty alcohol that stands in the oil phase already, % of the formula. */
  alcoholInOils: number;
  /** Oil phase in all, % of the formula, a fatty alcohol that is added for body included. */
  oilPercent: number;
  required: OilPhaseDemand;
  /** True where the target was set by hand in place of the oils’ required HLB. */
  targetByHand: boolean;
  /** What is in the formula beside oils and emulsifiers, as far as it is known. */
  rest: RestFacts;
  /** The median price of the library's emulsifiers, minor units per kg; null when none has a price. */
  usualCostPerKg: number | null;
}

/** Fatty alcohol, in % of the formula, that builds the body of a feel. Common practice, no source. */
export const USUAL_FATTY_ALCOHOL: Record<Feel, number> = { milk: 0, lotion: 1, cream: 2, 'rich cream': 4 };
/** How much body a feel wants, on the scale of `bodyPoints`; "strong" begins at 2. */
export const WANTED_BODY: Record<Feel, number> = { milk: 0, lotion: 1, cream: 2, 'rich cream': 2.5 };
