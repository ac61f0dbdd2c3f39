import { runCase } from '@core/cases/run-case';
import { describe, expect, it } from 'vitest';

type Row = readonly [
  kind: string,
  inputs: Record<string, unknown>,
  expected: string | string[],
  byHand: string,
];

const run = (kind: string, inputs: unknown, expected: unknown) =>
  runCase({ id: kind, kind, inputs, expect: expected }, '');
const packs = (count: number, contents: number, ...first: number[]): number[] =>
  Array.from({ length: count }, (_, at) => first[at] ?? contents);
const organism = (type: string, logs: Record<string, number>) => ({
  organism: `one ${type}`,
  type,
  logReductions: logs,
});

const TEXTS: readonly Row[] = [
  [
    'ingredient-order',
    {
      region: 'EU',
      lines: [
        { inci: 'Parfum', percent: 0.5 },
        { inci: 'CI 77891', percent: 3, colorant: true },
        { inci: 'Glycerin', percent: 5 },
        { inci: 'Aqua', percent: 91.5 },
      ],
    },
    ['Aqua', 'Glycerin', 'Parfum', 'CI 77891'],
    'by weight, colorants after all others (Regulation (EC) 1223/2009, article 19)',
  ],
  [
    'ingredient-order',
    {
      region: 'US',
      lines: [
        { inci: 'Water', percent: 90 },
        { inci: 'Zinc Oxide', percent: 5, activeDrug: true },
        { inci: 'Glycerin', percent: 5 },
      ],
    },
    ['Zinc Oxide', 'Water', 'Glycerin'],
    'an active drug first (21 CFR 701.3)',
  ],
  [
    'ingredient-order',
    {
      region: 'EU',
      lines: [
        { inci: 'Aqua', percent: 40 },
        { inci: 'Glycerin', percent: 30 },
        { inci: 'Aqua', percent: 5 },
        { inci: 'Glycerin', percent: 25 },
      ],
    },
    ['Glycerin', 'Aqua'],
    'one name is one ingredient: 55 before 45',
  ],
  [
    'allergens-declared',
    {
      rinseOff: false,
      sources: [
        {
          percent: 1,
          constituents: [
            { label: 'Limonene', sharePercent: 0.15 },
            { label: 'Linalool', sharePercent: 0.05 },
          ],
        },
      ],
    },
    ['Limonene'],
    '15 and 5 ppm against 10 of a leave-on',
  ],
  [
    'allergens-declared',
    {
      rinseOff: true,
      sources: [
        { percent: 1, constituents: [{ label: 'Limonene', sharePercent: 0.6 }] },
        { percent: 0.5, constituents: [{ label: 'Limonene', sharePercent: 1 }] },
        { percent: 1, constituents: [{ label: 'Linalool', sharePercent: 0.9 }] },
      ],
    },
    ['Limonene'],
    '60 + 50 from two oils pass 100 of a rinse-off; 90 does not',
  ],
  [
    'prepackage-verdict',
    { nominal: 50, batchSize: 300, destructive: false, contents: packs(30, 51) },
    'accepted',
    'none below T1, 45.5',
  ],
  [
    'prepackage-verdict',
    { nominal: 50, batchSize: 300, destructive: false, contents: packs(30, 51, 40.9) },
    'rejected',
    'one below T2, 41',
  ],
  // ISO 11930, criterion A: bacteria 3 at 7 days, yeast 1 at 7, mould 0 at 14 and 1 at 28, none growing again.
  [
    'preservation-iso11930',
    {
      organisms: [
        organism('bacterium', { '7': 3, '14': 3, '28': 3 }),
        organism('yeast', { '7': 1, '14': 1, '28': 1 }),
        organism('mould', { '14': 0, '28': 1 }),
      ],
    },
    'A',
    'each just at what is asked',
  ],
  [
    'preservation-iso11930',
    {
      organisms: [
        organism('bacterium', { '7': 2.9, '14': 3, '28': 3 }),
        organism('yeast', { '7': 1, '14': 1, '28': 1 }),
        organism('mould', { '14': 0, '28': 1 }),
      ],
    },
    'B',
    'bacteria reach 3 at 14 days only',
  ],
  [
    'preservation-usp51',
    {
      organisms: [
        organism('bacterium', { '14': 2, '28': 2 }),
        organism('yeast', { '14': 0, '28': 0 }),
        organism('mould', { '14': 0, '28': 0 }),
      ],
    },
    'pass',
    'category 2: bacteria 2 at 14 days, nothing grows (USP 51, from memory)',
  ],
  [
    'preservation-usp51',
    {
      organisms: [
        organism('bacterium', { '14': 1.9, '28': 2 }),
        organism('yeast', { '14': 0, '28': 0 }),
        organism('mould', { '14': 0, '28': 0 }),
      ],
    },
    'fail',
    'a tenth of a log short',
  ],
];

describe('a worked example that comes to words', () => {
  it.each(TEXTS)('%s of %j is %j: %s', (kind, inputs, expected, _) => {
    expect(run(kind, inputs, expected)).toMatchObject({ passed: true, why: '' });
  });

  it.each(TEXTS)('%s of %j in another order or word does not pass', (kind, inputs, expected, _) => {
    const wrong = Array.isArray(expected) ? [...expected, 'Talc'] : `${expected}.`;
    expect(run(kind, inputs, wrong).passed).toBe(false);
  });

  it.each(TEXTS)('%s of %j asks for each thing that is left out', (kind, inputs, expected, _) => {
    for (const left of Object.keys(inputs)) {
      const rest = Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== left));
      const { passed, why } = run(kind, rest, expected);
      expect([left, passed]).toEqual([left, false]);
      expect(why, left).not.toBe('');
    }
  });
});
