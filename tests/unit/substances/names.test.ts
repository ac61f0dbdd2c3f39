import { namesWithin, nameKey, saysNano } from '@core/substances/names';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { substanceContent } from '@core/substances/substance';
import { molarMassOf } from '@core/substances/counted-as';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { EXAMPLES } from '../limits/law';

const index = substanceIndex(EXAMPLES.substances);
const named = (written: string): string | null => index.find(written)?.name ?? null;

describe('names of substances', () => {
  it.each([
    ['Prunus Amygdalus Dulcis Oil', 'Prunus Amygdalus Dulcis (Sweet Almond) Oil'],
    ['CI 77891', 'CI 77891 (Titanium Dioxide)'],
    ['CI 77891', 'C.I. 77891'],
    ['Aqua', 'Aqua/Water/Eau'],
    ['Aqua', 'Water (Aqua)'],
    ['SODIUM BENZOATE', 'Sodium  benzoate'],
    ['Alpha-Pinene', 'α-Pinene'],
    ['Zinc Sulfate', 'Zinc Sulphate'],
    ['Zinc Oxide', 'Zinc Oxide [nano]'],
    ['Cera Alba', 'Beeswax'],
    ['Pigment white (CI 77891)', 'Titanium Dioxide'],
  ])('takes %s and %s for one', (one, other) => {
    expect(named(one)).not.toBeNull();
    expect(named(one)).toBe(named(other));
  });

  it.each(['Ethylhexylglycerin', 'Polyglycerin-3', 'Glyceryl Stearate', 'Glycerin Extract'])(
    'does not find glycerin in %s',
    (other) => expect(named(other)).not.toBe('Glycerin'),
  );

  it('leaves a name that several share to the maker', () => {
    expect(named('Iron Oxides')).toBeNull();
    expect(index.several('Iron Oxides').map(({ colourIndex }) => colourIndex)).toEqual([
      'CI 77491',
      'CI 77492',
      'CI 77499',
    ]);
  });

  it('reads what suppliers write into one name, and the mark of the nano form', () => {
    expect(namesWithin('Phenoxyethanol (and) Ethylhexylglycerin')).toEqual([
      'Phenoxyethanol',
      'Ethylhexylglycerin',
    ]);
    expect(['Zinc Oxide (nano)', 'Zinc Oxide [NANO]', 'Nano Zinc Oxide'].every(saysNano)).toBe(true);
    expect(['Nanolipid', 'Zinc Oxide', 'Cananga Odorata Oil'].some(saysNano)).toBe(false);
    expect(nameKey('')).toBe('');
  });
});

describe('the starter set of substances', () => {
  it('may be entered as it is, each name once', () => {
    const all = starterSubstances();
    for (const one of all) expect(substanceContent.safeParse(one).error?.issues ?? [], one.name).toEqual([]);
    expect(new Set(all.map(({ name }) => nameKey(name))).size).toBe(all.length);
  });

  it('is found by its own name, and counted as substances that are there with a molar mass', () => {
    for (const one of EXAMPLES.substances) {
      expect(named(one.name)).toBe(one.name);
      for (const { countedAs } of one.equivalents) {
        const reference = index.find(countedAs);
        expect(reference, `${one.name} as ${countedAs}`).not.toBeNull();
        expect(molarMassOf(reference!), countedAs).not.toBeNull();
        expect(molarMassOf(one), one.name).not.toBeNull();
      }
    }
  });

  it('converts by the factors of the published table', () => {
    const shape = z.object({
      factors: z.array(z.object({ inci: z.string(), reference: z.string(), factor: z.number() })),
    });
    const { factors } = publishedValues('expressed-as', shape);
    const absent = new Set<string>();
    for (const { inci, reference, factor } of factors) {
      const one = index.find(inci);
      const row = one?.equivalents.find(({ countedAs }) => index.find(countedAs)?.name === reference);
      if (!one || !row) {
        absent.add(inci);
        continue;
      }
      const mass = molarMassOf(index.find(reference)!)! / molarMassOf(one)!;
      expect(Math.abs(row.perMole * mass - factor), inci).toBeLessThan(0.00011);
    }
    expect([...absent]).toEqual([]);
  });

  it('declares every allergen of the published lists under its name', () => {
    const labelled = z.array(z.object({ label: z.string() }));
    const { listOf26, added2023 } = publishedValues(
      'allergens',
      z.object({ listOf26: labelled, added2023: labelled }),
    );
    const labels = (list: string): Set<string> =>
      new Set(EXAMPLES.substances.flatMap((one) => (one.allergenList === list ? [one.allergenLabel] : [])));
    expect(listOf26.map(({ label }) => label).filter((one) => !labels('older 26').has(one))).toEqual([]);
    expect(added2023.map(({ label }) => label).filter((one) => !labels('added 2023').has(one))).toEqual([]);
  });
});
