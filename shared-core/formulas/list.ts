import { DECISIONS } from './decision';
import type { KeyOf, ListDescription } from '../lists/description';
import { PRODUCT_TYPES, USES } from './formula';

/** Where a formula stands: written only, recorded at least once, or put away. */
export const FORMULA_STATUSES = ['draft', 'recorded', 'archived'] as const;
export type FormulaStatus = (typeof FORMULA_STATUSES)[number];

/** Where the newest recorded version stands. */
export const STANDINGS = ['not recorded', 'recorded', ...DECISIONS] as const;

/** A formula as its list knows it. */
export interface FormulaEntry {
  id: string;
  code: string;
  name: string;
  purpose: string;
  productType: string;
  use: string;
  status: FormulaStatus;
  lines: number;
  /** The newest recorded version's number, or null. */
  latestVersion: number | null;
  standing: (typeof STANDINGS)[number];
  updatedAt: string;
  /** Raw-material cost per kg by each material's newest offer, in minor units of `currency`; null without any price. */
  costPerKg: number | null;
  currency: string | null;
  /** How much of it has a price in that currency, in ppm. */
  pricedPpm: number;
  /** The materials of its draft, each once, and the share of each in ppm. */
  materialIds: string[];
  ppms: number[];
  /** What those are called, by trade name and by INCI names. */
  ingredients: string[];
}

/** A row of the formulas list as it is sent. */
export type FormulaRow = Omit<FormulaEntry, 'materialIds' | 'ppms' | 'ingredients'>;

/** The list of formulas. */
export const FORMULAS_LIST: ListDescription<KeyOf<FormulaEntry>> = {
  one: 'formula',
  many: 'formulas',
  name: 'name',
  code: 'code',
  texts: { names: ['name', 'code'], shown: ['purpose'], unshown: ['ingredients'] },
  facets: [
    { key: 'productType', title: 'Product type', words: PRODUCT_TYPES },
    { key: 'use', title: 'Use', words: USES },
    { key: 'standing', title: 'Newest version', words: STANDINGS },
    { key: 'status', title: 'Status', words: FORMULA_STATUSES, putAside: ['archived'] },
  ],
  ranges: [],
  sorts: [
    { key: 'name', by: 'text' },
    { key: 'code', by: 'text' },
    { key: 'productType', by: 'word' },
    { key: 'use', by: 'word' },
    { key: 'status', by: 'word' },
    { key: 'lines', by: 'number' },
    { key: 'latestVersion', by: 'number' },
    { key: 'standing', by: 'word' },
    { key: 'costPerKg', by: 'number', within: 'currency' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'name', descending: false },
  unsent: ['materialIds', 'ppms', 'ingredients'],
};
