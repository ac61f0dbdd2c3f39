import { describe, expect, it } from 'vitest';
import { USUAL_CHECKS } from '@core/checks/check';
import { blankTarget } from '@core/formulas/formula';
import { findingsThenAndNow, labelsThenAndNow } from '@core/formulas/then-and-now';
import { blankMarket } from '@core/products/market';
import { content, make, phase } from '../checks/build';
import { EXAMPLES } from '../limits/law';

/** The table is what it was. */
const SAME = { then: EXAMPLES, now: EXAMPLES };
const days = { then: '2026-02-01', now: '2026-11-28' };
const water = make('Well', 'Aqua');
const scent = make('Accord', 'Parfum', {
  functions: ['fragrance'],
  // Limonene is of the older 26, menthol of those that came with (EU) 2023/1545, from 2026-07-31 on new products.
  allergens: [
    { inci: 'Limonene', ppm: 100_000 },
    { inci: 'Menthol', ppm: 100_000 },
  ],
});
const version = (regions: ('EU' | 'US')[]) => ({
  content: content(
    [
      phase([
        [water, 99],
        [scent, 1],
      ]),
    ],
    {
      target: blankTarget(),
      market: { ...blankMarket(), kind: 'face cream' as const, regions },
    },
  ),
  materials: new Map([water, scent].map((one) => [one.id, one])),
});

describe('an old version, by the rules of its day and of today', () => {
  it('names on its label the allergens of the list in force on each day', () => {
    const [eu] = labelsThenAndNow(version(['EU']), SAME, days);
    expect(eu?.then.text).toBe('Aqua, Parfum, Limonene');
    expect(eu?.now.text).toBe('Aqua, Parfum, Limonene, Menthol');
    expect(eu?.same).toBe(false);
  });

  it('has a label for each form in which it is sold, the same where nothing changed', () => {
    const labels = labelsThenAndNow(version(['EU', 'US']), SAME, days);
    expect(labels.map(({ form, same }) => [form, same])).toEqual([
      ['EU', false],
      ['US', true],
    ]);
    expect(labels[1]?.now.text).toBe('Water, Fragrance');
  });

  it('runs every check on both days, and tells what is found on one of them alone', () => {
    const d5 = make('Glide', 'Cyclopentasiloxane');
    const content_ = content([phase([[d5, 5]])], {
      productType: 'anhydrous',
      market: { ...blankMarket(), kind: 'face cream', regions: ['EU'] },
    });
    const recorded = { content: content_, materials: new Map([[d5.id, d5]]) };
    // D5 in leave-on products: from 2027-06-06 (Regulation (EU) 2024/1328, as the examples have it).
    const found = findingsThenAndNow(recorded, SAME, { then: '2026-02-01', now: '2027-07-01' }, USUAL_CHECKS);
    const law = (list: typeof found.both) => list.filter(({ ruleId }) => ruleId === 'law');
    expect(law(found.onlyThen).map(({ severity }) => severity)).toEqual(['note']);
    expect(law(found.onlyNow).map(({ severity }) => severity)).toEqual(['stop']);
    expect(found.both.map(({ ruleId }) => ruleId)).toContain('supply');
    const same = findingsThenAndNow(recorded, SAME, { then: days.now, now: days.now }, USUAL_CHECKS);
    expect([same.onlyThen, same.onlyNow]).toEqual([[], []]);
  });
});
