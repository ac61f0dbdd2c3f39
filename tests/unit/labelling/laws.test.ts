import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALLERGEN_THRESHOLD_PPM,
  allergenAmount,
  allergenLabelOf,
  allergenRuleOn,
  declarable,
  type AllergenContent,
} from '@core/labelling/allergens';
import { groupOf, inLabelOrder, summedByName, type Placed } from '@core/labelling/order';
import { layOutForPack } from '@core/labelling/pack';
import { labelPhrases } from '@core/labelling/phrases';
import {
  isColorant,
  isColourIndexName,
  isFragrance,
  labelName,
  LABEL_FORMS,
} from '@core/labelling/substance-names';
import type { Judged } from '@core/limits/judged';
import { make } from '../checks/build';
import { NOT_POSITIVE, refusesEach } from '../working/bounds';

const placed = fc.record({
  name: fc.constantFrom('Urea', 'Glycerin', 'Squalane', 'Panthenol', 'Mica', 'Zinc Oxide'),
  ppm: fc.oneof(fc.integer({ min: 1, max: 900_000 }), fc.constantFrom(9_999, 10_000, 10_001)),
  colorant: fc.boolean(),
  activeDrug: fc.boolean(),
});
const form = fc.constantFrom(...LABEL_FORMS);

describe('the order of a label', () => {
  it('holds every name once more, falls within its groups, and a second time changes nothing', () => {
    fc.assert(
      fc.property(fc.array(placed, { maxLength: 15 }), form, (all: Placed[], of) => {
        const order = inLabelOrder(all, of);
        const written = (some: Placed[]): string[] => some.map((one) => JSON.stringify(one)).sort();
        expect(written(order)).toEqual(written(all));
        expect(inLabelOrder(order, of)).toEqual(order);
        for (const [at, one] of order.entries()) {
          const next = order[at + 1];
          if (next && groupOf(one, of) === groupOf(next, of))
            expect(one.ppm).toBeGreaterThanOrEqual(next.ppm);
        }
      }),
    );
  });

  it('hangs on nothing but what it is given: any order of the same comes out alike', () => {
    fc.assert(
      fc.property(fc.uniqueArray(placed, { selector: ({ name }) => name, maxLength: 6 }), form, (all, of) => {
        expect(inLabelOrder([...all].reverse(), of)).toEqual(inLabelOrder(all, of));
      }),
    );
  });

  it.each([
    [{ ppm: 10_000 }, 'by weight', 'any order'],
    [{ ppm: 9_999.9 }, 'any order', 'any order'],
    [{ ppm: 10_000.1 }, 'by weight', 'by weight'],
    [{ ppm: 500_000, colorant: true }, 'colorant', 'colorant'],
    [{ ppm: 500_000, activeDrug: true }, 'by weight', 'active'],
    [{ ppm: 1, activeDrug: true }, 'any order', 'active'],
    [{ ppm: 1, activeDrug: true, colorant: true }, 'colorant', 'active'],
  ])('%j stands %s in the EU, %s in the US', (parts, eu, us) => {
    const one = { colorant: false, ...parts };
    expect([groupOf(one, 'EU'), groupOf(one, 'US')]).toEqual([eu, us]);
  });

  it('sums what is one name however it is spelled, and colours only where all of it does', () => {
    const lines = [
      { name: 'Prunus Amygdalus Dulcis (Sweet Almond) Oil', ppm: 20_000, colorant: true },
      { name: 'PRUNUS AMYGDALUS DULCIS OIL', ppm: 5_000, colorant: false, activeDrug: true },
      { name: 'Glycerin', ppm: 1, colorant: false },
    ];
    expect(summedByName(lines)).toMatchObject([
      { ppm: 25_000, colorant: false, activeDrug: true },
      { name: 'Glycerin', ppm: 1 },
    ]);
    expect(summedByName([])).toEqual([]);
  });
});

const content = (label: string, ppm: number): AllergenContent => ({
  label,
  ppm,
  materialIds: [label],
  substances: [],
});

