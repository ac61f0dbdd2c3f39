import { describe, expect, it } from 'vitest';
import { blankTarget } from '@core/formulas/formula';
import { figure, findingsOf, make, range } from './build';
import * as shelf from './materials';

const atPh = (phLow: number, phHigh: number) => ({ target: { ...blankTarget(), phLow, phHigh } });
const wo = { productType: 'w/o emulsion' } as const;

describe('emulsions', () => {
  it('o/w wants one emulsifier that disperses in water', () => {
    const laurate = make('Laurate', 'Sorbitan Laurate', {
      ...{ functions: ['emulsifier'], charge: 'non-ionic', emulsionType: 'both' },
      figures: { hlb: figure(8.6) },
    });
    const rows: Parameters<typeof findingsOf>[1] = [
      [laurate, 2],
      [shelf.sorbitanOleate(), 1],
    ];
    expect(findingsOf('disperses-in-water', rows)[0]?.severity).toBe('warn');
    expect(findingsOf('disperses-in-water', [...rows, [shelf.stearoylGlutamate(), 0.5]])).toEqual([]);
    expect(findingsOf('disperses-in-water', rows, wo)).toEqual([]);
  });

  it('emulsifier goes with the oil', () => {
    const at = (oil: number, percent: number) =>
      findingsOf('emulsifier-to-oil', [
        [shelf.mineralOil(), oil],
        [shelf.steareth21(), percent],
      ])[0]?.severity;
    // 1 to 20 is 5 parts in 100, below 8; 4 to 20 is 20; 3 to 4 is 75, above 60.
    expect(at(20, 1)).toBe('warn');
    expect(at(20, 4)).toBeUndefined();
    expect(at(4, 3)).toBe('note');
  });

  it('w/o wants half a per cent of salt, whatever holds it', () => {
    const rows: Parameters<typeof findingsOf>[1] = [
      [shelf.water(), 60],
      [shelf.sorbitanOleate(), 4],
    ];
    expect(findingsOf('water-in-oil-salt', rows, wo)[0]?.title).toBe('A w/o emulsion without salt');
    expect(findingsOf('water-in-oil-salt', [...rows, [shelf.saltCrystals(), 0.2]], wo)[0]?.title).toContain(
      '0.2 %',
    );
    expect(findingsOf('water-in-oil-salt', [...rows, [shelf.saltCrystals(), 0.5]], wo)).toEqual([]);
    const brine = make('Brine', ['Aqua', 'Sodium Chloride'], { functions: ['electrolyte'] });
    expect(findingsOf('water-in-oil-salt', [...rows, [brine, 1]], wo)).toEqual([]);
  });

  it('an internal phase above 74 % by volume is said, with densities as recorded', () => {
    const oil = { ...shelf.mineralOil(), figures: { density: figure(0.86) } };
    const at = (percent: number) =>
      findingsOf('internal-phase', [
        [oil, percent],
        [shelf.water(), 100 - percent],
      ]);
    // By hand: 72/0.86 = 83.7 beside 28: 74.9 %; 70/0.86 = 81.4 beside 30: 73.1 %.
    expect(at(72)[0]?.title).toContain('75 %');
    expect(at(70)).toEqual([]);
  });

  it('sugar and polyglycerol esters hold no oxyethylene that heat could harm', () => {
    const sugar = make('Sugar', 'Sucrose Stearate', {
      ...{ functions: ['emulsifier'], charge: 'non-ionic', architecture: 'classic', emulsionType: 'o/w' },
      figures: { hlb: figure(15) },
    });
    expect(findingsOf('one-sided-charge', [[sugar, 3]])).toEqual([]);
    expect(findingsOf('one-sided-charge', [[shelf.steareth21(), 3]])[0]?.title).toContain('heat');
  });
});

