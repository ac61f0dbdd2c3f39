import { badInput, finite } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

const DEFINITION: Source = {
  text: 'ISO 3534-1:2006, Statistics, Vocabulary and symbols, Geneva 2006',
  basis: 'memory',
};

/** Mean and sample standard deviation, in the values' unit. */
export interface Sample {
  count: number;
  mean: Worked;
  standardDeviation: Worked;
}

/**
 * Mean and standard deviation (n − 1) of readings, by their distances from the mean, so that large figures lose no
 * digits.
 *
 * @param what of one of them, such as "Weighing"
 * @throws Problem `invalid-input` for fewer than two, or what is no number
 */
export function sample(values: readonly number[], what: string, unit = ''): Sample {
  if (values.length < 2)
    throw badInput('One reading has no standard deviation.', 'Enter at least two.', 'rows', {
      missing: values.length === 0,
    });
  values.forEach((value, index) => finite(value, `${what} ${index + 1}`));
  const count = values.length;
  const first = values[0] ?? 0;
  const mean = first + values.reduce((sum, value) => sum + (value - first), 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sd = Math.sqrt(squares / (count - 1));
  const meanStep = {
    says: `mean of ${count}: sum / number`,
    shows: `${show(mean * count)} / ${count}`,
    result: mean,
    unit,
  };
  const squaresStep = {
    says: 'sum of the squared distances from the mean',
    shows: values.length > 12 ? `Σ (value − ${show(mean)})²` : distances(values, mean),
    result: squares,
    unit: unit && `${unit}²`,
  };
  const sdStep = {
    says: 'standard deviation: √(that sum / (number − 1))',
    shows: `√(${show(squares)} / ${count - 1})`,
    result: sd,
    unit,
  };
  return {
    count,
    mean: worked([meanStep], [DEFINITION]),
    standardDeviation: worked([meanStep, squaresStep, sdStep], [DEFINITION]),
  };
}

function distances(values: readonly number[], mean: number): string {
  return values.map((value) => `(${show(value - mean)})²`).join(' + ');
}