describe('fragrance allergens', () => {
  it.each(['leave-on', 'rinse-off'] as const)(
    'in %s are named strictly above the threshold, however they add up',
    (use) => {
      const least = ALLERGEN_THRESHOLD_PPM[use];
      // Ten tenths are one, though a computer's sum of them is not.
      const tenths = Array.from({ length: 10 }, () => content('Linalool', least / 10));
      expect(declarable(tenths, use)).toMatchObject({ declared: [], below: [{ label: 'Linalool' }] });
      expect(declarable([...tenths, content('linalool', least / 1000)], use).declared).toHaveLength(1);
      expect(declarable([content('Citral', 0)], use)).toMatchObject({ declared: [], below: [] });
    },
  );

  it('are parted without loss, largest first', () => {
    const some = fc.array(
      fc.tuple(fc.constantFrom('Citral', 'Linalool', 'Limonene', 'Eugenol'), fc.nat(300)),
      {
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(some, (rows) => {
        const { declared, below } = declarable(
          rows.map(([label, ppm]) => content(label, ppm)),
          'rinse-off',
        );
        const all = [...declared, ...below];
        expect(all.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(rows.reduce((sum, [, ppm]) => sum + ppm, 0));
        expect(all.map(({ ppm }) => ppm)).toEqual(all.map(({ ppm }) => ppm).sort((a, b) => b - a));
        expect(new Set(all.map(({ label }) => label)).size).toBe(all.length);
      }),
    );
  });

  // Regulation (EU) 2023/1545: new products from 31 July 2026.
  it.each([
    ['2026-07-30', 'older 26'],
    ['2026-07-31', '2023'],
    ['2028-08-01', '2023'],
  ])('of a product new on %s follow the list %s', (day, rule) => expect(allergenRuleOn(day)).toBe(rule));

  it('go by the name of their entry, and only where the list knows them', () => {
    const one = { name: 'Geranial', allergenList: 'older 26', allergenLabel: 'Citral' } as const;
    expect([allergenLabelOf(one, 'older 26'), allergenLabelOf(one, '2023')]).toEqual(['Citral', 'Citral']);
    const later = { name: 'Menthol', allergenList: 'added 2023', allergenLabel: '' } as const;
    expect([allergenLabelOf(later, 'older 26'), allergenLabelOf(later, '2023')]).toEqual([null, 'Menthol']);
    expect(allergenLabelOf({ ...later, allergenList: null }, '2023')).toBeNull();
    // Half a per cent of a fragrance with 4 % of it: 0.02 % of the product.
    expect(allergenAmount(0.5, 4)).toBeCloseTo(0.02, 12);
  });
});

describe('names on a label', () => {
  it.each([
    ['Water', 'Aqua', 'Water'],
    ['aqua (water)', 'Aqua', 'Water'],
    ['Aqua/Water/Eau', 'Aqua', 'Water'],
    ['Parfum', 'Parfum', 'Fragrance'],
    ['Fragrance (Parfum)', 'Parfum', 'Fragrance'],
    ['Flavour', 'Aroma', 'Flavor'],
    ['Rosa Damascena Flower Water', 'Rosa Damascena Flower Water', 'Rosa Damascena Flower Water'],
    ['Water Lily', 'Water Lily', 'Water Lily'],
    ['  Sodium   Chloride ', 'Sodium Chloride', 'Sodium Chloride'],
  ])('“%s” is %s in the EU and %s in the US', (written, eu, us) => {
    expect(LABEL_FORMS.map((of) => labelName(written, of))).toEqual([eu, us]);
    expect(labelName(eu, 'US')).toBe(us);
    expect(labelName(us, 'EU')).toBe(eu);
  });

  it.each([
    ['CI 77491', true],
    ['C.I. 77491', true],
    ['ci77491', true],
    ['CI 7749', false],
    ['CI 774911', false],
    ['Citric Acid', false],
  ])('“%s” is a colour index name: %s', (name, is) => expect(isColourIndexName(name)).toBe(is));

  it('a colorant colours by its colour index, or by what it is made of where it has none, never by its water', () => {
    const dye = make('Dye', ['CI 77491', 'Glycerin', 'Aqua'], { functions: ['colorant'] });
    expect(['CI 77491', 'Glycerin', 'Aqua'].map((name) => isColorant(name, dye))).toEqual([
      true,
      false,
      false,
    ]);
    const plant = make('Plant', ['Beta Vulgaris Root Extract', 'Aqua'], { functions: ['colorant'] });
    expect(plant.composition.map(({ inci }) => isColorant(inci, plant))).toEqual([true, false]);
    const filter = make('Filter', 'CI 77891', { functions: ['uv filter'] });
    expect(isColorant('CI 77891', filter)).toBe(false);
    expect(isColorant('CI 77891', { ...filter, functions: ['uv filter', 'colorant'] })).toBe(true);
  });

  it.each([
    [['fragrance'], 'Linalool', true],
    [['fragrance', 'solvent'], 'Linalool', true],
    [['fragrance', 'preservative'], 'Phenethyl Alcohol', false],
    [['solvent'], 'Linalool', false],
    [[], 'Linalool', false],
    [['fragrance'], 'Rosa Damascena Flower Water', false],
    [['fragrance'], 'Water', true],
  ] as const)('a material for %j of %s goes as fragrance: %s', (functions, inci, is) => {
    expect(isFragrance(make('M', inci, { functions: [...functions] }))).toBe(is);
  });
});

describe('a list set for a pack', () => {
  const words = fc.array(fc.stringMatching(/^[A-Za-z,/-]{1,14}$/), { maxLength: 30 });
  it('keeps every word in its order, and no line is longer than it may be but for one word alone', () => {
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 5, max: 120 }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (all, width, letter) => {
          const { lines, perLine, heightMm } = layOutForPack(all.join('  '), width, letter);
          expect(lines.join(' ')).toBe(all.join(' '));
          for (const line of lines) if (line.length > perLine) expect(line).not.toContain(' ');
          // No two lines would have gone on one.
          for (const [at, line] of lines.entries()) {
            const [first = ''] = lines[at + 1]?.split(' ') ?? [];
            if (first !== '') expect(line.length + 1 + first.length).toBeGreaterThan(perLine);
          }
          expect(layOutForPack(all.join(' '), width + 20, letter).heightMm).toBeLessThanOrEqual(heightMm);
        },
      ),
    );
    expect(layOutForPack('', 50, 1)).toMatchObject({ lines: [], heightMm: 0 });
  });

  it.each([
    ['The width', NOT_POSITIVE, (x: number) => layOutForPack('Aqua', x, 1)],
    ['The letter height', NOT_POSITIVE, (x: number) => layOutForPack('Aqua', 50, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});

describe('words that a label must carry', () => {
  const judged = (parts: Partial<Judged> & { subject?: string }): Judged =>
    ({
      phrase: 'Contains oxybenzone.',
      region: 'EU',
      certain: true,
      time: 'in force',
      limit: { subject: parts.subject ?? 'Benzophenone-3', condition: '', kinds: [] },
      counted: [],
      ...parts,
    }) as unknown as Judged;

  it('stand once, with all that asks for them, certain where one of them is', () => {
    const [one, ...others] = labelPhrases([
      judged({ certain: false, region: 'EU' }),
      judged({ region: 'US', subject: 'Another' }),
      judged({ region: 'US', subject: 'Another' }),
      judged({ phrase: '' }),
    ]);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ text: 'Contains oxybenzone.', regions: ['EU', 'US'], open: false });
    expect(one?.because).toHaveLength(2);
  });

  it('come first where they are certain, later where they hang on something or are still to come', () => {
    const found = labelPhrases([
      judged({ phrase: 'a', time: 'coming' }),
      judged({ phrase: 'b', certain: false }),
      judged({ phrase: 'c' }),
    ]);
    expect(found.map(({ text, open }) => [text, open])).toEqual([
      ['c', false],
      ['a', true],
      ['b', true],
    ]);
  });
});
