import { fitLine, type Line } from '../statistics/regression';
import { studentQuantile } from '../statistics/student-t';
import { badInput, between, finite } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';

export const Q1E: Source = {
  text: 'ICH Q1E, Evaluation of stability data, Geneva 2003: where the confidence limit of the mean meets the limit',
  basis: 'memory',
};
const LEAST_SQUARES: Source = {
  text: 'Draper N.R., Smith H., Applied Regression Analysis, 3rd ed., Wiley, New York 1998',
  basis: 'memory',
};
const SCREENS =
  'A straight line holds only over the time that was measured; a cream may change all at once. It proves no shelf life.';

/** Which way a reading is expected to go. */
export type Direction = 'decreasing' | 'increasing' | 'either';

function lineStep(line: Line, unit: string) {
  return [
    {
      says: `slope of the fitted line, ${line.count} readings`,
      shows: `Σ (time − ${show(line.meanX)}) × (reading − ${show(line.meanY)}) / ${show(line.sumXX)}`,
      result: line.slope,
      unit: `${unit} a month`.trim(),
    },
    {
      says: 'fitted reading at the start: mean reading − slope × mean time',
      shows: `${show(line.meanY)} − ${showTerm(line.slope)} × ${show(line.meanX)}`,
      result: line.intercept,
      unit,
    },
  ];
}

/**
 * The time at which the fitted line itself meets a limit; half of all such products would be out by then.
 *
 * @param times months
 * @throws Problem `invalid-input` where it never does
 */
export function crossing(times: readonly number[], values: readonly number[], limit: number): Worked {
  finite(limit, 'Limit');
  const line = fitLine(times, values);
  const time = (limit - line.intercept) / line.slope;
  if (!Number.isFinite(time) || time < 0)
    throw badInput(
      'The fitted line does not meet this limit later on.',
      'Check the limit and which way the readings go.',
      'Limit',
    );
  return worked(
    [
      ...lineStep(line, ''),
      {
        says: 'time at which the line meets the limit: (limit − start) / slope',
        shows: `(${show(limit)} − ${showTerm(line.intercept)}) / ${showTerm(line.slope)}`,
        result: time,
        unit: 'months',
      },
    ],
    [LEAST_SQUARES],
    [SCREENS],
  );
}

/** How far the confidence limit of the mean is on the good side of the limit at a time; negative once beyond it. */
function room(line: Line, t: number, limit: number, falls: boolean, time: number): number {
  const mean = line.intercept + line.slope * time;
  const error = t * line.residualSd * Math.sqrt(1 / line.count + (time - line.meanX) ** 2 / line.sumXX);
  return (falls ? mean - limit : limit - mean) - error;
}

const FARTHEST_MONTHS = 10_000;

/** By halving: the room begins above zero and, being concave, passes it once. */
function whereRoomEnds(at: (time: number) => number): number | null {
  let high = 1;
  while (at(high) > 0) {
    high *= 2;
    if (high > FARTHEST_MONTHS) return null;
  }
  let low = 0;
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (at(middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The earliest time at which the confidence limit of the mean meets a limit.
 *
 * @param times months
 * @param confidence as a fraction, such as 0.95; one-sided where the direction is known
 * @returns months
 * @throws Problem `invalid-input` where it is beyond the limit at the start, or never meets it
 */
export function shelfLife(
  times: readonly number[],
  values: readonly number[],
  limit: number,
  confidence: number,
  direction: Direction,
): Worked {
  finite(limit, 'Limit');
  between(confidence, 0.5, 0.999, 'Confidence as a fraction');
  const line = fitLine(times, values);
  const falls = direction === 'either' ? line.meanY >= limit : direction === 'decreasing';
  const oneSided = direction === 'either' ? 1 - (1 - confidence) / 2 : confidence;
  const t = studentQuantile(oneSided, line.degrees);
  const at = (time: number): number => room(line, t, limit, falls, time);
  if (at(0) <= 0)
    throw badInput(
      'The confidence limit is beyond the limit from the start.',
      'Measure more, or check the limit and the direction.',
      'Limit',
    );
  const time = whereRoomEnds(at);
  if (time === null)
    throw badInput(
      'The confidence limit does not meet this limit.',
      'The readings move away from it: check the limit and the direction.',
      'Limit',
    );
  return worked(
    [
      ...lineStep(line, ''),
      {
        says: 'spread of the readings about the line',
        shows: `√(Σ residual² / ${line.degrees})`,
        result: line.residualSd,
        unit: '',
      },
      {
        says: `Student’s t at ${show(oneSided)} with ${line.degrees} degrees of freedom`,
        shows: `t(${show(oneSided)}; ${line.degrees})`,
        result: t,
        unit: '',
      },
      {
        says: 'shelf life by the confidence limit of the mean, found by halving',
        shows: `start + slope × time ${falls ? '−' : '+'} t × spread × √(1/${line.count} + (time − ${show(line.meanX)})² / ${show(line.sumXX)}) = ${show(limit)}, at`,
        result: time,
        unit: 'months',
      },
    ],
    [Q1E],
    [SCREENS, 'One batch speaks for one batch: the worst of several decides.'],
  );
}
