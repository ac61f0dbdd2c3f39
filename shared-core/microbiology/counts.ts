import { badInput, between, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

const TEXTBOOK: Source = {
  text: 'standard texts of microbiology: log reduction = log10(N0 / N); 1 log is 90 %, 3 logs are 99.9 %',
  basis: 'memory',
};

/**
 * By how many powers of ten a count has fallen.
 *
 * @param initial CFU per g or mL at the start
 * @param final the same, later; where nothing grew, the limit of detection
 * @throws Problem `invalid-input`
 */
export function logReduction(initial: number, final: number): Worked {
  positive(initial, 'The count at the start');
  if (final === 0)
    throw badInput(
      'The count later is 0; it must be more than zero.',
      'Where nothing grew, enter the limit of detection, such as 10.',
      'The count later',
    );
  positive(final, 'The count later');
  const step = {
    says: 'log reduction: log10(count at the start / count later)',
    shows: `log10(${show(initial)} / ${show(final)})`,
    result: Math.log10(initial / final),
    unit: 'log',
  };
  return worked(
    [step],
    [TEXTBOOK],
    ['Where nothing grew, take the limit of detection: the reduction is at least that.'],
  );
}

/**
 * What a log reduction is in per cent.
 *
 * @throws Problem `invalid-input`
 */
export function percentOfLog(reduction: number): Worked {
  between(reduction, -15, 15, 'The log reduction');
  const step = {
    says: 'reduction: 100 × (1 − 10^(−log reduction))',
    shows: `100 × (1 − 10^(−${show(reduction)}))`,
    result: 100 * (1 - 10 ** -reduction),
    unit: '%',
  };
  return worked([step], [TEXTBOOK]);
}

/** What ISO 17516 tells apart. */
export const COUNT_GROUPS = ['under 3 years, eye area, mucous membranes', 'other'] as const;
export type CountGroup = (typeof COUNT_GROUPS)[number];

export const ISO_17516: Source = {
  text: 'ISO 17516:2014, Cosmetics, Microbiology, Microbiological limits, Table 1 and its note',
  basis: 'memory',
};
/** Total aerobic mesophilic micro-organisms, CFU per g or mL. */
export const COUNT_LIMITS: Readonly<Record<CountGroup, number>> = {
  'under 3 years, eye area, mucous membranes': 100,
  other: 1000,
};
export const SPECIFIED_ORGANISMS = [
  'Escherichia coli',
  'Pseudomonas aeruginosa',
  'Staphylococcus aureus',
  'Candida albicans',
] as const;

/** What a count comes to against the limit; up to twice the limit it may be the method's own spread. */
export interface CountVerdict {
  verdict: 'within' | 'out';
  why: string[];
}

/**
 * A finished product's count against ISO 17516: out above twice the limit, or where a specified organism was found.
 *
 * @param totalCount CFU per g or mL
 * @param specifiedAbsent whether the four specified organisms are absent in 1 g or 1 mL
 * @throws Problem `invalid-input`
 */
export function judgeCount(group: CountGroup, totalCount: number, specifiedAbsent: boolean): CountVerdict {
  const limit = COUNT_LIMITS[group];
  nonNegative(totalCount, 'The total count');
  const why: string[] = [];
  if (!specifiedAbsent) why.push(`One of ${SPECIFIED_ORGANISMS.join(', ')} was found in 1 g or 1 mL.`);
  if (totalCount > 2 * limit)
    why.push(`${show(totalCount)} CFU are more than twice the limit of ${show(limit)}.`);
  if (why.length > 0) return { verdict: 'out', why };
  return {
    verdict: 'within',
    why:
      totalCount > limit
        ? [
            `${show(totalCount)} CFU are above the limit of ${show(limit)}, and within twice of it: the spread of the method. Count again, and look at the trend.`,
          ]
        : [],
  };
}
