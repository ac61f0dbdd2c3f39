import { baseMmol, needyAcidMmol, strongerAcidMmol } from '@core/checks/equivalents';
import type { LineFacts } from '@core/checks/facts';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { figure, findingsOf, make, range } from './build';
import * as shelf from './materials';

const speaks = (ruleId: string, first: string, second: string) =>
  findingsOf(ruleId, [
    [make('One', first), 3],
    [make('Other', second), 3],
  ]).length > 0;

describe('names that look alike to a check', () => {
  // INCI dictionary, from memory: Glycine Soja is the soybean, and tea is no triethanolamine.
  it.each([
    ['harmful-pairs', 'Dihydroxyacetone', 'Glycine', true],
    ['harmful-pairs', 'Dihydroxyacetone', 'Glycine Soja Oil', false],
    ['harmful-pairs', 'Dihydroxyacetone', 'Glycine Max Seed Extract', false],
    ['harmful-pairs', 'Dihydroxyacetone', 'Hydrolyzed Wheat Protein', true],
    ['harmful-pairs', 'Ascorbic Acid', 'CI 77491', true],
    ['harmful-pairs', 'Ascorbyl Glucoside', 'Copper Gluconate', false],
    ['harmful-pairs', 'Zinc Oxide', 'Butyl Methoxydibenzoylmethane', true],
    ['harmful-pairs', 'Zinc Stearate', 'Butyl Methoxydibenzoylmethane', false],
    ['nitrosamines', 'Bronopol', 'TEA-Stearate', true],
    ['nitrosamines', 'Bronopol', 'Cocamide DEA', true],
    ['nitrosamines', 'Bronopol', 'Stearamidopropyl Dimethylamine', true],
    ['nitrosamines', 'Bronopol', 'Melaleuca Alternifolia (Tea Tree) Leaf Oil', false],
    ['nitrosamines', 'Bronopol', 'Camellia Sinensis (Green Tea) Leaf Extract', false],
    ['nitrosamines', 'Bronopol', 'Cocamide MEA', false],
    ['nitrosamines', 'Nitrocellulose', 'Triethanolamine', false],
  ])('%s: %s with %s: %s', (rule, first, second, expected) => {
    expect(speaks(rule, first, second)).toBe(expected);
    expect(speaks(rule, second, first)).toBe(expected);
  });

  it.each([
    ['Helianthus Annuus Seed Oil', true],
    ['Olea Europaea Fruit Oil', true],
    ['Persea Gratissima Oil', true],
    ['Squalene', true],
    ['Oleic Acid', true],
    ['Ethyl Oleate', true],
    // Water-soluble extracts of the same plants hold no oil.
    ['Olea Europaea Leaf Extract', false],
    ['Prunus Amygdalus Dulcis Protein', false],
    ['Hydrogenated Cottonseed Oil', false],
    ['Hydrogenated Olive Oil', false],
    ['Simmondsia Chinensis Seed Oil', false],
    ['Cocos Nucifera Oil', false],
    ['Squalane', false],
    ['Paraffinum Liquidum', false],
  ])('antioxidant: %s turns rancid: %s', (inci, expected) => {
    expect(findingsOf('antioxidant', [[make('Oil', inci), 5]]).length > 0).toBe(expected);
    expect(
      findingsOf('antioxidant', [
        [make('Oil', inci), 5],
        [make('E', 'Tocopherol'), 0.1],
      ]),
    ).toEqual([]);
  });

  it('antioxidant: an oil is worth protecting from 2 % on, a retinoid at any share', () => {
    const oil = make('Oil', 'Helianthus Annuus Seed Oil');
    expect(findingsOf('antioxidant', [[oil, 1.9999]])).toEqual([]);
    expect(findingsOf('antioxidant', [[oil, 2]])).toHaveLength(1);
    expect(
      findingsOf('antioxidant', [
        [oil, 1],
        [make('Other', 'Oleic Acid'), 1],
      ]),
    ).toHaveLength(1);
    expect(findingsOf('antioxidant', [[make('A', 'Retinal'), 0.0001]])[0]?.severity).toBe('warn');
    // Its acetate guards the skin, not the oil.
    expect(
      findingsOf('antioxidant', [
        [oil, 5],
        [make('E acetate', 'Tocopheryl Acetate'), 1],
      ]),
    ).toHaveLength(1);
  });
});

