import { badInput, celsius, between, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';

const ANDRADE: Source = { text: 'Andrade’s law, ln η = A + B/T', basis: 'memory' };
const CHENG: Source = { text: 'Cheng N.-S., Ind. Eng. Chem. Res. 47, 3285-3288 (2008)', basis: 'memory' };
const KELVIN = 273.15;
/** Beyond the measured pair the straight line soon leaves what oils do. */
const FAR = 20;

/**
 * Viscosity at another temperature from two measured ones: ln η is a straight line over 1/T.
 *
 * @param first °C and its viscosity (any one unit)
 * @returns in the viscosities' unit
 * @throws Problem `invalid-input`, also when both were measured at one temperature
 */
export function viscosityAt(
  first: { temperature: number; viscosity: number },
  second: { temperature: number; viscosity: number },
  temperature: number,
): Worked {
  const [t1, t2, t] = [
    celsius(first.temperature, 'First temperature'),
    celsius(second.temperature, 'Second temperature'),
    celsius(temperature, 'Temperature wanted'),
  ].map((one) => one + KELVIN) as [number, number, number];
  const [one, two] = [
    positive(first.viscosity, 'First viscosity'),
    positive(second.viscosity, 'Second viscosity'),
  ];
  if (Math.min(t1, t2, t) <= 0)
    throw badInput('A temperature is absolute zero.', 'Check the temperatures, in °C.', 'Temperature wanted');
  if (t1 === t2)
    throw badInput(
      'Both viscosities were measured at one temperature.',
      'Enter two that differ, best by 10 °C or more.',
      'Second temperature',
    );
  const slope = Math.log(two / one) / (1 / t2 - 1 / t1);
  const [low, high] = [Math.min(t1, t2), Math.max(t1, t2)];
  const cautions = [
    'ln(viscosity) over 1/T is not exactly straight: between the two about 5 % off, beyond them more. Not for waxes near melting, nor for creams and gels.',
    ...(t < low - FAR || t > high + FAR
      ? ['This is far beyond the two temperatures measured: measure there.']
      : []),
    ...(slope < 0
      ? ['It would grow thicker with heat, which no simple liquid does: check the figures.']
      : []),
  ];
  return worked(
    [
      {
        says: 'slope B of ln(viscosity) over 1/T, T in kelvin: ln(η2 / η1) / (1/T2 − 1/T1)',
        shows: `ln(${show(two)} / ${show(one)}) / (1/${show(t2)} − 1/${show(t1)})`,
        result: slope,
        unit: 'K',
      },
      {
        says: 'viscosity at the temperature wanted: η1 × exp(B × (1/T − 1/T1))',
        shows: `${show(one)} × exp(${showTerm(slope)} × (1/${show(t)} − 1/${show(t1)}))`,
        result: one * Math.exp(slope * (1 / t - 1 / t1)),
        unit: 'mPa·s',
      },
    ],
    [ANDRADE],
    cautions,
  );
}

/**
 * Viscosity of glycerin in water.
 *
 * @param percent mass % of glycerol, 0 to 100
 * @param temperature °C, 0 to 100
 * @returns mPa·s
 * @throws Problem `invalid-input`
 * Source: Cheng 2008.
 */
export function glycerolViscosity(percent: number, temperature: number): Worked {
  const mass = between(percent, 0, 100, 'Glycerol', '%') / 100;
  const t = between(temperature, 0, 100, 'Temperature', '°C');
  const water = 1.79 * Math.exp(((-1230 - t) * t) / (36_100 + 360 * t));
  const pure = 12_100 * Math.exp(((-1233 + t) * t) / (9900 + 70 * t));
  const a = 0.705 - 0.0017 * t;
  const b = (4.9 + 0.036 * t) * a ** 2.5;
  const weight = 1 - mass + (a * b * mass * (1 - mass)) / (a * mass + b * (1 - mass));
  return worked(
    [
      {
        says: 'viscosity of water: 1.790 × exp((−1230 − T) × T / (36100 + 360 × T))',
        shows: `1.790 × exp((−1230 − ${show(t)}) × ${show(t)} / (36100 + 360 × ${show(t)}))`,
        result: water,
        unit: 'mPa·s',
      },
      {
        says: 'viscosity of glycerol: 12100 × exp((−1233 + T) × T / (9900 + 70 × T))',
        shows: `12100 × exp((−1233 + ${show(t)}) × ${show(t)} / (9900 + 70 × ${show(t)}))`,
        result: pure,
        unit: 'mPa·s',
      },
      {
        says: 'weight α of the water: 1 − C + a b C (1 − C) / (a C + b (1 − C)), with a = 0.705 − 0.0017 T, b = (4.9 + 0.036 T) a^2.5',
        shows: `C ${show(mass)}, a ${show(a)}, b ${show(b)}`,
        result: weight,
        unit: '',
      },
      {
        says: 'viscosity of the mixture: water^α × glycerol^(1 − α)',
        shows: `${show(water)}^${show(weight)} × ${show(pure)}^(1 − ${show(weight)})`,
        result: water ** weight * pure ** (1 - weight),
        unit: 'mPa·s',
      },
    ],
    [CHENG],
    [
      'A fit to measurements, within about 3 % at 20 °C. Glycerin of commerce holds 0.5 to 14 % of water: count it in.',
    ],
  );
}
