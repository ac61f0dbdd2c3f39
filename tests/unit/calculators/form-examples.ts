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
  'hansen-distance': {
    values: { d1: 15.5, p1: 16, h1: 42.3, d2: 15.8, p2: 8.8, h2: 19.4, radius: 12 },
    gives: { distance: 24.013, red: 2.0011 },
    source: 'by hand, water and ethanol: √(4 × 0.3² + 7.2² + 22.9²)',
  },
  'hansen-total': {
    values: { d: 3, p: 4, h: 12 },
    gives: { total: 13 },
    source: 'by hand: √(9 + 16 + 144)',
  },
  'hansen-blend': {
    rows: [
      { parts: 1, d: 16, p: 4, h: 2 },
      { parts: 3, d: 20, p: 8, h: 6 },
    ],
    gives: { d: 19, p: 7, h: 5 },
    source: 'by hand: a quarter and three quarters',
  },
  'hansen-from-groups': {
    values: { volume: 100 },
    rows: [
      { group: 'CH3', count: 2 },
      { group: 'COO', count: 1 },
    ],
    gives: { d: 12.3, p: 4.9, h: 8.3666 },
    source: 'by hand: 1230 / 100, 490 / 100, √(7000 / 100)',
  },
  'parameter-from-groups': {
    rows: [{ group: 'CH2', count: 10 }],
    gives: { volume: 161, delta: 17.5166 },
    source: 'by hand: √(49400 / 161)',
  },
  'hlb-parameter': {
    values: { hlb: 24 },
    gives: { parameter: 9.93333 },
    source: 'by hand: 118 / 30 + 6',
  },
  'challenge-test': {
    values: { standard: 'ISO 11930' },
    rows: [
      { organism: 'P. aeruginosa', type: 'bacterium', day7: 2, day14: 3.5, day28: 3.6 },
      { organism: 'C. albicans', type: 'yeast', day7: 1.2, day14: 1.5, day28: 1.6 },
    ],
    gives: { verdict: 'B' },
    source: 'ISO 11930: A asks 3 log of bacteria by day 7, B by day 14',
  },
  'log-reduction': {
    values: { initial: 2_000_000, final: 20 },
    gives: { log: 5, percent: 99.999 },
    source: 'by definition',
  },
  'log-to-percent': { values: { log: 2 }, gives: { percent: 99 }, source: 'by definition' },
  'micro-limit': {
    values: { group: 'other', count: 2_001, specified: 'absent' },
    gives: { verdict: 'out' },
    source: 'ISO 17516: out above twice the limit of 1,000',
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
  'minimum-weight': {
    values: { readability: 0.0001, sd: 0.00015, limit: 0.1 },
    gives: { minimum: 0.3, rounding: 4.0825e-5 },
    source: 'USP 41, the example of its text; √2 × 0.0001 / √12',
  },
  repeatability: {
    values: { readability: 0.1, limit: 0.1 },
    rows: [10000001, 10000003, 10000002].map((weight) => ({ weight })),
    gives: { mean: 10000002, sd: 1, minimum: 2000 },
    source: 'NIST NumAcc1; by hand 2 × 1 / 0.001',
  },
  'scale-error': {
    values: { class: 'III', e: 1, load: 500.5 },
    gives: { error: 1 },
    source: 'OIML R 76-1, Table 6: class III above 500 e',
  },
  'pack-limits': {
    values: { nominal: 150, unit: 'mL' },
    gives: { tne: 6.8, t1: 143.2, t2: 136.4 },
    source: 'Directive 76/211/EEC: 4.5 % of 150 is 6.75, rounded up to 6.8',
  },
  'pack-check': {
    values: { nominal: 50, batch: 400, opened: 'yes' },
    rows: Array.from({ length: 20 }, (_, index) => ({ contents: index % 2 ? 50.2 : 50 })),
    gives: { verdict: 'accepted', mean: 50.1, t1: 45.5, t2: 41 },
    source: 'Directive 76/211/EEC, Annex II; mean by hand',
  },
  'lowest-mean': {
    values: { nominal: 250, sd: 2, n: 30 },
    gives: { mean: 248.994, factor: 0.50325 },
    source: 'Directive 76/211/EEC, Annex II: 250 − 0.503 × 2',
  },
  'us-limits': {
    values: { label: 100, n: 12 },
    gives: { mav: 7.2, factor: 0.63537 },
    source: 'NIST Handbook 133: MAV 7.2 g, factor 0.635',
  },
  'us-check': {
    values: { label: 100 },
    rows: Array.from({ length: 12 }, (_, index) => ({ contents: index % 2 ? 99 : 100 })),
    gives: { verdict: 'fails', error: -0.5, limit: 0.33181 },
    source: 'NIST Handbook 133, by hand: sd 0.52223, × 0.63537',
  },
  'trend-shelf-life': {
    values: { limit: 90 },
    rows: [104.8, 102.5, 101.5, 102.4, 99.4, 96.5].map((reading, index) => ({
      month: [0, 3, 6, 9, 12, 18][index] ?? null,
      reading,
    })),
    gives: { life: 27.461, crossing: 34.4173 },
    source:
      'Shao and Chow 1994, bottle 1: 27.5 months; the line itself worked out apart, (90 − 104.57) / −0.42333',
  },
  'trend-crossing': {
    values: { limit: 80 },
    rows: [
      { month: 0, reading: 100 },
      { month: 5, reading: 95 },
      { month: 10, reading: 90 },
    ],
    gives: { crossing: 20 },
    source: 'by hand: one a month from 100',
  },
  'trend-line': {
    rows: [
      { month: 0, reading: 1 },
      { month: 1, reading: 2 },
      { month: 2, reading: 4 },
    ],
    gives: { slope: 1.5, intercept: 0.83333, residualSd: 0.40825, rSquared: 0.96429 },
    source: 'by hand: residuals 1/6, −1/3, 1/6',
  },
  extrapolation: {
    values: { months: 18, accelerated: 'no significant change', analysed: 'yes' },
    gives: { months: 30 },
    source: 'ICH Q1E: twice, and not more than 12 months beyond',
  },
  'arrhenius-energy': {
    rows: [
      { temperature: 119.85, rate: 1.173 },
      { temperature: 139.85, rate: 4.86 },
    ],
    gives: { energy: 95.9 },
    source: 'Martin’s Physical Pharmacy, 22.92 kcal/mol',
  },
  'arrhenius-rate': {
    values: { rate: 0.0346, t1: 24.85, t2: 76.85, energy: 50.2 },
    gives: { rate: 0.702 },
    source: 'Chang, 0.702 per second',
  },
  suspension: {
    values: { phi: 0.32, phiMax: 0.64, intrinsic: 2.5, medium: 1 },
    gives: { viscosity: 3.0314 },
    source: 'by hand: 0.5^−1.6',
  },
};
