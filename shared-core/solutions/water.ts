import { between } from '../working/inputs';
import type { Source } from '../working/working';

const HARNED: Source = {
  text: 'ion product of water, pKw = 4471/T + 0.01706 T − 6.0875 (Harned and Owen)',
  basis: 'memory',
};
export const DAVIES: Source = {
  text: 'Davies C.W., Ion Association, 1962: log γ = −A z² (√I/(1 + √I) − 0.3 I), A 0.509 at 25 °C',
  basis: 'memory',
};
/** Where the law of every step below stands. */
export const CHARGE_BALANCE: Source = {
  text: 'Perrin D.D., Dempsey B., Buffers for pH and Metal Ion Control, 1974: mass and charge balances',
  basis: 'memory',
};
export const WATER_SOURCES: readonly Source[] = [CHARGE_BALANCE, HARNED];

const KELVIN = 273.15;
const A_AT_25 = 0.509;

/** A temperature at which water is liquid, °C. @throws Problem `invalid-input` */
export function waterTemperature(celsius: number): number {
  return between(celsius, 0, 100, 'Temperature', '°C');
}

/** pKw of pure water, 13.995 at 25 °C. @param celsius 0 to 100 */
export function pKw(celsius: number): number {
  const kelvin = celsius + KELVIN;
  return 4471 / kelvin + 0.01706 * kelvin - 6.0875;
}

/** Relative permittivity of water (Malmberg and Maryott 1956, from memory). @param t °C */
function permittivity(t: number): number {
  return 87.74 - 0.40008 * t + 9.398e-4 * t ** 2 - 1.41e-6 * t ** 3;
}

/** Davies' A, 0.509 at 25 °C; follows (εT)^−1.5. @param celsius 0 to 100 */
export function daviesA(celsius: number): number {
  const at = (t: number): number => permittivity(t) * (t + KELVIN);
  return A_AT_25 * (at(25) / at(celsius)) ** 1.5;
}

/** Decimal logarithm of the activity coefficient of a single charge; times z² for z charges. */
export function logGamma(ionicStrength: number, celsius: number): number {
  const root = Math.sqrt(ionicStrength);
  return -daviesA(celsius) * (root / (1 + root) - 0.3 * ionicStrength);
}