describe('equivalents of a line, mmol in 100 g', () => {
  const line = (material: Material, percent: number) => ({ material, ppm: percent * 10_000 }) as LineFacts;

  it('of a base are those of what it holds, at the least of a range, by hand', () => {
    // 1 g of a 10 % solution of NaOH is 0.1 / 39.997: 2.5002 mmol.
    const lye = {
      ...make('Lye', 'Aqua'),
      composition: [
        { inci: 'Aqua', lowPpm: 900_000, highPpm: 900_000 },
        { inci: 'Sodium Hydroxide', lowPpm: 100_000, highPpm: 120_000 },
      ],
    };
    expect(baseMmol(line(lye, 1))).toBeCloseTo(2.5002, 3);
    expect(baseMmol(line(make('TEA', 'Triethanolamine'), 1))).toBeCloseTo(1000 / 149.19, 3);
    expect(baseMmol(line(shelf.water(), 50))).toBe(0);
    const unknown = make('Our base', 'Mystery', {
      functions: ['base'],
      figures: { molarMass: figure(100), activePercent: range(80, 90), equivalents: figure(2) },
    });
    // 1 g of 80 % of 100 g/mol, two to a molecule: 16 mmol.
    expect(baseMmol(line(unknown, 1))).toBeCloseTo(16, 9);
  });

  it('of a fatty acid go by its acid value, else by its name', () => {
    expect(
      needyAcidMmol(line(make('Stear', 'Stearic Acid', { figures: { acidValue: figure(206) } }), 3)),
    ).toBeCloseTo((3 * 206) / 56.105, 9);
    expect(needyAcidMmol(line(make('Stear', 'Stearic Acid'), 3))).toBeCloseTo(3000 / 284.484, 3);
  });

  it('of carbomer count the carbomer alone: a dispersion of 2 % has a fiftieth of the powder’s', () => {
    const powder = make('Powder', 'Carbomer');
    const dispersion = {
      ...make('Ready gel', 'Aqua'),
      composition: [
        { inci: 'Aqua', lowPpm: 980_000, highPpm: 980_000 },
        { inci: 'Carbomer', lowPpm: 20_000, highPpm: 20_000 },
      ],
    };
    // 62 % of carboxyl, 45.02 g/mol: 13.77 mmol/g.
    expect(needyAcidMmol(line(powder, 1))).toBeCloseTo(13.772, 3);
    expect(needyAcidMmol(line(dispersion, 25))).toBeCloseTo(needyAcidMmol(line(powder, 0.5)), 9);
  });

  it('let a little base suffice for a ready dispersion of carbomer, as it does for the powder', () => {
    const beads = make('Beads', 'Sodium Hydroxide', { functions: ['base'] });
    const dispersion = {
      ...make('Ready gel', 'Aqua', { needsNeutralising: true }),
      composition: [
        { inci: 'Aqua', lowPpm: 980_000, highPpm: 980_000 },
        { inci: 'Carbomer', lowPpm: 20_000, highPpm: 20_000 },
      ],
    };
    // 0.5 g of carbomer is 6.9 mmol; a fifth of it wants 1.38, and 0.1 g of NaOH is 2.5 mmol.
    expect(
      findingsOf('neutralising', [
        [shelf.carbomer(), 0.5],
        [beads, 0.1],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('neutralising', [
        [dispersion, 25],
        [beads, 0.1],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('neutralising', [
        [dispersion, 25],
        [beads, 0.05],
      ]),
    ).toHaveLength(1);
    expect(findingsOf('neutralising', [[dispersion, 25]])[0]?.title).toContain('there is no base');
  });

  it('of an acid that goes first are none of a fatty acid, nor of what must be neutralised itself', () => {
    const citric = make('Sour', 'Citric Acid', { functions: ['acid'] });
    expect(strongerAcidMmol(line(citric, 1))).toBeCloseTo(3000 / 192.123, 3);
    expect(strongerAcidMmol(line(make('Sour', 'Citric Acid'), 1))).toBe(0);
    expect(strongerAcidMmol(line({ ...shelf.stearicAcid(), functions: ['acid'] }, 1))).toBe(0);
    expect(
      strongerAcidMmol(line(make('Gel', 'Carbomer', { functions: ['acid'], needsNeutralising: true }), 1)),
    ).toBe(0);
  });
});

describe('a threshold of a check', () => {
  it.each<[string, Material, number]>([['small-lines', make('Little', 'Panthenol'), 0.01]])(
    '%s speaks below its share, not at it',
    (rule, material, percent) => {
      expect(findingsOf(rule, [[material, percent]])).toEqual([]);
      expect(findingsOf(rule, [[material, percent - 0.0001]])).toHaveLength(1);
      expect(findingsOf(rule, [[material, 0]])).toEqual([]);
    },
  );

  it('powder-load speaks above a tenth, of insoluble powders together, in emulsions alone', () => {
    const powder = (name: string) => make(name, name, { form: 'powder', solubleIn: ['insoluble'] });
    const [mica, talc] = [powder('Mica'), powder('Talc')];
    expect(
      findingsOf('powder-load', [
        [mica, 5],
        [talc, 5],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('powder-load', [
        [mica, 5],
        [talc, 5.0001],
      ]),
    ).toHaveLength(1);
    expect(findingsOf('powder-load', [[mica, 60]], { productType: 'anhydrous' })).toEqual([]);
    expect(
      findingsOf('powder-load', [[make('Sugar', 'Sucrose', { form: 'powder', solubleIn: ['water'] }), 60]]),
    ).toEqual([]);
  });

  it('usage counts a material over all its lines, and both ends are within', () => {
    const used = make('Used', 'Panthenol', {
      usage: { minPpm: 10_000, typicalPpm: null, maxPpm: 20_000, provenance: 'supplier', source: '' },
    });
    const severities = (...percents: number[]) =>
      findingsOf(
        'usage-range',
        percents.map((percent) => [used, percent]),
      ).map(({ severity }) => severity);
    expect([severities(1), severities(2), severities(1, 1)]).toEqual([[], [], []]);
    expect(severities(1, 1.0001)).toEqual(['warn']);
    expect(severities(0.9999)).toEqual(['note']);
    expect(severities(0)).toEqual([]);
  });
});
