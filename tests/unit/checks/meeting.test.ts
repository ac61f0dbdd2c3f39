import { describe, expect, it } from 'vitest';
import { findingsOf, make } from './build';

const material = (inci: string) => make(`M ${inci}`, inci);
const meeting = (check: string, first: string, second: string) =>
  findingsOf(check, [
    [material(first), 1],
    [material(second), 1],
  ]);

/** What each pair does is general chemistry, from memory; the two with a paper of their own name it in the finding. */
describe('actives that spoil each other', () => {
  it.each([
    ['Benzoyl Peroxide', 'Retinol', 'warn'],
    ['Benzoyl Peroxide', 'Retinal', 'warn'],
    ['Benzoyl Peroxide', 'Retinyl Palmitate', 'warn'],
    ['Benzoyl Peroxide', 'Tocopherol', 'warn'],
    ['Ascorbic Acid', 'Copper Gluconate', 'warn'],
    ['Ascorbic Acid', 'CI 77491', 'warn'],
    ['Ascorbic Acid', 'Iron Oxides', 'warn'],
    ['Ascorbic Acid', 'Ferrous Gluconate', 'warn'],
    ['Dihydroxyacetone', 'Urea', 'warn'],
    ['Dihydroxyacetone', 'Arginine', 'warn'],
    ['Dihydroxyacetone', 'Glycine', 'warn'],
    ['Dihydroxyacetone', 'Triethanolamine', 'warn'],
    ['Dihydroxyacetone', 'Hydrolyzed Wheat Protein', 'warn'],
    ['Lactic Acid', 'Retinol', 'note'],
    ['Salicylic Acid', 'Retinyl Acetate', 'note'],
    ['Sodium Benzoate', 'Ascorbic Acid', 'warn'],
    ['Benzoic Acid', 'Sodium Ascorbate', 'warn'],
    ['Zinc Oxide', 'Butyl Methoxydibenzoylmethane', 'note'],
    ['Butyl Methoxydibenzoylmethane', 'Ethylhexyl Methoxycinnamate', 'warn'],
    ['Diazolidinyl Urea', 'Hydrolyzed Collagen', 'note'],
    ['DMDM Hydantoin', 'Gelatin', 'note'],
    ['Thioglycolic Acid', 'Hydrogen Peroxide', 'stop'],
    ['Cysteamine HCl', 'Ammonium Persulfate', 'stop'],
  ])('%s with %s: %s, whichever stands first', (first, second, severity) => {
    const [one, ...more] = meeting('harmful-pairs', first, second);
    expect(one?.severity).toBe(severity);
    expect(more).toEqual([]);
    expect(one?.lines).toHaveLength(2);
    expect(one?.title).toContain(first);
    expect(one?.title).toContain(second);
    expect(meeting('harmful-pairs', second, first).map((other) => [other.severity, other.advice])).toEqual([
      [one?.severity, one?.advice],
    ]);
  });

  it.each([
    ['Ascorbic Acid', 'Rhododendron Ferrugineum Extract'],
    ['Ascorbic Acid', 'Ferulic Acid'],
    ['Ascorbic Acid', 'Environmental Clay'],
    ['Ascorbyl Glucoside', 'Copper Gluconate'],
    ['3-O-Ethyl Ascorbic Acid', 'Sodium Benzoate'],
    ['Dihydroxyacetone', 'Glycine Soja Oil'],
    ['Dihydroxyacetone', 'Hydroxyethyl Urea'],
    ['Benzoyl Peroxide', 'Tocopheryl Acetate'],
    ['Lactic Acid', 'Bakuchiol'],
    ['Sodium Lactate', 'Retinol'],
    ['Phenoxyethanol', 'Ascorbic Acid'],
    ['Urea', 'Hydrolyzed Collagen'],
    ['Quaternium-18', 'Gelatin'],
    ['Zinc Stearate', 'Butyl Methoxydibenzoylmethane'],
    ['Titanium Dioxide', 'Butyl Methoxydibenzoylmethane'],
  ])('%s with %s is none of them', (first, second) => {
    expect(meeting('harmful-pairs', first, second)).toEqual([]);
  });

  it('are found in a blend, and not where one of the two is at nothing', () => {
    const blend = make('Duo', ['Phenoxyethanol', 'Benzoic Acid']);
    const vitamin = material('Ascorbic Acid');
    expect(
      findingsOf('harmful-pairs', [
        [blend, 1],
        [vitamin, 5],
      ]),
    ).toHaveLength(1);
    expect(
      findingsOf('harmful-pairs', [
        [blend, 0],
        [vitamin, 5],
      ]),
    ).toEqual([]);
  });
});

