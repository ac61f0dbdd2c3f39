import { z } from 'zod';
import { ARCHITECTURES, CHARGES, EMULSION_TYPES } from '../../materials/vocabulary';

export const OBJECTIVES = ['least cost', 'nearest HLB', 'fewest materials'] as const;
export type Objective = (typeof OBJECTIVES)[number];

/** Demands on which emulsifiers go together; each is one constraint of the model. */
export const PAIRING_RULES = [
  'one sign of charge',
  'serves the type',
  'waxy with liquid',
  'cationic with a non-ionic',
  'a cationic',
  'ionic with a non-ionic',
  'one that disperses in water',
] as const;
export type PairingRule = (typeof PAIRING_RULES)[number];

const percent = (what: string) =>
  z
    .number(`${what} must be a number of per cent.`)
    .min(0, `${what} cannot be negative.`)
    .max(100, `${what} cannot be more than 100 %.`);

const hlb = (what: string) =>
  z
    .number(`${what} must be a number.`)
    .min(0, `${what} lies between 0 and 40.`)
    .max(40, `${what} lies between 0 and 40.`);

/** An emulsifier that may be chosen. Levels in % of the formula, cost in minor units per kg of the material. */
export const candidate = z
  .object({
    id: z.string().min(1),
    name: z.string(),
    hlb: hlb('An HLB').nullable(),
    /** The ends of the figure’s spread, where it has one. */
    hlbLow: hlb('An HLB').nullable().optional(),
    hlbHigh: hlb('An HLB').nullable().optional(),
    charge: z.enum(CHARGES).nullable(),
    architecture: z.enum(ARCHITECTURES).nullable(),
    emulsionType: z.enum(EMULSION_TYPES).nullable(),
    character: z.enum(['waxy', 'liquid']).nullable(),
    costPerKg: z.number().min(0, 'A price cannot be negative.').nullable(),
    /** Least and most when it is used at all. */
    minPercent: percent('The lowest use'),
    maxPercent: percent('The highest use'),
    /** True where no highest use is recorded, so that the usual one stands in for it. */
    maxAssumed: z.boolean().optional(),
  })
  .refine((one) => one.minPercent <= one.maxPercent, 'The lowest use is above the highest.');
export type Candidate = z.infer<typeof candidate>;

/** What is asked of the choice. */
export const demand = z
  .object({
    emulsionType: z.enum(['o/w', 'w/o']),
    /** Null leaves HLB out: for systems that no mean HLB describes. */
    targetHlb: hlb('The target HLB').nullable(),
    tolerance: z
      .number('The tolerance must be a number.')
      .min(0, 'A tolerance cannot be negative.')
      .max(20, 'A tolerance above 20 asks for nothing.'),
    totalMinPercent: percent('The lowest total'),
    totalMaxPercent: percent('The highest total'),
    atMost: z
      .int('Use a whole number of materials.')
      .min(1, 'Use at least one material.')
      .max(10, 'Ten materials at most.'),
    pinned: z.array(z.string()).default([]),
    excluded: z.array(z.string()).default([]),
    objective: z.enum(OBJECTIVES),
    rules: z.array(z.enum(PAIRING_RULES)).default([]),
    /** How many next-best answers to find, each with other materials. */
    alternatives: z.int().min(0).max(20).default(5),
  })
  .refine((one) => one.totalMinPercent <= one.totalMaxPercent, {
    message: 'The lowest total is above the highest.',
    path: ['totalMinPercent'],
  })
  .refine((one) => one.totalMaxPercent > 0, {
    message: 'The highest total must be above 0 %.',
    path: ['totalMaxPercent'],
  })
  .refine((one) => one.targetHlb !== null || one.objective !== 'nearest HLB', {
    message: '“Nearest HLB” needs a target HLB.',
    path: ['targetHlb'],
  });
export type Demand = z.infer<typeof demand>;

/** The pairing rules that a type of emulsion and a climate ask for (domain rules; common practice). */
export function rulesFor(type: 'o/w' | 'w/o' | 'cationic o/w', allClimates: boolean): PairingRule[] {
  const always: PairingRule[] = ['one sign of charge', 'serves the type'];
  if (type === 'w/o') return [...always, 'waxy with liquid'];
  always.push('one that disperses in water');
  if (type === 'cationic o/w') return [...always, 'a cationic', 'cationic with a non-ionic'];
  return allClimates ? [...always, 'ionic with a non-ionic'] : always;
}
