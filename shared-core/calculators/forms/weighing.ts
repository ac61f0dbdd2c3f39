import { sample } from '../../statistics/sample';
import { minimumWeight, roundingSd } from '../../weighing/minimum-weight';
import { ACCURACY_CLASSES, permissibleError, type AccuracyClass } from '../../weighing/permissible-error';
import type { Answer } from '../calculated';
import type { Entries, Form, FormField } from '../form';
import { one } from '../result';

const READABILITY: FormField = {
  key: 'readability',
  label: 'Readability',
  term: 'readability',
  unit: 'g',
  min: 0,
  hint: 'the smallest step shown, such as 0.1',
};
const LIMIT: FormField = {
  key: 'limit',
  label: 'Limit',
  unit: '%',
  min: 0.0001,
  max: 100,
  start: 0.1,
  hint: '0.1 for analysis (USP); 1 is common practice for a batch',
};

function leastWeight(of: Entries): Answer {
  const [sd, readability] = [of.optional('sd'), of.number('readability')];
  const least = minimumWeight(sd, readability, of.number('limit'), 'g');
  const notes =
    sd === null ? ['Without repeated weighings this is the least that the readability allows.'] : [];
  return {
    results: [
      { ...one('minimum', 'Minimum weight', least), digits: { min: 0, max: 5 } },
      {
        ...one('rounding', 'Spread by rounding alone', roundingSd(readability, 'g')),
        digits: { min: 0, max: 6 },
      },
    ],
    notes,
  };
}

function repeatability(of: Entries): Answer {
  const values = of.rows().map((row) => row.number('weight'));
  const { count, mean, standardDeviation } = sample(values, 'Weighing', 'g');
  const readability = of.number('readability');
  const least = minimumWeight(standardDeviation.value, readability, of.number('limit'), 'g');
  const few = count < 10 ? [`${count} weighings are entered; the rule asks for ten at least.`] : [];
  return {
    results: [
      { ...one('mean', 'Mean', mean), digits: { min: 0, max: 6 } },
      { ...one('sd', 'Standard deviation', standardDeviation), digits: { min: 0, max: 6 } },
      { ...one('minimum', 'Minimum weight', least), digits: { min: 0, max: 5 } },
    ],
    notes: few,
  };
}

function scaleError(of: Entries): Answer {
  const error = permissibleError(of.choice('class') as AccuracyClass, of.number('e'), of.number('load'));
  return {
    results: [
      { ...one('error', 'Permissible error', error), says: 'to either side', digits: { min: 0, max: 5 } },
    ],
  };
}

/** What a balance can weigh, and how far it may be off. */
export const WEIGHING_FORMS = {
  'minimum-weight': {
    name: 'Minimum weight',
    asks: 'The least that a balance weighs within a limit, from its readability and repeatability.',
    fields: [
      READABILITY,
      {
        key: 'sd',
        label: 'Standard deviation',
        unit: 'g',
        min: 0,
        optional: true,
        hint: 'of repeated weighings; empty: by readability alone',
      },
      LIMIT,
    ],
    compute: leastWeight,
  },
  repeatability: {
    name: 'Repeatability',
    asks: 'Ten weighings of one weight: their spread, and the minimum weight that follows.',
    fields: [READABILITY, LIMIT],
    lines: {
      one: 'weighing',
      caption: 'Weighings of one weight',
      columns: [{ key: 'weight', label: 'Reading', unit: 'g' }],
    },
    compute: repeatability,
  },
  'scale-error': {
    name: 'Permissible error of a scale',
    asks: 'How far a verified scale may be off at a load (OIML R 76).',
    fields: [
      {
        key: 'class',
        label: 'Accuracy class',
        choices: Object.fromEntries(ACCURACY_CLASSES.map((name) => [name, name])),
      },
      { key: 'e', label: 'Verification interval e', unit: 'g', min: 0, hint: 'on the scale’s plate' },
      { key: 'load', label: 'Load', unit: 'g', min: 0 },
    ],
    compute: scaleError,
  },
} as const satisfies Record<string, Form>;