/** Regulation (EC) No 1223/2009, Annex III, on amines and nitrosating systems, from memory. */
describe('an amine beside what nitrosates it', () => {
  const amines = [
    'Triethanolamine',
    'Diethanolamine',
    'TEA-Stearate',
    'Cocamide DEA',
    'Stearamidopropyl Dimethylamine',
    'Diisopropanolamine',
  ];
  const agents = ['2-Bromo-2-Nitropropane-1,3-Diol', '5-Bromo-5-Nitro-1,3-Dioxane', 'Sodium Nitrite'];
  it.each(amines.flatMap((amine) => agents.map((agent) => [amine, agent] as const)))(
    '%s with %s stops',
    (amine, agent) => {
      const [one] = meeting('nitrosamines', amine, agent);
      expect(one?.severity).toBe('stop');
      expect(one?.advice).toContain('Nitrosamines cause cancer.');
      expect(meeting('nitrosamines', agent, amine)).toHaveLength(1);
    },
  );

  it.each([
    ['Triethanolamine', 'Phenoxyethanol'],
    ['Melaleuca Alternifolia (Tea Tree) Leaf Oil', 'Sodium Nitrite'],
    ['Camellia Sinensis Leaf Extract', 'Sodium Nitrite'],
    ['Sodium Hydroxide', '2-Bromo-2-Nitropropane-1,3-Diol'],
    ['Triethanolamine', 'Silver Nitrate'],
  ])('%s with %s does not', (first, second) => {
    expect(meeting('nitrosamines', first, second)).toEqual([]);
  });
});

describe('what turns rancid, and what guards it', () => {
  const oil = (inci: string, guard?: string) =>
    findingsOf('antioxidant', [
      [material(inci), 5],
      ...(guard ? [[material(guard), 0.1] as [ReturnType<typeof make>, number]] : []),
    ]);
  it.each([
    'Helianthus Annuus Seed Oil',
    'Rosa Canina Fruit Oil',
    'Prunus Amygdalus Dulcis Oil',
    'Persea Gratissima Oil',
    'Squalene',
    'Linoleic Acid',
    'Decyl Oleate',
  ])('%s wants an antioxidant beside it', (inci) => {
    expect(oil(inci)[0]?.severity).toBe('note');
    for (const guard of ['Tocopherol', 'Rosmarinus Officinalis Leaf Extract', 'BHT'])
      expect(oil(inci, guard)).toEqual([]);
  });
  it.each([
    'Simmondsia Chinensis Seed Oil',
    'Cocos Nucifera Oil',
    'Hydrogenated Rapeseed Oil',
    'Squalane',
    'Caprylic/Capric Triglyceride',
    'Paraffinum Liquidum',
  ])('%s keeps by itself', (inci) => {
    expect(oil(inci)).toEqual([]);
  });
  it('a retinoid is warned of at any share, and an acetate of tocopherol guards nothing', () => {
    expect(findingsOf('antioxidant', [[material('Retinol'), 0.1]])[0]?.severity).toBe('warn');
    expect(oil('Helianthus Annuus Seed Oil', 'Tocopheryl Acetate')[0]?.severity).toBe('note');
  });
});

describe('what must tell its allergens', () => {
  it.each([
    'Parfum',
    'Lavandula Angustifolia Oil',
    'Citrus Limon Peel Oil',
    'Rosa Damascena Flower Water',
    'Eucalyptus Globulus Leaf Oil',
  ])('%s does', (inci) => {
    expect(findingsOf('allergen-data', [[material(inci), 0.3]])[0]?.title).toBe(
      `No allergens recorded: M ${inci}`,
    );
  });
  it.each([
    'Helianthus Annuus Seed Oil',
    'Rosa Canina Fruit Oil',
    'Aqua',
    'Citrus Aurantium Dulcis Seed Oil',
  ])('%s does not', (inci) => {
    expect(findingsOf('allergen-data', [[material(inci), 0.3]])).toEqual([]);
  });
  it('is silent once they are recorded; a fragrance without is a warning', () => {
    const scent = make('Scent', 'Parfum', { functions: ['fragrance'] });
    expect(findingsOf('allergen-data', [[scent, 0.3]])[0]?.severity).toBe('warn');
    const told = { ...scent, allergens: [{ inci: 'Linalool', ppm: 100 }] };
    expect(findingsOf('allergen-data', [[told, 0.3]])).toEqual([]);
  });
});
