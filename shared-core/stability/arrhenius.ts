import { fitLine } from '../statistics/regression';
import { badInput, celsius, finite, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';

/** kJ per mol and K. */
const GAS_CONSTANT = 0.008314462618;
const ABSOLUTE_ZERO = -273.15;

const ARRHENIUS: Source = {
  text: 'Arrhenius’ law, k = A exp(−E/RT); Connors K.A., Amidon G.L., Stella V.J., Chemical Stability of Pharmaceuticals, 2nd ed., Wiley, New York 1986',
  basis: 'memory',
};
const CAUTION =
  'For one chemical reaction in one phase. Emulsions also melt, cream and invert, which follows no such law: it screens and proves nothing.';

/** A rate measured at a temperature, °C. */
export interface RatePoint {
  temperature: number;
  rate: number;
}

function kelvin(temperature: number): number {
  celsius(temperature, 'Temperature');
  if (temperature <= ABSOLUTE_ZERO)
    throw badInput('A temperature is absolute zero.', 'Check the temperatures, in °C.', 'Temperature');
  return temperature - ABSOLUTE_ZERO;
}

function slopeOf(points: readonly RatePoint[]): number {
  const x = points.map(({ temperature }) => 1 / kelvin(temperature));
  const y = points.map(({ rate }) => Math.log(positive(rate, 'Rate')));
  if (new Set(x).size === 1)
    throw badInput('All rates were measured at one temperature.', 'Enter two that differ.', 'rows');
  if (points.length > 2) return fitLine(x, y).slope;
  const [x1 = 0, x2 = 0] = x;
  const [y1 = 0, y2 = 0] = y;
  return (y2 - y1) / (x2 - x1);
}

/**
 * Activation energy from rates at two or more temperatures: −R × slope of ln(rate) over 1/T.
 *
 * @returns kJ/mol
 * @throws Problem `invalid-input`
 */
export function arrheniusEnergy(points: readonly RatePoint[]): Worked {
  if (points.length < 2)
    throw badInput(
      'One rate gives no activation energy.',
      'Enter rates at two temperatures or more.',
      'rows',
      {
        missing: true,
      },
    );
  const slope = slopeOf(points);
  return worked(
    [
      {
        says: `slope of ln(rate) over 1/T, T in kelvin, of ${points.length} points`,
        shows: points
          .map(({ temperature, rate }) => `ln ${show(rate)} at 1/${show(kelvin(temperature))}`)
          .join('; '),
        result: slope,
        unit: 'K',
      },
      {
        says: 'activation energy: −R × slope',
        shows: `−${show(GAS_CONSTANT)} × ${showTerm(slope)}`,
        result: -GAS_CONSTANT * slope,
        unit: 'kJ/mol',
      },
    ],
    [ARRHENIUS],
    [CAUTION],
  );
}

/**
 * A rate at another temperature: k1 × exp(E/R × (1/T1 − 1/T2)).
 *
 * @param energy kJ/mol
 * @returns the unit of `rate`
 * @throws Problem `invalid-input`
 */
export function arrheniusRate(rate: number, first: number, second: number, energy: number): Worked {
  positive(rate, 'Known rate');
  finite(energy, 'Activation energy');
  const [t1, t2] = [kelvin(first), kelvin(second)];
  const exponent = (energy / GAS_CONSTANT) * (1 / t1 - 1 / t2);
  return worked(
    [
      {
        says: 'exponent: E / R × (1/T1 − 1/T2), T in kelvin',
        shows: `${show(energy)} / ${show(GAS_CONSTANT)} × (1/${show(t1)} − 1/${show(t2)})`,
        result: exponent,
        unit: '',
      },
      {
        says: 'rate at the other temperature: rate × exp(exponent)',
        shows: `${show(rate)} × exp(${show(exponent)})`,
        result: rate * Math.exp(exponent),
        unit: '',
      },
    ],
    [ARRHENIUS],
    [CAUTION],
  );
}
