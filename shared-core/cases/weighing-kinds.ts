import { z } from 'zod';
import { ACCURACY_CLASSES } from '../weighing/permissible-error';
import { figureOf, figuresOf, verdictOf } from './form-kind';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const nominal = z.object({ nominal: number });
const list = z.array(number, 'must be a list');

/** Balances and net contents, through the forms of the screens. */
export const WEIGHING_KINDS: Readonly<Record<string, Kind>> = {
  'minimum-weight': kind(
    z.object({ standardDeviation: number, readability: number, limitPercent: number }),
    (i) =>
      figureOf(
        {
          form: 'minimum-weight',
          values: { sd: i.standardDeviation, readability: i.readability, limit: i.limitPercent },
        },
        'minimum',
      ),
  ),
  'readability-sd': kind(z.object({ readability: number }), (i) =>
    figureOf({ form: 'minimum-weight', values: { readability: i.readability } }, 'rounding'),
  ),
  'scale-mpe': kind(z.object({ accuracyClass: z.enum(ACCURACY_CLASSES), e: number, load: number }), (i) =>
    figureOf({ form: 'scale-error', values: { class: i.accuracyClass, e: i.e, load: i.load } }, 'error'),
  ),
  // The readability bears on the minimum weight alone, which the case does not ask for.
  'sample-sd': kind(z.object({ values: list }), (i) =>
    figuresOf(
      {
        form: 'repeatability',
        values: { readability: 1 },
        rows: i.values.map((weight) => ({ weight })),
      },
      { mean: 'mean', standardDeviation: 'sd' },
    ),
  ),
  'prepackage-tne': kind(nominal, (i) =>
    figureOf({ form: 'pack-limits', values: { nominal: i.nominal } }, 'tne'),
  ),
  'prepackage-limits': kind(nominal, (i) =>
    figuresOf({ form: 'pack-limits', values: { nominal: i.nominal } }, { t1: 't1', t2: 't2' }),
  ),
  // The factor hangs on neither the contents nor the spread.
  'mean-acceptance-factor': kind(z.object({ sampleSize: number, confidence: number }), (i) =>
    figureOf(
      {
        form: 'lowest-mean',
        values: { nominal: 100, sd: 1, n: i.sampleSize, confidence: i.confidence * 100 },
      },
      'factor',
    ),
  ),
  'prepackage-min-mean': kind(
    z.object({ nominal: number, standardDeviation: number, sampleSize: number }),
    (i) =>
      figureOf(
        { form: 'lowest-mean', values: { nominal: i.nominal, sd: i.standardDeviation, n: i.sampleSize } },
        'mean',
      ),
  ),
  'prepackage-verdict': kind(
    z.object({ nominal: number, batchSize: number, destructive: z.boolean(), contents: list }),
    (i) =>
      verdictOf({
        form: 'pack-check',
        values: { nominal: i.nominal, batch: i.batchSize, opened: i.destructive ? 'yes' : 'no' },
        rows: i.contents.map((contents) => ({ contents })),
      }),
  ),
  'us-mav': kind(z.object({ labelGrams: number }), (i) =>
    figureOf({ form: 'us-limits', values: { label: i.labelGrams } }, 'mav'),
  ),
  'us-sample-correction-factor': kind(z.object({ sampleSize: number }), (i) =>
    figureOf({ form: 'us-limits', values: { label: 100, n: i.sampleSize } }, 'factor'),
  ),
};
