import type { KeyOf, ListDescription } from '../lists/description';
import { facetsOf, listedFields, searchedKeys, sortsOf } from '../record/listed';
import { MATERIAL_FIELDS } from './fields';
import type { MaterialContent } from './material';

type Texts<T> = T extends readonly string[] ? string[] : null extends T ? string | null : string;
/** What a list can show of a material as it stands: texts, words and lists of words. */
type Plain = {
  [
    K in keyof MaterialContent as MaterialContent[K] extends string | null | readonly string[] ? K : never
  ]: Texts<MaterialContent[K]>;
};
/** Those that code asks for by name; any other that is described as listed is there too. */
type Named =
  | 'code'
  | 'tradeName'
  | 'charge'
  | 'architecture'
  | 'emulsionType'
  | 'functions'
  | 'phaseOfUse'
  | 'form'
  | 'consistency'
  | 'origin'
  | 'status'
  | 'withdrawnOn'
  | 'notes';

/** A material as its list knows it: what is shown, sorted, filtered and searched. */
export type MaterialEntry = Partial<Plain> &
  Pick<Plain, Named> & {
    id: string;
    /** Of its photo, by its SHA-256. */
    photo: string | null;
    /** INCI names, joined with commas, largest share first. */
    inci: string;
    /** The supplier of the newest offer. */
    supplier: string;
    suppliers: string[];
    keepFrom: string[];
    hlb: number | null;
    requiredHlbOw: number | null;
    meltingPoint: number | null;
    /** Price per kg of the newest offer, in minor units of `currency`. */
    pricePerKg: number | null;
    currency: string | null;
    updatedAt: string;
  };

/** A row of the materials list as it is sent. */
export type MaterialRow = Omit<MaterialEntry, 'notes' | 'suppliers'>;

/** The fields of a material that its list shows, filters or searches as they stand. */
export const MATERIALS_LISTED = listedFields<KeyOf<MaterialEntry>>(MATERIAL_FIELDS);

const NAMES: KeyOf<MaterialEntry>[] = ['tradeName', 'code', 'inci'];
const facets = facetsOf(MATERIALS_LISTED);

/** The list of raw materials: from the description of its fields, and what is worked out of composition, figures and offers. */
export const MATERIALS_LIST: ListDescription<KeyOf<MaterialEntry>> = {
  one: 'material',
  many: 'materials',
  name: 'tradeName',
  code: 'code',
  texts: {
    names: NAMES,
    shown: [
      ...searchedKeys(MATERIALS_LISTED, true).filter((key) => !NAMES.includes(key)),
      'supplier',
      'suppliers',
    ],
    unshown: searchedKeys(MATERIALS_LISTED, false),
  },
  facets: [
    ...facets.filter(({ key }) => key !== 'status'),
    { key: 'suppliers', title: 'Supplier', words: null },
    ...facets.filter(({ key }) => key === 'status').map((facet) => ({ ...facet, putAside: ['archived'] })),
  ],
  ranges: [{ key: 'hlb', title: 'HLB', min: 0, max: 40 }],
  sorts: [
    ...sortsOf(MATERIALS_LISTED),
    { key: 'inci', by: 'text' },
    { key: 'supplier', by: 'text' },
    { key: 'hlb', by: 'number' },
    { key: 'requiredHlbOw', by: 'number' },
    { key: 'meltingPoint', by: 'number' },
    { key: 'pricePerKg', by: 'number', within: 'currency' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'tradeName', descending: false },
  unsent: ['notes', 'suppliers'],
};
