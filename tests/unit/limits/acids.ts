import type { Law } from '@core/limits/law';
import { blankLimit, type Limit, type LimitContent } from '@core/limits/limit';
import { blankSubstance } from '@core/substances/substance';
import { kept } from './law';

/** A limit of the European Union, of 1 % unless said. */
export const limit = (subject: string, parts: Partial<LimitContent> = {}): Limit =>
  kept<LimitContent>({ ...blankLimit(subject), percent: 1, regions: ['EU'], source: 's', ...parts });
const group = (name: string) => ({ groups: [{ name }] });
/** Two acids and a salt of one of them, by real formulas; a group of all three. */
export const SUBSTANCES = [
  kept({ ...blankSubstance('Benzoic Acid'), formula: 'C7H6O2', ...group('Acids') }),
  kept({
    ...{ ...blankSubstance('Sodium Benzoate'), formula: 'C7H5NaO2', ...group('Acids') },
    equivalents: [{ countedAs: 'Benzoic Acid', perMole: 1 }],
  }),
  kept({ ...blankSubstance('Sorbic Acid'), formula: 'C6H8O2', ...group('Acids') }),
  kept({ ...blankSubstance('Aqua'), synonyms: [{ name: 'Water' }, { name: 'Eau' }] }),
];
export const law = (...limits: Limit[]): Law => ({ substances: SUBSTANCES, limits });
