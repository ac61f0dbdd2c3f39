import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { SPECIFIED_ORGANISMS } from '@core/microbiology/counts';
import { microbialLimits } from '@core/microbiology/finished-product';
import { blankMarket, type Market } from '@core/products/market';
import { describe, expect, it } from 'vitest';

/** ISO 17516:2014, Table 1, as the published values hold it. */
const PUBLISHED = JSON.parse(
  readFileSync(resolve(import.meta.dirname, '../../reference/published/values/microbiology.json'), 'utf8'),
) as {
  limits: { group: string; totalPerGramOrMl: number; outWhenAbove: number }[];
  specified: { organism: string }[];
};
const of = (market: Partial<Market>) => microbialLimits({ ...blankMarket(), ...market });

describe('microbiological limits of finished products', () => {
  it('are those of the standard, for each group', () => {
    const [strict, others] = PUBLISHED.limits;
    expect(of({ kind: 'mascara' })).toMatchObject({
      total: strict?.totalPerGramOrMl,
      outAbove: strict?.outWhenAbove,
    });
    expect(of({ kind: 'body lotion' })).toMatchObject({
      total: others?.totalPerGramOrMl,
      outAbove: others?.outWhenAbove,
    });
    expect([...SPECIFIED_ORGANISMS].sort()).toEqual(
      PUBLISHED.specified.map(({ organism }) => organism).sort(),
    );
  });

  it('are strict for children under three, the eye area and mucous membranes, whatever the kind', () => {
    expect(of({ kind: 'body lotion', users: ['children under 3 years'] }).strict).toBe(true);
    expect(of({ kind: 'face cream', sites: ['near the eyes'] }).strict).toBe(true);
    expect(of({ kind: 'lip product' }).strict).toBe(true);
    expect(of({ kind: 'toothpaste' }).strict).toBe(true);
    expect(of({ sites: ['intimate area'] }).strict).toBe(true);
    expect(of({ kind: 'face cream', users: ['children over 3 years'], sites: ['face'] }).strict).toBe(false);
  });
});
