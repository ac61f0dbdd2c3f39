import { fitLine } from '../../statistics/regression';
import { arrheniusEnergy, arrheniusRate } from '../../stability/arrhenius';
import { ACCELERATED, extrapolation, type Accelerated } from '../../stability/extrapolation';
import { crossing, shelfLife, type Direction } from '../../stability/trend';
import { Problem } from '../../problems/problem';
import { oneStep } from '../../working/one-step';
import type { Source, Worked } from '../../working/working';
import type { Answer, Result } from '../calculated';
import type { Entries, Form, FormField } from '../form';
import { one } from '../result';

const LEAST_SQUARES: Source = {
  text: 'least squares; Draper N.R., Smith H., Applied Regression Analysis, 3rd ed., Wiley, New York 1998',
  basis: 'memory',
};
const celsius = (key: string, label: string): FormField => ({ key, label, unit: '°C', min: -80, max: 1000 });
const READINGS: Form['lines'] = {
  one: 'reading',
  caption: 'Readings of one condition over time',
  columns: [
    { key: 'month', label: 'Time', unit: 'months', min: 0 },
    { key: 'reading', label: 'Reading' },
  ],
};

function readings(of: Entries): { x: number[]; y: number[] } {
  const rows = of.rows();
  return { x: rows.map((row) => row.number('month')), y: rows.map((row) => row.number('reading')) };
}

const figure = (says: string, shows: string, result: number, unit = ''): Worked =>
  oneStep({ says, shows, result, unit }, [LEAST_SQUARES]);

function line(of: Entries): Answer {
  const { x, y } = readings(of);
  const through = of.choice('line') === 'zero' ? 'zero' : 'mean';
  const fit = fitLine(x, y, through);
  const spread = 'spread / √(Σ distance of time²)';
  const digits = { min: 0, max: 5 };
  const about = through === 'zero' ? 'about zero' : 'about the mean';
  const all: Result[] = [
    one(
      'slope',
      'Slope',
      figure('slope: Σ distances of time × reading / Σ distances of time²', `over ${fit.sumXX}`, fit.slope),
    ),
    one(
      'slopeSe',
      'Standard error of the slope',
      figure(spread, `${fit.residualSd} / √${fit.sumXX}`, fit.slopeSe),
    ),
    one(
      'intercept',
      'Reading at the start',
      figure('mean reading − slope × mean time', `${fit.meanY} − ${fit.slope} × ${fit.meanX}`, fit.intercept),
    ),
    one(
      'interceptSe',
      'Standard error of the start',
      figure('spread × √(1/n + mean time² / Σ distances²)', `n ${fit.count}`, fit.interceptSe),
    ),
    one(
      'residualSd',
      'Spread about the line',
      figure('√(Σ residual² / degrees of freedom)', `${fit.degrees} degrees of freedom`, fit.residualSd),
    ),
    one(
      'rSquared',
      'R²',
      figure(
        `share of the spread ${about} that the line explains`,
        '1 − Σ residual² / Σ distance²',
        fit.rSquared,
      ),
    ),
  ];
  const shown = through === 'zero' ? all.filter(({ key }) => !key.startsWith('intercept')) : all;
  return {
    results: shown.map((result) => ({ ...result, digits })),
    notes: ['Look at the points too: a curve, a jump or one stray reading can hide behind a good R².'],
  };
}

function trend(of: Entries): Answer {
  const { x, y } = readings(of);
  const [limit, confidence] = [of.number('limit'), of.number('confidence') / 100];
  const life = shelfLife(x, y, limit, confidence, of.choice('direction') as Direction);
  const results = [{ ...one('life', 'Confidence limit meets it after', life), digits: 1 }];
  try {
    const line = crossing(x, y, limit);
    return { results: [...results, { ...one('crossing', 'Fitted line meets it after', line), digits: 1 }] };
  } catch (refused) {
    if (!(refused instanceof Problem)) throw refused;
    return { results, notes: [refused.message] };
  }
}

