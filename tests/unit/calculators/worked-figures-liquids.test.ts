import { describe } from 'vitest';
import { expectFigures, type Figure } from './worked-figure';

const FIGURES: Figure[] = [
  {
    form: 'pit-mix',
    rows: [
      { parts: 1, pit: 60 },
      { parts: 1, pit: 80 },
    ],
    key: 'pit',
    is: 70,
    source: 'by hand: the middle',
  },
  {
    form: 'hlb-temperature',
    values: { k: 20, nHlb: 11, nOil: 9 },
    key: 'temperature',
    is: 40,
    source: 'by hand: 20 × 2',
  },
  {
    form: 'salt-shift',
    values: { b: 0.2, cT: 0.1, salt: 5 },
    key: 'shift',
    is: -10,
    source: 'by hand: −0.2 × 5 / 0.1',
  },
  {
    form: 'oil-viscosity',
    rows: [
      { parts: 1, viscosity: 10 },
      { parts: 3, viscosity: 1000 },
    ],
    key: 'log',
    is: 316.2278,
    source: 'Arrhenius 1887, by hand: 10^(0.25 × 1 + 0.75 × 3)',
  },
  {
    form: 'oil-viscosity',
    rows: [
      { parts: 1, viscosity: 8 },
      { parts: 1, viscosity: 1000 },
    ],
    key: 'cube',
    is: 216,
    source: 'Kendall and Monroe 1917, by hand: ((2 + 10) / 2)³',
  },
  {
    form: 'glycerol-viscosity',
    values: { percent: 100, temperature: 20 },
    key: 'viscosity',
    is: 1412,
    to: 0.01,
    source: 'glycerol at 20 °C, CRC Handbook (from memory)',
  },
  {
    form: 'glycerol-viscosity',
    values: { percent: 0, temperature: 20 },
    key: 'viscosity',
    is: 1.002,
    to: 0.01,
    source: 'water at 20 °C, CRC Handbook (from memory)',
  },
  {
    form: 'refutas-index',
    values: { viscosity: 10 },
    key: 'index',
    is: 23.5747,
    source: 'by hand: 14.534 ln ln 10.8 + 10.975',
  },
  {
    form: 'refutas-index',
    values: { viscosity: 1 },
    key: 'index',
    is: 3.2517,
    source: 'by hand: 14.534 ln ln 1.8 + 10.975',
  },
  {
    form: 'formula-density',
    rows: [
      { parts: 50, density: 1.2 },
      { parts: 50, density: 0.9 },
    ],
    key: 'density',
    is: 1.028571,
    source: 'by hand: 100 / (41.667 + 55.556)',
  },
  {
    form: 'density-of-volume',
    values: { mass: 95, volume: 100 },
    key: 'density',
    is: 0.95,
    source: 'by hand',
  },
  {
    form: 'volume-of-mass',
    values: { mass: 50, density: 0.8 },
    key: 'volume',
    is: 62.5,
    source: 'by hand',
  },
  {
    form: 'pycnometer',
    values: { empty: 20, withWater: 70, withLiquid: 60 },
    key: 'gravity',
    is: 0.8,
    source: 'by hand: 40 / 50',
  },
  {
    form: 'plummet',
    values: { inAir: 30, inWater: 20, inLiquid: 22 },
    key: 'gravity',
    is: 0.8,
    source: 'Archimedes, by hand: 8 / 10',
  },
  {
    form: 'dilution',
    values: { now: 70, volume: 100, wanted: 35 },
    key: 'volume',
    is: 200,
    source: 'by hand',
  },
  { form: 'fill', values: { volume: 100, density: 1.02 }, key: 'mass', is: 102, source: 'by hand' },
];

describe('worked figures of emulsions, viscosity and density', () => {
  expectFigures(FIGURES);
});
