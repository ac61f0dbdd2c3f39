import { dayWords } from '../locale/dates';
import { dayText } from '../quantities/day-text';
import { line } from '../record/field';

/** From which day a material is not to be used any more, and why. */
export const WITHDRAWAL_FIELDS = {
  withdrawnOn: line({
    label: 'Withdrawn from',
    section: 'identity',
    max: 10,
    entered: dayText,
    placeholder: '2026-07-31',
    hint: 'From this day on it is not to be used: recalled, no longer made, or no longer allowed.',
    tell: dayWords,
  }),
  withdrawnWhy: line({ label: 'Why it is withdrawn', section: 'identity', max: 300 }),
};
