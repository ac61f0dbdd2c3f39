import type { LimitContent } from '../limit';
import { amended, annex, example, notAtAll, UNDATED, type TextOfLaw } from './entry';

/** What a spray may be for that is no hair spray. */
const NOT_HAIR: LimitContent['exceptKinds'] = [
  'face',
  'hand',
  'body',
  'lip',
  'eye',
  'oral',
  'nail',
  'deodorant',
];
const colorant = { purpose: 'colorant' } as const;
const ANNEX_IV = (ci: string): TextOfLaw => annex('IV', ci);
const REACH = (entry: string, by: string): TextOfLaw => ({
  source: `Regulation (EC) No 1907/2006, Annex XVII, entry ${entry}, by (EU) ${by}`,
  asOf: UNDATED,
  regions: ['EU'],
});

/** Colorants of Annex IV that are not free for all, and what the law of chemicals adds. */
export const COLORANT_LIMITS: readonly LimitContent[] = [
  notAtAll('CI 10006', ANNEX_IV('CI 10006'), {
    ...colorant,
    use: 'leave-on',
    condition: 'Only in rinse-off products.',
  }),
  example('CI 45350', 6, ANNEX_IV('CI 45350'), colorant),
  example('CI 45396', 1, ANNEX_IV('CI 45396'), {
    ...colorant,
    kinds: ['lip'],
    condition: 'In lip products only as the free acid, and at most 1 %.',
  }),
  example('CI 45370', null, ANNEX_IV('CI 45370'), {
    ...colorant,
    rule: 'notice',
    condition: 'Fluorescein at most 1 % and monobromofluorescein at most 2 % of the colorant.',
  }),
  notAtAll('CI 74260', ANNEX_IV('CI 74260'), {
    ...colorant,
    kinds: ['eye'],
    condition: 'Not in eye products.',
  }),
  example('CI 77266', 10, ANNEX_IV('CI 77266'), {
    ...colorant,
    nanoForm: 'nano only',
    condition: 'The nano form, not where it may expose the lungs by inhalation.',
  }),
  notAtAll('CI 77266', ANNEX_IV('CI 77266'), {
    ...colorant,
    nanoForm: 'nano only',
    kinds: ['propellant spray', 'pump spray', 'loose powder'],
    condition: 'The nano form not where it may expose the lungs by inhalation.',
  }),
  notAtAll('Zinc Oxide', ANNEX_IV('CI 77947'), {
    ...colorant,
    kinds: ['propellant spray', 'pump spray', 'loose powder'],
    condition: 'Not where it may expose the lungs by inhalation.',
  }),
  example('Titanium Dioxide', 25, amended('III', '321', '2021/850'), {
    kinds: ['loose powder'],
    exceptKinds: ['hair', 'body', 'hand'],
    condition: 'Face products in loose powder form, as powder that may be inhaled.',
  }),
  example('Titanium Dioxide', 1.4, amended('III', '321', '2021/850'), {
    kinds: ['propellant spray'],
    exceptKinds: NOT_HAIR,
    hands: 'general public',
    condition: 'Hair aerosol sprays, as powder that may be inhaled.',
  }),
  example('Titanium Dioxide', 1.1, amended('III', '321', '2021/850'), {
    kinds: ['propellant spray'],
    exceptKinds: NOT_HAIR,
    hands: 'professional use',
    condition: 'Hair aerosol sprays, as powder that may be inhaled.',
  }),
  example('D4 and D5', 0.1, REACH('70', '2018/35'), {
    of: 'group',
    rule: 'less than',
    use: 'rinse-off',
    from: '2020-01-31',
  }),
  example('D4, D5 and D6', 0.1, REACH('70', '2024/1328'), {
    of: 'group',
    rule: 'less than',
    use: 'leave-on',
    from: '2027-06-07',
  }),
  example('Cyclohexasiloxane', 0.1, REACH('70', '2024/1328'), {
    rule: 'less than',
    use: 'rinse-off',
    from: '2026-06-07',
  }),
];
