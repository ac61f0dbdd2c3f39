import { positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

const Q1E_CHART: Source = {
  text: 'ICH Q1E, Evaluation of stability data, Geneva 2003, flow chart and Appendix A, stored at room temperature',
  basis: 'memory',
};

/** What the accelerated test showed. */
export const ACCELERATED = [
  'no significant change',
  'significant change, none at intermediate',
  'significant change at intermediate',
] as const;
export type Accelerated = (typeof ACCELERATED)[number];

/** How many times as long, and how many months beyond at most. */
function reach(accelerated: Accelerated, analysed: boolean): { times: number; beyond: number } {
  if (accelerated === 'significant change at intermediate') return { times: 1, beyond: 0 };
  if (accelerated === 'no significant change')
    return analysed ? { times: 2, beyond: 12 } : { times: 1.5, beyond: 6 };
  return analysed ? { times: 1.5, beyond: 6 } : { times: Infinity, beyond: 3 };
}

/**
 * How far a shelf life may be proposed beyond the long-term data.
 *
 * @param longTermMonths that were measured
 * @param analysed the data were analysed, or hardly change and scatter
 * @returns months
 * @throws Problem `invalid-input`
 */
export function extrapolation(longTermMonths: number, accelerated: Accelerated, analysed: boolean): Worked {
  positive(longTermMonths, 'Long-term data');
  const { times, beyond } = reach(accelerated, analysed);
  const most = longTermMonths + beyond;
  const step = {
    says:
      beyond === 0
        ? 'no longer than was measured'
        : times === Infinity
          ? `${beyond} months beyond what was measured at most`
          : `${times} times what was measured, and ${beyond} months beyond it at most`,
    shows:
      beyond === 0 || times === Infinity
        ? `${show(longTermMonths)} + ${beyond}`
        : `min(${times} × ${show(longTermMonths)}, ${show(longTermMonths)} + ${beyond})`,
    result: Math.min(times * longTermMonths, most),
    unit: 'months',
  };
  return worked(
    [step],
    [Q1E_CHART],
    [
      'Written for medicines; for cosmetics it is a yardstick, not a rule. Real time in the real pack decides, and confirms it later.',
    ],
  );
}
