import { dayWords } from '../locale/dates';
import { dayText } from '../quantities/day-text';
import type { Region } from '../locale/numbers';
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
    places: { list: { title: 'Withdrawn', rem: 6.5 } },
  }),
  withdrawnWhy: line({ label: 'Why it is withdrawn', section: 'identity', max: 300 }),
};

/** A material that is not to be used from a day on. */
export interface Withdrawn {
  id: string;
  tradeName: string;
  withdrawnOn: string;
  withdrawnWhy: string;
}

/**
 * What is said of a withdrawn material wherever one might still weigh it.
 * @param today the day of the reader, ISO 8601
 */
export function withdrawalWords(
  { tradeName, withdrawnOn, withdrawnWhy }: Withdrawn,
  today: string,
  region: Region,
): string {
  const from = `from ${dayWords(withdrawnOn, region)}`;
  const why = withdrawnWhy === '' ? '' : `: ${withdrawnWhy.replace(/\.$/, '')}`;
  return withdrawnOn <= today
    ? `${tradeName} is withdrawn ${from}${why}. Do not use it.`
    : `${tradeName} is to be withdrawn ${from}${why}. Use it before that day only.`;
}
