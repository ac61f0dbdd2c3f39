import { fold } from '../quantities/fold';
import type { Hansen } from './hansen';

/** Hansen parameters of a substance, and the radius of its sphere where one is published. */
export interface PublishedHansen extends Hansen {
  radius: number | null;
  /** `computed`: estimated from the groups of its molecule, after Hoftyzer and van Krevelen. */
  basis: 'published' | 'computed';
}

type Row = readonly [
  inci: string,
  d: number,
  p: number,
  h: number,
  radius: number | null,
  basis: PublishedHansen['basis'],
];

/** Hansen's tables (from memory), and estimates for oils that they lack; by INCI name, MPa½. */
const ROWS: readonly Row[] = [
  ['Aqua', 15.5, 16, 42.3, null, 'published'],
  ['Alcohol', 15.8, 8.8, 19.4, null, 'published'],
  ['Isopropyl Alcohol', 15.8, 6.1, 16.4, null, 'published'],
  ['Propylene Glycol', 16.8, 9.4, 23.3, null, 'published'],
  ['Glycerin', 17.4, 12.1, 29.3, null, 'published'],
  ['Butylene Glycol', 16.6, 10, 21.5, null, 'published'],
  ['Dipropylene Glycol', 16.5, 10.6, 17.7, null, 'published'],
  ['Hexylene Glycol', 15.7, 8.4, 17.8, null, 'published'],
  ['Benzyl Alcohol', 18.4, 6.3, 13.7, null, 'published'],
  ['Phenoxyethanol', 17.8, 5.7, 14.3, null, 'published'],
  ['Acetone', 15.5, 10.4, 7, null, 'published'],
  ['MEK', 16, 9, 5.1, null, 'published'],
  ['Ethyl Acetate', 15.8, 5.3, 7.2, null, 'published'],
  ['Butyl Acetate', 15.8, 3.7, 6.3, null, 'published'],
  ['Dodecane', 16, 0, 0, null, 'published'],
  ['Toluene', 18, 1.4, 2, null, 'published'],
  ['Limonene', 17.2, 1.8, 4.3, null, 'published'],
  ['Dimethyl Sulfoxide', 18.4, 16.4, 10.2, null, 'published'],
  ['Propylene Carbonate', 20, 18, 4.1, null, 'published'],
  ['Acetic Acid', 14.5, 8, 13.5, null, 'published'],
  ['Ethyl Lactate', 16, 7.6, 12.5, null, 'published'],
  ['Triacetin', 16.5, 4.5, 9.1, null, 'published'],
  ['Diethyl Phthalate', 17.6, 9.6, 4.5, null, 'published'],
  ['Butoxyethanol', 16, 5.1, 12.3, null, 'published'],
  ['Disiloxane', 12.6, 2, 0, null, 'published'],
  ['Triethyl Citrate', 16.5, 4.9, 12, null, 'published'],
  ['Oleyl Alcohol', 14.3, 2.6, 8, null, 'published'],
  ['Isopropyl Palmitate', 14.3, 3.9, 3.7, null, 'published'],
  ['Oleic Acid', 16, 2.8, 6.2, null, 'published'],
  ['Stearic Acid', 16.3, 3.3, 5.5, null, 'published'],
  ['Ethoxydiglycol', 16.1, 9.2, 12.2, null, 'published'],
  ['Lactic Acid', 17, 8.3, 28.4, null, 'published'],
  ['Benzoic Acid', 18.2, 6.9, 9.8, null, 'published'],
  ['Methyl Salicylate', 16, 8, 12.3, null, 'published'],
  ['Dimethyl Isosorbide', 17.6, 7.1, 7.5, null, 'published'],
  ['Olea Europaea Fruit Oil', 15.9, 1.2, 5.4, 12, 'published'],
  ['Cholesterol', 20.4, 2.8, 9.4, 12.6, 'published'],
  ['Cyclopentasiloxane', 12.9, 1.3, 1, null, 'published'],
  ['Caffeine', 19.5, 10.1, 13, null, 'published'],
  ['Isopropyl Myristate', 15.67, 1.55, 4.7, null, 'computed'],
  ['Caprylic/Capric Triglyceride', 16.05, 1.72, 6.53, null, 'computed'],
  ['Octyldodecanol', 16.05, 1.4, 7.49, null, 'computed'],
  ['Squalane', 15.63, 0, 0, null, 'computed'],
  ['Isohexadecane', 15.62, 0, 0, null, 'computed'],
  ['Ethylhexyl Methoxycinnamate', 16.87, 2.23, 5.9, null, 'computed'],
  ['Ethylhexyl Salicylate', 16.77, 2.87, 10.46, null, 'computed'],
  ['Dicaprylyl Ether', 15.69, 1.33, 3.16, null, 'computed'],
  ['Ethylhexyl Palmitate', 15.38, 1.14, 4.04, null, 'computed'],
  ['Isononyl Isononanoate', 14.56, 1.47, 4.58, null, 'computed'],
  ['Methyl Alcohol', 15.1, 12.3, 22.3, null, 'published'],
  ['Propyl Alcohol', 16, 6.8, 17.4, null, 'published'],
  ['n-Butyl Alcohol', 16, 5.7, 15.8, null, 'published'],
  ['Glycol', 17, 11, 26, null, 'published'],
  ['Diethylene Glycol', 16.6, 12, 20.7, null, 'published'],
  ['Hexane', 14.9, 0, 0, null, 'published'],
  ['Heptane', 15.3, 0, 0, null, 'published'],
  ['Hexadecane', 16.3, 0, 0, null, 'published'],
  ['Cyclohexane', 16.8, 0, 0.2, null, 'published'],
  ['Methyl Pyrrolidone', 18, 12.3, 7.2, null, 'published'],
  ['Nitrocellulose', 15.4, 14.7, 8.8, 11.5, 'published'],
  ['Polymethyl Methacrylate', 18.6, 10.5, 7.5, 8.6, 'published'],
  ['Zein', 22.4, 9.8, 19.4, 11.9, 'published'],
  ['Urea', 20.9, 18.7, 26.4, 19.4, 'published'],
  ['Sucrose', 21.7, 26.3, 29.6, 20.4, 'published'],
];

const BY_NAME: ReadonlyMap<string, PublishedHansen> = new Map(
  ROWS.map(([inci, d, p, h, radius, basis]) => [fold(inci), { d, p, h, radius, basis }]),
);

/** The published parameters of an INCI name; null where none are known. */
export function publishedHansen(inci: string): PublishedHansen | null {
  return BY_NAME.get(fold(inci).trim()) ?? null;
}

/** All of them, by INCI name. */
export const PUBLISHED_HANSEN: readonly (readonly [inci: string, of: PublishedHansen])[] = ROWS.map(
  ([inci, d, p, h, radius, basis]) => [inci, { d, p, h, radius, basis }],
);
