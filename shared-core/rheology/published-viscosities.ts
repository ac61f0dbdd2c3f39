import type { Source } from '../working/working';

/** Viscosity of a liquid at a temperature. */
export interface PublishedViscosity {
  name: string;
  celsius: number;
  mPas: number;
  source: Source;
}

const CRC: Source = { text: 'CRC Handbook of Chemistry and Physics, CRC Press, Boca Raton', basis: 'memory' };
const SHEETS: Source = { text: 'common practice, no source: rough figures of suppliers', basis: 'memory' };

/** Starting points where nothing was measured; a supplier's figure of the lot goes before any. */
export const PUBLISHED_VISCOSITIES: readonly PublishedViscosity[] = [
  { name: 'Castor oil', celsius: 20, mPas: 986, source: CRC },
  { name: 'Castor oil', celsius: 40, mPas: 231, source: CRC },
  { name: 'Isopropyl Myristate', celsius: 20, mPas: 6, source: SHEETS },
  { name: 'Ethylhexyl Palmitate', celsius: 20, mPas: 14, source: SHEETS },
  { name: 'Caprylic/Capric Triglyceride', celsius: 20, mPas: 28, source: SHEETS },
  { name: 'Squalane', celsius: 20, mPas: 35, source: SHEETS },
  { name: 'Jojoba Oil', celsius: 20, mPas: 40, source: SHEETS },
  { name: 'Octyldodecanol', celsius: 20, mPas: 60, source: SHEETS },
  { name: 'Olive Oil', celsius: 20, mPas: 84, source: SHEETS },
];
