import { nameKey } from '@core/substances/names';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { describe, expect, it } from 'vitest';

const all = starterSubstances();
const allergens = all.filter((one) => one.allergenList !== null);
const labelOf = (name: string): string => all.find((one) => one.name === name)?.allergenLabel ?? '';

/** Regulation (EU) 2023/1545, Annex: several substances that are declared under one name; from memory. */
describe('an allergen on a label', () => {
  it.each([
    ['Alpha-Pinene', 'Pinene'],
    ['Beta-Pinene', 'Pinene'],
    ['Alpha-Damascone', 'Rose Ketones'],
    ['Beta-Damascone', 'Rose Ketones'],
    ['Delta-Damascone', 'Rose Ketones'],
    ['Damascenone', 'Rose Ketones'],
    ['Alpha-Santalol', 'Santalol'],
    ['Beta-Santalol', 'Santalol'],
    ['Alpha-Terpineol', 'Terpineol'],
    ['Cananga Odorata Flower Oil', 'Cananga Odorata Oil/Extract'],
    ['Cedrus Atlantica Bark Oil', 'Cedrus Atlantica Oil/Extract'],
    ['Citrus Aurantium Amara Flower Oil', 'Citrus Aurantium Flower Oil'],
    ['Citrus Aurantium Dulcis Peel Oil', 'Citrus Aurantium Peel Oil'],
    ['Eugenia Caryophyllus Bud Oil', 'Eugenia Caryophyllus Oil'],
    ['Jasminum Officinale Oil', 'Jasmine Oil/Extract'],
    ['Lavandula Angustifolia Oil', 'Lavandula Oil/Extract'],
    ['Lavandula Hybrida Oil', 'Lavandula Oil/Extract'],
    ['Cymbopogon Flexuosus Oil', 'Lemongrass Oil'],
    ['Myroxylon Balsamum Pereirae Balsam Oil', 'Myroxylon Pereirae Oil/Extract'],
    ['Narcissus Poeticus Extract', 'Narcissus Extract'],
    ['Rosa Damascena Flower Oil', 'Rose Flower Oil/Extract'],
    ['Rosa Centifolia Flower Extract', 'Rose Flower Oil/Extract'],
    // Alone, under its own name.
    ['Limonene', 'Limonene'],
    ['Linalool', 'Linalool'],
    ['Citrus Limon Peel Oil', 'Citrus Limon Peel Oil'],
    ['Terpinolene', 'Terpinolene'],
    ['Linalyl Acetate', 'Linalyl Acetate'],
  ])('%s is declared as %s', (name, label) => expect(labelOf(name)).toBe(label));

  it('is never declared under a name that no allergen bears', () => {
    const names = new Set(allergens.map(({ name }) => nameKey(name)));
    for (const { name, allergenLabel } of allergens)
      expect(names.has(nameKey(allergenLabel)), `${name}: ${allergenLabel}`).toBe(true);
  });

  it.each(['Amyl Cinnamal', 'Benzyl Alcohol', 'Citral', 'Coumarin', 'Geraniol', 'Evernia Prunastri Extract'])(
    '%s stands on the older list of 26',
    (name) => expect(all.find((one) => one.name === name)?.allergenList).toBe('older 26'),
  );

  it('the older list has 26, by Directive 2003/15/EC', () => {
    expect(allergens.filter((one) => one.allergenList === 'older 26')).toHaveLength(26);
  });

  it.each(['Sodium Benzoate', 'Phenoxyethanol', 'Glycerin', 'Parfum', 'Bisabolol', 'Hexyl Alcohol'])(
    '%s is declared as none',
    (name) => expect(labelOf(name)).toBe(''),
  );
});
