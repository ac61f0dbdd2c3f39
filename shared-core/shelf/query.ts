import { z } from 'zod';
import {
  ARCHITECTURES,
  CHARGES,
  CONSISTENCIES,
  EMULSION_TYPES,
  FORMS,
  FUNCTIONS,
  KEEP_FROM,
  ORIGINS,
  PHASES_OF_USE,
  STATUSES,
} from '../materials/vocabulary';

/** The filters that pick from a list of words; each shows how many materials every word would leave. */
export const FACETS = {
  charge: CHARGES,
  architecture: ARCHITECTURES,
  emulsionType: EMULSION_TYPES,
  functions: FUNCTIONS,
  phaseOfUse: PHASES_OF_USE,
  form: FORMS,
  consistency: CONSISTENCIES,
  origin: ORIGINS,
  keepFrom: KEEP_FROM,
  status: STATUSES,
} as const;
export type Facet = keyof typeof FACETS;
export const FACET_NAMES = Object.keys(FACETS) as Facet[];

export const SORT_KEYS = [
  'tradeName',
  'inci',
  'code',
  'supplier',
  'charge',
  'architecture',
  'hlb',
  'requiredHlbOw',
  'emulsionType',
  'functions',
  'phaseOfUse',
  'form',
  'consistency',
  'origin',
  'meltingPoint',
  'pricePerKg',
  'status',
  'updatedAt',
] as const;
export type SortKey = (typeof SORT_KEYS)[number];

const hlbEnd = z
  .number()
  .min(0, 'HLB runs from 0 to 40.')
  .max(40, 'HLB runs from 0 to 40.')
  .nullable()
  .default(null);

/** What is looked for. Within a facet the words are alternatives; between facets all must hold. */
export const shelfQuery = z.object({
  /** Every word must begin a word of the trade name, code, an INCI name, a supplier or the notes. */
  text: z.string().max(500, 'Search for 500 characters or fewer.').default(''),
  charge: z.array(z.enum(CHARGES)).default([]),
  architecture: z.array(z.enum(ARCHITECTURES)).default([]),
  emulsionType: z.array(z.enum(EMULSION_TYPES)).default([]),
  functions: z.array(z.enum(FUNCTIONS)).default([]),
  phaseOfUse: z.array(z.enum(PHASES_OF_USE)).default([]),
  form: z.array(z.enum(FORMS)).default([]),
  consistency: z.array(z.enum(CONSISTENCIES)).default([]),
  origin: z.array(z.enum(ORIGINS)).default([]),
  keepFrom: z.array(z.enum(KEEP_FROM)).default([]),
  /** Empty means all but the archived. */
  status: z.array(z.enum(STATUSES)).default([]),
  hlbFrom: hlbEnd,
  hlbTo: hlbEnd,
  sortBy: z.enum(SORT_KEYS).default('tradeName'),
  descending: z.boolean().default(false),
  offset: z.int().min(0).default(0),
  limit: z.int().min(0).max(500).default(100),
});
export type ShelfQuery = z.infer<typeof shelfQuery>;

/** One row of the materials list: what the list shows, sorts and filters by. */
export interface ShelfEntry {
  id: string;
  code: string;
  tradeName: string;
  /** INCI names, joined with commas, largest share first. */
  inci: string;
  /** The supplier of the newest offer; all suppliers are searched. */
  supplier: string;
  suppliers: string[];
  charge: string | null;
  architecture: string | null;
  emulsionType: string | null;
  functions: string[];
  phaseOfUse: string | null;
  form: string | null;
  consistency: string | null;
  origin: string | null;
  keepFrom: string[];
  status: string;
  hlb: number | null;
  requiredHlbOw: number | null;
  meltingPoint: number | null;
  /** Price per kg of the newest offer, in minor units of `currency`. */
  pricePerKg: number | null;
  currency: string | null;
  notes: string;
  updatedAt: string;
}

/** A row as it is sent to the list: without the notes and suppliers that serve searching only. */
export type ShelfRow = Omit<ShelfEntry, 'notes' | 'suppliers'>;

export interface ShelfAnswer {
  /** How many match in all. */
  total: number;
  offset: number;
  rows: ShelfRow[];
  /** For each facet and word: how many would match with that word alone chosen in that facet. */
  counts: Record<Facet, Record<string, number>>;
}
