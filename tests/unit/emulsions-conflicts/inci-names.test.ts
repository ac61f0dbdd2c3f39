import * as recognise from '@core/emulsions/conflicts/recognise';
import { describe, expect, it } from 'vitest';
import { INCI_NAMES as IS } from './inci-names';

type Asked = keyof typeof IS;
const ASKED = Object.keys(IS) as Asked[];

/** What each name is besides what its list says: a salt of an ethoxylate is both. */
const ALSO: Readonly<Record<string, readonly Asked[]>> = {
  'Sodium Bicarbonate': ['isElectrolyte'],
  'Sodium Carbonate': ['isBase', 'isElectrolyte'],
  'Sodium Gluconate': ['isElectrolyte'],
  'Acrylates/Beheneth-25 Methacrylate Copolymer': ['holdsOxyethylene'],
  'Sodium Laureth Sulfate': ['holdsOxyethylene', 'isAnionicSurfactant'],
};

const material = (inci: string) => ({
  composition: [{ inci, lowPpm: 1_000_000, highPpm: 1_000_000 }],
  functions: [],
});
const found = (inci: string): Asked[] => ASKED.filter((asked) => recognise[asked](material(inci)));
const ETHOXYLATED = /eth-\d|laureth/i;

describe.each(ASKED)('%s', (asked) => {
  const [what, names] = IS[asked];

  it.each(names.map((name) => [name] as const))(`%s is a ${what}, and nothing else`, (name) => {
    const expected = new Set<Asked>([asked, ...(ALSO[name] ?? [])]);
    if (ETHOXYLATED.test(name)) expected.add('holdsOxyethylene');
    if (asked === 'isMultivalentSalt' || /^Magnesium Sulfate$/.test(name))
      for (const one of ['isMultivalentSalt', 'isElectrolyte'] as const) expected.add(one);
    expect(found(name)).toEqual(ASKED.filter((one) => expected.has(one)));
  });

  it('is known in capitals, and within what a supplier wrote into one name', () => {
    for (const name of names) {
      expect(recognise[asked](material(name.toUpperCase())), name).toBe(true);
      expect(recognise[asked](material(`Glycerin (and) ${name}`)), name).toBe(true);
    }
  });
});

describe('a name that only looks like one', () => {
  it.each([
    ['Glycerin'],
    ['Sodium Lauroamphoacetate'],
    ['Cocamidopropyl Betaine'],
    ['Lauramine Oxide'],
    ['Quaternium-18 Bentonite'],
    ['Stearalkonium Hectorite'],
    ['Zinc Stearate'],
    ['Magnesium Stearate'],
    ['Azelaic Acid'],
    ['Lanolin Acid'],
    ['Acrylates/Dimethicone Copolymer'],
    ['Polyacrylamide'],
    ['Guar Gum'],
    ['Hydroxyethylcellulose'],
    ['PPG-15 Stearyl Ether'],
    ['Polyglyceryl-3 Diisostearate'],
    ['Talc'],
    ['Zinc Oxide'],
    ['Citric Acid'],
    ['Octyldodecanol'],
    ['Isostearyl Alcohol'],
    ['Lauryl Alcohol'],
    ['Aloe Barbadensis Leaf Juice Powder'],
    ['Aloe Barbadensis Leaf Extract'],
    ['Nymphaea Alba (Water Lily) Flower Extract'],
    ['Watermelon Seed Oil'],
    ['Quaternium-15'],
    ['Cetyl Palmitate'],
    ['Ethylhexyl Stearate'],
    ['Sorbitan Olivate'],
    ['Cetearyl Olivate'],
    ['Glyceryl Stearate'],
    ['Butyrospermum Parkii Butter'],
    ['Ascorbyl Palmitate'],
    ['Carboxymethyl Chitosan'],
  ])('%s is none of them', (name) => expect(found(name)).toEqual([]));
});

describe('what is recorded', () => {
  it.each([
    ['isBase', 'base'],
    ['isElectrolyte', 'electrolyte'],
    ['isChelator', 'chelator'],
  ] as const)('counts before the name: %s', (asked, named) => {
    expect(recognise[asked]({ ...material('Invented Substance'), functions: [named] })).toBe(true);
    expect(recognise[asked](material('Invented Substance'))).toBe(false);
  });

  it('a fatty acid needs a base where it is an emulsifier, carbomer always, both where it is recorded', () => {
    const needs = (inci: string, functions: 'emulsifier'[], needsNeutralising: boolean | null) =>
      recognise.needsBase({ ...material(inci), functions, needsNeutralising: needsNeutralising ?? false });
    expect(needs('Stearic Acid', [], null)).toBe(false);
    expect(needs('Stearic Acid', ['emulsifier'], null)).toBe(true);
    expect(needs('Carbomer', [], null)).toBe(true);
    expect(needs('Sodium Carbomer', [], null)).toBe(false);
    expect(needs('Invented Polymer', [], true)).toBe(true);
  });

  it('salt tolerance goes before what the name says', () => {
    const sensitive = (inci: string, electrolyteTolerance: 'low' | 'high' | null) =>
      recognise.isSaltSensitive({ ...material(inci), electrolyteTolerance });
    expect(sensitive('Carbomer', null)).toBe(true);
    expect(sensitive('Carbomer', 'high')).toBe(false);
    expect(sensitive('Glycerin', 'low')).toBe(true);
    expect(sensitive('Glycerin', null)).toBe(false);
  });
});