function lineMeets(of: Entries): Answer {
  const { x, y } = readings(of);
  return {
    results: [
      { ...one('crossing', 'Fitted line meets it after', crossing(x, y, of.number('limit'))), digits: 1 },
    ],
  };
}

function proposal(of: Entries): Answer {
  const months = extrapolation(
    of.number('months'),
    of.choice('accelerated') as Accelerated,
    of.choice('analysed') === 'yes',
  );
  return { results: [{ ...one('months', 'At most', months), digits: { min: 0, max: 1 } }] };
}

function energy(of: Entries): Answer {
  const points = of
    .rows()
    .map((row) => ({ temperature: row.number('temperature'), rate: row.number('rate') }));
  return { results: [{ ...one('energy', 'Activation energy', arrheniusEnergy(points)), digits: 1 }] };
}

function rate(of: Entries): Answer {
  const found = arrheniusRate(of.number('rate'), of.number('t1'), of.number('t2'), of.number('energy'));
  return {
    results: [
      { ...one('rate', 'Rate', found), says: 'in the known rate’s unit', digits: { min: 0, max: 5 } },
    ],
  };
}

const LIMIT: FormField = { key: 'limit', label: 'Limit of the reading', hint: 'such as 90 % of the active' };

/** What readings over time say of a shelf life. */
export const TREND_FORMS = {
  'trend-shelf-life': {
    name: 'Shelf life from a trend',
    asks: 'When the confidence limit of the mean, and the fitted line itself, meet a limit (ICH Q1E).',
    fields: [
      LIMIT,
      {
        key: 'direction',
        label: 'The reading',
        choices: { decreasing: 'can only fall', increasing: 'can only rise', either: 'may go either way' },
        start: 'decreasing',
      },
      { key: 'confidence', label: 'Confidence', unit: '%', min: 50, max: 99.9, start: 95 },
    ],
    lines: READINGS,
    compute: trend,
  },
  'trend-crossing': {
    name: 'Where a fitted line meets a limit',
    asks: 'The time at which the mean is expected to be out; half of all packs are out by then.',
    fields: [LIMIT],
    lines: READINGS,
    compute: lineMeets,
  },
  'trend-line': {
    name: 'Straight line through readings',
    asks: 'Slope, start and their standard errors, by least squares.',
    fields: [
      { key: 'line', label: 'Line', choices: { free: 'fitted', zero: 'through zero' }, start: 'free' },
    ],
    lines: READINGS,
    compute: line,
  },
  extrapolation: {
    name: 'How far beyond the data',
    asks: 'The longest shelf life that may be proposed from long-term and accelerated data (ICH Q1E).',
    fields: [
      { key: 'months', label: 'Long-term data', unit: 'months', min: 0, max: 600 },
      {
        key: 'accelerated',
        label: 'Accelerated test',
        choices: Object.fromEntries(ACCELERATED.map((name) => [name, name])),
      },
      {
        key: 'analysed',
        label: 'Long-term data are',
        choices: { yes: 'analysed, or hardly change', no: 'changing, and not analysed' },
      },
    ],
    compute: proposal,
  },
  'arrhenius-energy': {
    name: 'Activation energy from rates',
    asks: 'From rates at two temperatures or more (Arrhenius).',
    fields: [],
    lines: {
      one: 'rate',
      caption: 'Rates with their temperatures',
      columns: [celsius('temperature', 'Temperature'), { key: 'rate', label: 'Rate', min: 0 }],
    },
    compute: energy,
  },
  'arrhenius-rate': {
    name: 'Rate at another temperature',
    asks: 'From a known rate and the activation energy (Arrhenius).',
    fields: [
      { key: 'rate', label: 'Known rate', min: 0 },
      celsius('t1', 'Known temperature'),
      celsius('t2', 'Other temperature'),
      { key: 'energy', label: 'Activation energy', unit: 'kJ/mol', min: -1000, max: 2000 },
    ],
    compute: rate,
  },
} as const satisfies Record<string, Form>;
