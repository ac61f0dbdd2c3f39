import { badInput, celsius, nonNegative, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

/** Molar gas constant, J/(mol·K) (exact since 2019). */
const GAS_CONSTANT = 8.314462618;
const KELVIN = 273.15;

const F1980: Source = { text: 'ASTM F1980, accelerated ageing by Q10', basis: 'memory' };
const CONNORS: Source = {
  text: 'Connors K.A., Amidon G.L., Stella V.J., Chemical Stability of Pharmaceuticals, 2nd ed. 1986',
  basis: 'memory',
};
const Q10_CAUTION =
  'Q10 is an assumption about one reaction; emulsions melt, cream and invert by other laws. It screens, it does not prove shelf life.';

/**
 * Time at a test temperature that stands for a time at the real one: t / Q10^((T_test − T_real)/10).
 *
 * @param realTemperature °C
 * @param testTemperature °C
 * @param q10 factor per 10 °C, > 0
 * @param realTime any unit; the answer comes in the same
 * @throws Problem `invalid-input`
 * Source: ASTM F1980.
 */
export function acceleratedAgeing(
  realTemperature: number,
  testTemperature: number,
  q10: number,
  realTime: number,
): Worked {
  celsius(realTemperature, 'Real temperature');
  celsius(testTemperature, 'Test temperature');
  positive(q10, 'Q10');
  nonNegative(realTime, 'Real time');
  const step = {
    says: 'time at the test temperature: real time / Q10^((test − real) / 10)',
    shows: `${show(realTime)} / ${show(q10)}^((${show(testTemperature)} − ${show(realTemperature)}) / 10)`,
    result: realTime / q10 ** ((testTemperature - realTemperature) / 10),
    unit: '',
  };
  return oneStep(step, [F1980], [Q10_CAUTION]);
}

/**
 * Time to the same change at another temperature: t · Q10^((T_known − T)/10).
 *
 * @returns in the unit of `knownTime`
 * @throws Problem `invalid-input`
 * Source: Connors, Amidon and Stella 1986.
 */
export function q10ShelfLife(
  q10: number,
  knownTemperature: number,
  knownTime: number,
  temperature: number,
): Worked {
  positive(q10, 'Q10');
  celsius(knownTemperature, 'Known temperature');
  nonNegative(knownTime, 'Known time');
  celsius(temperature, 'Temperature');
  const step = {
    says: 'time at the other temperature: known time × Q10^((known − other) / 10)',
    shows: `${show(knownTime)} × ${show(q10)}^((${show(knownTemperature)} − ${show(temperature)}) / 10)`,
    result: knownTime * q10 ** ((knownTemperature - temperature) / 10),
    unit: '',
  };
  return oneStep(step, [CONNORS], [Q10_CAUTION]);
}

/**
 * Activation energy behind a Q10, between two temperatures: R·ln(k₂/k₁) / (1/T₁ − 1/T₂), k₂/k₁ = Q10^(ΔT/10).
 *
 * @param temperature1 °C
 * @param temperature2 °C, another one
 * @returns kJ/mol
 * @throws Problem `invalid-input`, also for equal temperatures
 * Source: Arrhenius' law; Connors, Amidon and Stella 1986.
 */
export function activationEnergy(q10: number, temperature1: number, temperature2: number): Worked {
  positive(q10, 'Q10');
  const first = celsius(temperature1, 'First temperature') + KELVIN;
  const second = celsius(temperature2, 'Second temperature') + KELVIN;
  if (first === second)
    throw badInput('Both temperatures are the same.', 'Give two different temperatures.', 'temperature2');
  if (first <= 0 || second <= 0)
    throw badInput('A temperature is absolute zero.', 'Check the temperatures; they are in °C.');
  const ratio = q10 ** ((second - first) / 10);
  const step = {
    says: 'activation energy: R × ln(k2/k1) / (1/T1 − 1/T2), with k2/k1 = Q10^((T2 − T1) / 10)',
    shows: `0.00831446 × ln ${show(ratio)} / (1/${show(first)} − 1/${show(second)})`,
    result: (GAS_CONSTANT * Math.log(ratio)) / (1 / first - 1 / second) / 1000,
    unit: 'kJ/mol',
  };
  return oneStep(
    step,
    [CONNORS],
    ['Holds near these temperatures: the same Q10 means more energy when warmer.'],
  );
}
