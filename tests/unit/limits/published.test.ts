import { subjectsOf } from '@core/limits/judge';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { EXAMPLES } from './law';

const index = substanceIndex(EXAMPLES.substances);
const record = z.object({
  inci: z.string(),
  annex: z.string(),
  limit: z.union([z.number(), z.null(), z.array(z.number()), z.record(z.string(), z.number())]),
  territory: z.string().optional(),
});

/** The figures of one published record. */
function figuresOf({ limit }: z.infer<typeof record>): number[] {
  if (limit === null) return [];
  if (typeof limit === 'number') return [limit];
  return Object.values(limit);
}

/** What is not in the starter set, and why. */
const LEFT_OUT = [
  // Not told apart from other polymers by their names.
  'Synthetic polymer microparticles',
  // Of an ingredient, or of its impurity, not of the product.
  'Methanol',
  'Nitrosamine-forming dialkanolamines in fatty acid dialkanolamides',
];

describe('the example limits', () => {
  const shares = new Set(
    EXAMPLES.limits.flatMap(({ percent, minPercent }) =>
      [percent, minPercent].filter((one): one is number => one !== null),
    ),
  );

  it.each(['limits', 'limits-additions'])('hold every figure of the published table %s', (table) => {
    const missing = publishedValues(table, z.array(record))
      .filter(({ inci }) => !LEFT_OUT.includes(inci))
      .flatMap((one) =>
        figuresOf(one).flatMap((figure) => (shares.has(figure) ? [] : [`${one.inci} ${figure}`])),
      );
    expect(missing).toEqual([]);
  });

  it('are each about a substance or a group of the starter set, and counted as one of it', () => {
    for (const limit of EXAMPLES.limits) {
      expect(subjectsOf(limit, index), limit.subject).not.toBeNull();
      if (limit.expressedAs !== '') expect(index.find(limit.expressedAs), limit.expressedAs).not.toBeNull();
    }
  });

  // Names of the published tables that are one substance's own: the same figure stands at the same substance.
  it.each(['limits', 'limits-additions'])('give each single substance of %s its own figures', (table) => {
    const wrong = publishedValues(table, z.array(record)).flatMap((one) => {
      const substance = LEFT_OUT.includes(one.inci) ? null : index.find(one.inci);
      if (!substance) return [];
      const own = EXAMPLES.limits.filter((limit) =>
        subjectsOf(limit, index)?.some(({ id }) => id === substance.id),
      );
      const figures = own.flatMap(({ percent, minPercent, phraseAbove }) => [
        percent,
        minPercent,
        phraseAbove,
      ]);
      return figuresOf(one).flatMap((figure) => (figures.includes(figure) ? [] : [`${one.inci} ${figure}`]));
    });
    expect(wrong).toEqual([]);
  });
});
