import type { FormKey } from '@core/calculators/all-forms';
import type { FormRow } from '@core/calculators/form';

/** A form filled in, with a figure that it must give and where that comes from. */
export interface FormExample {
  values?: FormRow;
  rows?: FormRow[];
  gives: Record<string, number | string>;
  source: string;
}

/** One for each form, so that none is without a worked figure. */
export const FORM_EXAMPLES: Record<FormKey, FormExample> = {
  'pit-mix': {
    rows: [
      { parts: 3, pit: 80, spread: 2 },
      { parts: 2, pit: 45, spread: 2 },
    ],
    gives: { pit: 66 },
    source: 'Arai and Shinoda 1967, by hand: 0.6 × 80 + 0.4 × 45',
  },
  'hlb-temperature': {
    values: { nHlb: 12.5, nOil: 8.8 },
    gives: { temperature: 62.9 },
    source: 'by hand: 17 × 3.7',
  },
  'salt-shift': { values: { salt: 3 }, gives: { shift: -6.5 }, source: 'by hand: −0.13 × 3 / 0.06' },
  'oil-viscosity': {
    rows: [
      { parts: 1, viscosity: 8, density: 1 },
      { parts: 1, viscosity: 64, density: 1 },
    ],
    gives: { log: 22.627, cube: 27 },
    source: 'by hand: √(8 × 64), and ((2 + 4) / 2)³',
  },
  'viscosity-at': {
    values: { t1: 20, v1: 986, t2: 40, v2: 231, t: 40 },
    gives: { viscosity: 231 },
    source: 'a line goes through its second point',
  },
  'glycerol-viscosity': {
    values: { percent: 0, temperature: 0 },
    gives: { viscosity: 1.79 },
    source: 'water at 0 °C, CRC Handbook 1.792 (from memory)',
  },
  'refutas-index': { values: { viscosity: 100 }, gives: { index: 33.2 }, source: 'Maples 2000' },
  'formula-density': {
    rows: [
      { name: 'water', parts: 60, density: 1 },
      { name: 'oil', parts: 40, density: 0.8 },
    ],
    gives: { density: 0.90909 },
    source: 'by hand: 100 / (60 + 50)',
  },
  'density-of-volume': {
    values: { mass: 52.78, volume: 54.96 },
    gives: { density: 0.9603 },
    source: 'Ansel',
  },
  'volume-of-mass': { values: { mass: 100, density: 1.25 }, gives: { volume: 80 }, source: 'by hand' },
  pycnometer: {
    values: { empty: 23.66, withWater: 72.95, withLiquid: 73.56 },
    gives: { gravity: 1.0124 },
    source: 'Ansel',
  },
  plummet: {
    values: { inAir: 25, inWater: 20, inLiquid: 21 },
    gives: { gravity: 0.8 },
    source: 'by hand: 4 / 5',
  },
  dilution: { values: { now: 10, volume: 100, wanted: 4 }, gives: { volume: 250 }, source: 'by hand' },
  fill: { values: { volume: 50, density: 0.95 }, gives: { mass: 47.5 }, source: 'by hand' },
  'solution-ph': {
    values: { activities: 'none' },
    rows: [{ name: 'acetic acid', pKa1: 4.757, concentration: 0.1 }],
    gives: { pH: 2.8814 },
    source: 'Martin’s Physical Pharmacy: 0.1 mol/L acetic acid, 2.88',
  },
  buffer: {
    values: { pKa: 4.76, acid: 0.1, salt: 0.1, activities: 'none' },
    gives: { pH: 4.76, exact: 4.7602, capacity: 0.11513 },
    source: 'Martin’s Physical Pharmacy; capacity 2.303 × 0.2 / 4',
  },
  'buffer-ratio': {
    values: { pKa: 4.76, pH: 5, total: 0.2 },
    gives: { ratio: 1.7378, capacity: 0.10677 },
    source: 'Martin’s Physical Pharmacy, 1.74; 2.3026 × 0.2 × 1.7378 / 2.7378²',
  },
  'ionic-strength': {
    rows: [
      { concentration: 0.02, charge: 1 },
      { concentration: 0.01, charge: -2 },
    ],
    gives: { ionic: 0.03 },
    source: 'Martin’s Physical Pharmacy',
  },
  'water-activity': {
    values: { percent: 20, molarMass: 92.094, k: 0 },
    gives: { activity: 0.9534 },
    source: 'Raoult, by hand: 55.51 / (55.51 + 2.715)',
  },
  creaming: {
    values: { radius: 2.5, dropletDensity: 1.15, mediumDensity: 1, viscosity: 50 },
    gives: { speed: 4.086e-8 },
    source: 'Martin’s Physical Pharmacy, 4.1e-8 m/s',
  },
  centrifuge: {
    values: { radius: 5, rpm: 10_000, minutes: 1 },
    gives: { force: 5590 },
    source: 'r 5 cm at 10 000 rpm, about 5590 × g',
  },
  accelerated: {
    values: { real: 22, test: 55, q10: 2, weeks: 365 },
    gives: { weeks: 37.06 },
    source: 'ASTM F1980 illustration, 37 days',
  },
  'shelf-life': {
    values: { known: 5, weeks: 48, other: 25, q10: 3 },
    gives: { weeks: 5.333 },
    source: 'Allen, 5.33 h',
  },
  suspension: {
    values: { phi: 0.32, phiMax: 0.64, intrinsic: 2.5, medium: 1 },
    gives: { viscosity: 3.0314 },
    source: 'by hand: 0.5^−1.6',
  },
};
