import { lowestMean, meanFactor } from '../../net-contents/mean-criterion';
import { checkPrepackages } from '../../net-contents/prepackage-check';
import { prepackageLimits, tolerableError } from '../../net-contents/tolerable-error';
import { allowableVariation, checkUsPackages, sampleCorrectionFactor } from '../../net-contents/us-packages';
import type { Answer } from '../calculated';
import type { Entries, Form, FormField } from '../form';
import { one } from '../result';

const UNIT: FormField = { key: 'unit', label: 'Unit', choices: { g: 'g', mL: 'mL' }, start: 'g' };
const NOMINAL: FormField = {
  key: 'nominal',
  label: 'Contents on the label',
  unitFrom: 'unit',
  min: 5,
  max: 50_000,
};
const LABEL: FormField = { key: 'label', label: 'Weight on the label', unit: 'g', min: 0 };
const SAMPLE: FormField = { key: 'n', label: 'Packs in the sample', min: 2, max: 100_000 };

const contents = (caption: string, unit: Pick<FormField, 'unit' | 'unitFrom'>): Form['lines'] => ({
  one: 'pack',
  caption,
  columns: [{ key: 'contents', label: 'Net contents', ...unit, min: 0 }],
});

function packLimits(of: Entries): Answer {
  const [nominal, unit] = [of.number('nominal'), of.choice('unit')];
  const { t1, t2 } = prepackageLimits(nominal, unit);
  return {
    results: [
      {
        ...one('tne', 'Tolerable negative error', tolerableError(nominal, unit)),
        digits: { min: 1, max: 2 },
      },
      { ...one('t1', 'T1', t1), says: 'few packs may hold less', digits: { min: 1, max: 2 } },
      { ...one('t2', 'T2', t2), says: 'no pack may hold less', digits: { min: 1, max: 2 } },
    ],
  };
}

function leastMean(of: Entries): Answer {
  const [n, confidence] = [of.number('n'), of.number('confidence') / 100];
  const lowest = lowestMean(of.number('nominal'), of.number('sd'), n, of.choice('unit'), confidence);
  return {
    results: [
      { ...one('mean', 'Lowest mean', lowest), digits: 2 },
      { ...one('factor', 'Factor', meanFactor(n, confidence)), digits: 3 },
    ],
  };
}

function packCheck(of: Entries): Answer {
  const unit = of.choice('unit');
  const found = checkPrepackages(
    of.number('nominal'),
    of.number('batch'),
    of.choice('opened') === 'yes',
    of.rows().map((row) => row.number('contents')),
    unit,
  );
  return {
    verdicts: [
      {
        key: 'verdict',
        label: 'This batch is',
        verdict: found.verdict,
        good: found.verdict === 'second sample' ? null : found.verdict === 'accepted',
        why: found.why,
      },
    ],
    results: [
      { ...one('mean', 'Mean', found.mean), digits: 2 },
      { ...one('lowest', 'Lowest mean', found.lowestMean), digits: 2 },
      { ...one('t1', 'T1', found.t1), digits: { min: 1, max: 2 } },
      { ...one('t2', 'T2', found.t2), digits: { min: 1, max: 2 } },
    ],
    notes: [
      'The sampling plans are not verified: check them in the text in force before relying on a verdict.',
    ],
  };
}

function usLimits(of: Entries): Answer {
  return {
    results: [
      { ...one('mav', 'Maximum allowable variation', allowableVariation(of.number('label'))), digits: 1 },
      { ...one('factor', 'Sample correction factor', sampleCorrectionFactor(of.number('n'))), digits: 3 },
    ],
  };
}

function usCheck(of: Entries): Answer {
  const found = checkUsPackages(
    of.number('label'),
    of.rows().map((row) => row.number('contents')),
  );
  return {
    verdicts: [
      {
        key: 'verdict',
        label: 'This sample',
        verdict: found.passes ? 'passes' : 'fails',
        good: found.passes,
        why: found.why,
      },
    ],
    results: [
      { ...one('error', 'Average error', found.error), digits: { min: 1, max: 3 } },
      { ...one('limit', 'Sample error limit', found.limit), digits: { min: 1, max: 3 } },
    ],
  };
}

/** How full packs must be, in the European Union and Great Britain, and in the United States. */
export const NET_CONTENTS_FORMS = {
  'pack-limits': {
    name: 'Limits of a pack (EU, GB)',
    asks: 'What a pack may hold less than its label says, for contents of 5 g or mL and more.',
    fields: [{ ...NOMINAL, term: 'e-mark' }, UNIT],
    compute: packLimits,
  },
  'pack-check': {
    name: 'Check of a batch (EU, GB)',
    asks: 'The reference check: packs below T1 and T2, and the mean of the sample.',
    fields: [
      NOMINAL,
      UNIT,
      { key: 'batch', label: 'Packs in the batch', min: 2, max: 10_000_000 },
      {
        key: 'opened',
        label: 'Packs are opened',
        choices: { no: 'no, weighed closed', yes: 'yes, 20 are used up' },
        start: 'no',
      },
    ],
    lines: contents('Contents of the packs drawn, in order', { unitFrom: 'unit' }),
    compute: packCheck,
  },
  'lowest-mean': {
    name: 'Lowest mean of a sample',
    asks: 'How far the mean of a sample may fall below the label.',
    fields: [
      NOMINAL,
      UNIT,
      { key: 'sd', label: 'Standard deviation', unitFrom: 'unit', min: 0, hint: 'of the sample' },
      SAMPLE,
      { key: 'confidence', label: 'Confidence, one-sided', unit: '%', min: 50, max: 99.99, start: 99.5 },
    ],
    compute: leastMean,
  },
  'us-limits': {
    name: 'Limits of a package (US)',
    asks: 'The maximum allowable variation by weight, and the factor of a sample (NIST Handbook 133).',
    fields: [LABEL, { ...SAMPLE, start: 12, hint: '12, 24 or 48 by the size of the lot' }],
    compute: usLimits,
  },
  'us-check': {
    name: 'Check of a sample (US)',
    asks: 'Both tests of 12, 24 or 48 packages: the average, and single packages.',
    fields: [LABEL],
    lines: contents('Net weights of the packages', { unit: 'g' }),
    compute: usCheck,
  },
} as const satisfies Record<string, Form>;
