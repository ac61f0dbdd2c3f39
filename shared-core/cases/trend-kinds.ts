import { z } from 'zod';
import { ACCELERATED } from '../stability/extrapolation';
import type { FormRow } from '../calculators/form';
import { figureOf, figuresOf } from './form-kind';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const list = z.array(number, 'must be a list');
const series = { times: list, values: list, limit: number };

/** Readings as a form's lines; a time or reading that is missing stays empty, so that it is asked for. */
function rowsOf(times: readonly number[], values: readonly number[]): FormRow[] {
  const count = Math.max(times.length, values.length);
  return Array.from({ length: count }, (_, index) => ({
    month: times[index] ?? null,
    reading: values[index] ?? null,
  }));
}

const LINE = {
  slope: 'slope',
  intercept: 'intercept',
  slopeSe: 'slopeSe',
  interceptSe: 'interceptSe',
  residualSd: 'residualSd',
  rSquared: 'rSquared',
};
const DIRECTIONS: Readonly<Record<string, string>> = { decreasing: 'decreasing', increasing: 'increasing' };

/** Stability statistics, through the forms of the screens. */
export const TREND_KINDS: Readonly<Record<string, Kind>> = {
  'linear-regression': kind(z.object({ x: list, y: list, intercept: z.boolean().default(true) }), (i) =>
    figuresOf(
      { form: 'trend-line', values: { line: i.intercept ? 'free' : 'zero' }, rows: rowsOf(i.x, i.y) },
      LINE,
    ),
  ),
  'stability-crossing': kind(z.object(series), (i) =>
    figureOf(
      { form: 'trend-crossing', values: { limit: i.limit }, rows: rowsOf(i.times, i.values) },
      'crossing',
    ),
  ),
  'stability-shelf-life': kind(
    z.object({ ...series, confidence: number, direction: z.string('must be a text') }),
    (i) =>
      figureOf(
        {
          form: 'trend-shelf-life',
          values: {
            limit: i.limit,
            confidence: i.confidence * 100,
            direction: DIRECTIONS[i.direction] ?? 'either',
          },
          rows: rowsOf(i.times, i.values),
        },
        'life',
      ),
  ),
  'q1e-extrapolation': kind(
    z.object({ longTermMonths: number, accelerated: z.enum(ACCELERATED), statistics: z.boolean() }),
    (i) =>
      figureOf(
        {
          form: 'extrapolation',
          values: {
            months: i.longTermMonths,
            accelerated: i.accelerated,
            analysed: i.statistics ? 'yes' : 'no',
          },
        },
        'months',
      ),
  ),
  'arrhenius-energy': kind(
    z.object({ points: z.array(z.object({ temperature: number, rate: number }), 'must be a list') }),
    (i) => figureOf({ form: 'arrhenius-energy', rows: i.points }, 'energy'),
  ),
  'arrhenius-rate': kind(
    z.object({ rate1: number, temperature1: number, temperature2: number, activationEnergy: number }),
    (i) =>
      figureOf(
        {
          form: 'arrhenius-rate',
          values: { rate: i.rate1, t1: i.temperature1, t2: i.temperature2, energy: i.activationEnergy },
        },
        'rate',
      ),
  ),
};
