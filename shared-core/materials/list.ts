import type { KeyOf, ListDescription } from '../lists/description';
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
} from './vocabulary';

/** A material as its list knows it: what is shown, sorted, filtered and searched. */
export interface MaterialEntry {
  id: string;
  code: string;
  tradeName: string;
  /** INCI names, joined with commas, largest share first. */
  inci: string;
  /** The supplier of the newest offer. */
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
  /** Empty where it is not known. */
  countryOfOrigin: string;
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

/** A row of the materials list as it is sent. */
export type MaterialRow = Omit<MaterialEntry, 'notes' | 'suppliers'>;

/** The list of raw materials. */
export const MATERIALS_LIST: ListDescription<KeyOf<MaterialEntry>> = {
  one: 'material',
  many: 'materials',
  name: 'tradeName',
  code: 'code',
  texts: {
    names: ['tradeName', 'code', 'inci'],
    shown: ['supplier', 'suppliers', 'countryOfOrigin'],
    unshown: ['notes'],
  },
  facets: [
    { key: 'charge', title: 'Charge', words: CHARGES },
    { key: 'architecture', title: 'Architecture', words: ARCHITECTURES },
    { key: 'emulsionType', title: 'Emulsion it serves', words: EMULSION_TYPES },
    { key: 'functions', title: 'Function', words: FUNCTIONS },
    { key: 'phaseOfUse', title: 'Usual phase', words: PHASES_OF_USE },
    { key: 'form', title: 'Form', words: FORMS },
    { key: 'consistency', title: 'Consistency when cold', words: CONSISTENCIES },
    { key: 'origin', title: 'Origin', words: ORIGINS },
    { key: 'countryOfOrigin', title: 'Country of origin', words: null },
    { key: 'keepFrom', title: 'Keep from', words: KEEP_FROM },
    { key: 'suppliers', title: 'Supplier', words: null },
    { key: 'status', title: 'Status', words: STATUSES, putAside: ['archived'] },
  ],
  ranges: [{ key: 'hlb', title: 'HLB', min: 0, max: 40 }],
  sorts: [
    { key: 'tradeName', by: 'text' },
    { key: 'inci', by: 'text' },
    { key: 'code', by: 'text' },
    { key: 'supplier', by: 'text' },
    { key: 'charge', by: 'word' },
    { key: 'architecture', by: 'word' },
    { key: 'hlb', by: 'number' },
    { key: 'requiredHlbOw', by: 'number' },
    { key: 'emulsionType', by: 'word' },
    { key: 'functions', by: 'word' },
    { key: 'phaseOfUse', by: 'word' },
    { key: 'form', by: 'word' },
    { key: 'consistency', by: 'word' },
    { key: 'origin', by: 'word' },
    { key: 'countryOfOrigin', by: 'text' },
    { key: 'meltingPoint', by: 'number' },
    { key: 'pricePerKg', by: 'number', within: 'currency' },
    { key: 'status', by: 'word' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'tradeName', descending: false },
  unsent: ['notes', 'suppliers'],
};