describe('pairs and doses of actives', () => {
  it('every line works at the target pH, soap too', () => {
    const gel = make('Gel', 'Carbomer', { functions: ['thickener'], figures: { workingPh: range(5, 9) } });
    expect(findingsOf('working-ph', [[gel, 0.3]], atPh(4, 4.5))[0]?.severity).toBe('warn');
    expect(findingsOf('working-ph', [[gel, 0.3]], atPh(5, 6))).toEqual([]);
    const rows: Parameters<typeof findingsOf>[1] = [
      [shelf.stearicAcid(), 3],
      [shelf.lye(), 1],
    ];
    expect(findingsOf('working-ph', rows, atPh(5.5, 6))[0]?.title).toContain('fatty acid');
    expect(findingsOf('working-ph', rows, atPh(7.5, 8))).toEqual([]);
  });

  it.each([
    ['nitrosamines', 'Triethanolamine', '2-Bromo-2-Nitropropane-1,3-Diol', 'stop'],
    ['harmful-pairs', 'Benzoyl Peroxide', 'Retinol', 'warn'],
    ['harmful-pairs', 'Ascorbic Acid', 'Copper Gluconate', 'warn'],
    ['harmful-pairs', 'Dihydroxyacetone', 'Urea', 'warn'],
    ['harmful-pairs', 'Sodium Benzoate', 'Ascorbic Acid', 'warn'],
    ['harmful-pairs', 'Ammonium Thioglycolate', 'Hydrogen Peroxide', 'stop'],
  ])('%s: %s with %s', (rule, first, second, severity) => {
    const [one, other] = [make('One', first), make('Other', second)];
    expect(
      findingsOf(rule, [
        [one, 1],
        [other, 1],
      ])[0]?.severity,
    ).toBe(severity);
    expect(findingsOf(rule, [[one, 1]])).toEqual([]);
    expect(findingsOf(rule, [[other, 1]])).toEqual([]);
  });

  it('unsaturated oils and retinoids want an antioxidant', () => {
    const oil = make('Sun', 'Helianthus Annuus Seed Oil', { functions: ['emollient'] });
    const retinol = make('A', 'Retinyl Palmitate', { functions: ['active'] });
    const tocopherol = make('E', 'Tocopherol', { functions: ['antioxidant'] });
    expect(findingsOf('antioxidant', [[oil, 5]])[0]?.severity).toBe('note');
    expect(findingsOf('antioxidant', [[oil, 1]])).toEqual([]);
    expect(findingsOf('antioxidant', [[retinol, 0.1]])[0]?.severity).toBe('warn');
    expect(
      findingsOf('antioxidant', [
        [oil, 5],
        [retinol, 0.1],
        [tocopherol, 0.1],
      ]),
    ).toEqual([]);
    expect(findingsOf('antioxidant', [[shelf.mineralOil(), 20]])).toEqual([]);
  });

  it('fragrance without allergens is a warning, a botanical a note, a seed oil neither', () => {
    const scent = make('Scent', 'Parfum', { functions: ['fragrance'] });
    expect(findingsOf('allergen-data', [[scent, 0.2]])[0]?.severity).toBe('warn');
    expect(
      findingsOf('allergen-data', [[make('Flower', 'Calendula Officinalis Flower Extract'), 1]])[0]?.severity,
    ).toBe('note');
    expect(
      findingsOf('allergen-data', [[{ ...scent, allergens: [{ inci: 'Linalool', ppm: 1000 }] }, 0.2]]),
    ).toEqual([]);
    expect(findingsOf('allergen-data', [[make('Sun', 'Helianthus Annuus Seed Oil'), 5]])).toEqual([]);
  });

  it('adds up UV filters, and says that protection is measured', () => {
    const filter = (name: string) => make(name, name, { functions: ['uv filter'] });
    const [found] = findingsOf('uv-filters', [
      [filter('Zinc Oxide'), 5],
      [filter('Octocrylene'), 3],
    ]);
    expect(found?.title).toContain('8 %');
    expect(found?.advice).toContain('never computed');
  });

  it('notes a heavy load of powder, and lines too small to weigh', () => {
    const zinc = make('Zinc', 'Zinc Oxide', { form: 'powder', solubleIn: ['insoluble'] });
    expect(findingsOf('powder-load', [[zinc, 15]])).toHaveLength(1);
    expect(findingsOf('powder-load', [[zinc, 5]])).toEqual([]);
    expect(findingsOf('small-lines', [[zinc, 0.005]])).toHaveLength(1);
    expect(findingsOf('small-lines', [[zinc, 0.01]])).toEqual([]);
  });
});
