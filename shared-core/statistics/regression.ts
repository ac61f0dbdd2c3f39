import { badInput, finite, finiteResult } from '../working/inputs';

/** A straight line through points by least squares. */
export interface Line {
  slope: number;
  /** 0 for a line through the origin. */
  intercept: number;
  slopeSe: number;
  /** 0 for a line through the origin. */
  interceptSe: number;
  residualSd: number;
  /** About the mean; about zero for a line through the origin. */
  rSquared: number;
  degrees: number;
  count: number;
  meanX: number;
  meanY: number;
  /** Sum of the squared distances of x from its mean; from zero through the origin. */
  sumXX: number;
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/**
 * Straight line by least squares, over centred figures so that no digits are lost.
 *
 * @param through zero: the line goes through the origin
 * @throws Problem `invalid-input` for too few points, all at one x, or figures too large to square
 * Source: Draper N.R., Smith H., Applied Regression Analysis.
 */
export function fitLine(x: readonly number[], y: readonly number[], through: 'mean' | 'zero' = 'mean'): Line {
  const least = through === 'mean' ? 3 : 2;
  if (x.length !== y.length || x.length < least)
    throw badInput(
      `A line through ${x.length} ${x.length === 1 ? 'point' : 'points'} has no spread.`,
      `Enter at least ${least} points.`,
      'rows',
      { missing: x.length < least },
    );
  [...x, ...y].forEach((value) => finite(value, 'A reading'));
  const count = x.length;
  const meanX = through === 'mean' ? sum(x) / count : 0;
  const meanY = through === 'mean' ? sum(y) / count : 0;
  const dx = x.map((one) => one - meanX);
  const dy = y.map((one) => one - meanY);
  const sumXX = finiteResult(sum(dx.map((one) => one * one)), 'The line');
  if (sumXX <= 0)
    throw badInput('All readings are at one time.', 'Enter readings at two times or more.', 'rows');
  const slope = sum(dx.map((one, index) => one * (dy[index] ?? 0))) / sumXX;
  const residuals = dx.map((one, index) => (dy[index] ?? 0) - slope * one);
  const left = sum(residuals.map((one) => one * one));
  const whole = sum(dy.map((one) => one * one));
  const degrees = count - (through === 'mean' ? 2 : 1);
  const residualSd = finiteResult(Math.sqrt(left / degrees), 'The spread about the line');
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeSe: residualSd / Math.sqrt(sumXX),
    interceptSe: through === 'mean' ? residualSd * Math.sqrt(1 / count + meanX ** 2 / sumXX) : 0,
    residualSd,
    rSquared: whole > 0 ? 1 - left / whole : 1,
    degrees,
    count,
    meanX,
    meanY,
    sumXX,
  };
}
