import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expressedAs, expressedByMass, factorOf, molarMassOf } from '@core/substances/counted-as';
import { bracketKeys, nameKey, namesWithin, saysNano } from '@core/substances/names';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { kept } from '../limits/law';
import { NEGATIVE, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const substance = (name: string, parts: Partial<Substance> = {}): Substance => ({
  ...kept(blankSubstance(name)),
  ...parts,
});
const mass = fc.double({ min: 1, max: 2000, noNaN: true });

describe('one substance counted as another', () => {
  it('and back is itself; counted as its like it is unchanged; more of it is more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        mass,
        mass,
        fc.integer({ min: 1, max: 4 }),
        (share, own, other, per) => {
          const as = expressedByMass(share, own, other, per).value;
          expect(expressedByMass(as, other, own, 1 / per).value).toBeCloseTo(share, 9);
          expect(expressedByMass(share, own, own, 1).value).toBeCloseTo(share, 12);
          expect(expressedByMass(share, own, other, 2 * per).value).toBeCloseTo(2 * as, 7);
        },
      ),
    );
  });

  it('worked by hand: 1 % zinc sulfate heptahydrate is 0.2274 % zinc; calcium dilactate holds two of lactic acid', () => {
    // 65.38 / 287.54; 2 × 90.078 / 218.217
    expect(expressedAs(1, 'ZnH14O11S', 'Zn', 1).value).toBeCloseTo(0.22738, 4);
    expect(expressedAs(1, 'C6H10CaO6', 'C3H6O3', 2).value).toBeCloseTo(0.82558, 4);
  });

  it.each([
    ['The share', NEGATIVE, (x: number) => expressedAs(x, 'NaCl', 'Na', 1)],
    ['The count per molecule', NOT_POSITIVE, (x: number) => expressedByMass(1, 100, 50, x)],
    ['The molar mass of the reference', NOT_POSITIVE, (x: number) => expressedByMass(1, 100, x, 1)],
    ['The molar mass of the substance', NOT_POSITIVE, (x: number) => expressedByMass(1, x, 50, 1)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it.each(['Xx2', 'Na(Cl', '', 'water'])('refuses the formula “%s”', (formula) => {
    refusal(() => expressedAs(1, formula, 'Na', 1), /./);
  });

  const acid = substance('Benzoic Acid', { formula: 'C7H6O2' });
  const salt = substance('Sodium Benzoate', {
    formula: 'C7H5NaO2',
    equivalents: [{ countedAs: 'Benzoic Acid', perMole: 1 }],
  });
  const without = substance('Potassium Benzoate', { formula: 'C7H5KO2' });
  const massless = substance('Calcium Benzoate', {
    equivalents: [{ countedAs: 'Benzoic Acid', perMole: 2 }],
  });
  const index = substanceIndex([acid, salt, without, massless]);

  it('goes by the molar masses where both are known, and says what is missing where not', () => {
    // 122.123 / 144.105
    expect(factorOf(salt, acid, index).value).toBeCloseTo(0.84746, 4);
    expect(factorOf(salt, acid, index).unknown).toBeNull();
    expect(factorOf(acid, acid, index)).toEqual({ value: 1, shows: '', unknown: null });
    expect(factorOf(salt, null, index).value).toBe(1);
    expect(factorOf(without, acid, index)).toMatchObject({
      value: 1,
      unknown: expect.stringMatching(/is not recorded/) as unknown,
    });
    expect(factorOf(massless, acid, index).unknown).toMatch(/molar mass of Calcium Benzoate is not recorded/);
  });

  it('takes the molar mass of the formula before the recorded one, which serves where the formula cannot be read', () => {
    expect(molarMassOf({ formula: 'NaCl', molarMass: 1 })).toBeCloseTo(58.44, 2);
    expect(molarMassOf({ formula: ' ', molarMass: 282.5 })).toBe(282.5);
    expect(molarMassOf({ formula: 'Qq', molarMass: 282.5 })).toBe(282.5);
    expect(molarMassOf({ formula: '', molarMass: null })).toBeNull();
  });
});

describe('names', () => {
  const word = fc.stringMatching(/^[A-Za-z]{1,8}$/).filter((one) => !/nano|sulph|alumin/i.test(one));
  const written = fc.array(fc.oneof(word, fc.integer({ min: 1, max: 99 }).map(String)), {
    minLength: 1,
    maxLength: 5,
  });

  it('have one key whatever their case, hyphens, spaces and bracketed common names', () => {
    fc.assert(
      fc.property(written, word, (words, common) => {
        const key = nameKey(words.join(' '));
        for (const spelled of [
          words.join('-'),
          `  ${words.join('   ')} `,
          words.join(' ').toUpperCase(),
          `${words.join(' ')} (${common})`,
          `${words.join(' ')} [${common} (${common})]`,
          `${words.join(' ')} (nano)`,
        ])
          expect(nameKey(spelled), spelled).toBe(key);
        expect(nameKey(key)).toBe(key);
      }),
    );
  });

  it('that stand in brackets alone are still names', () => {
    expect(nameKey('(Parfum)')).toBe('parfum');
    expect(nameKey('')).toBe('');
    expect(bracketKeys('White (CI 77891) [nano] (Titanium Dioxide)')).toEqual([
      'ci 77891',
      'titanium dioxide',
    ]);
  });

  it.each([
    ['Phenoxyethanol (and) Ethylhexylglycerin', ['Phenoxyethanol', 'Ethylhexylglycerin']],
    ['A & B and C', ['A', 'B', 'C']],
    ['A (&) B', ['A', 'B']],
    ['Candelilla Cera', ['Candelilla Cera']],
    ['Sandalwood', ['Sandalwood']],
    ['', []],
  ])('“%s” names %j', (text, names) => expect(namesWithin(text)).toEqual(names));

  it.each([
    ['Zinc Oxide (nano)', true],
    ['Zinc Oxide [Nano]', true],
    ['Nano Zinc Oxide', true],
    ['zinc oxide nanoform', true],
    ['Nonanoic Acid', false],
    ['Ethyl Nonanoate', false],
    ['Zinc Oxide', false],
  ])('“%s” says nano: %s', (name, is) => expect(saysNano(name)).toBe(is));
});

describe('the table of substances', () => {
  const names = (...all: string[]) => all.map((name) => ({ name }));
  const red = substance('Iron Red', { colourIndex: 'CI 77491', synonyms: names('Iron Oxides') });
  const black = substance('Iron Black', { colourIndex: 'CI 77499', synonyms: names('Iron Oxides', 'Aqua') });
  const water = substance('Aqua', { usName: 'Water', synonyms: names('Eau'), groups: names('Solvents') });
  const alcohol = substance('Alcohol', { groups: names('solvents', 'Solvents') });
  const index = substanceIndex([red, black, water, alcohol]);

  it('finds its own name before one that another shares, and nothing by a name of several', () => {
    expect(index.find('aqua')).toBe(water);
    expect(index.find('Iron Oxides')).toBeNull();
    expect(index.several('iron oxides')).toEqual([red, black]);
    expect([index.find(''), index.find('Iron'), index.find('Aqua Alcohol')]).toEqual([null, null, null]);
  });

  it('reads names with a slash as one substance only where all of them are', () => {
    expect(index.find('Aqua/Water/Eau')).toBe(water);
    expect(index.find('Aqua/Alcohol')).toBeNull();
    expect(index.find('Aqua/Unknown')).toBeNull();
  });

  it('takes what stands in brackets only where it means one', () => {
    expect(index.find('Pigment (CI 77491)')).toBe(red);
    expect(index.find('Pigments (CI 77491) (CI 77499)')).toBeNull();
  });

  it('names a group once, with each member once', () => {
    expect(index.groups).toEqual(['Solvents']);
    expect(index.members('SOLVENTS')).toEqual([water, alcohol]);
    expect(index.members('none')).toEqual([]);
  });
});
