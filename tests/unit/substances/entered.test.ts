import { blankSubstance, substanceContent, type SubstanceContent } from '@core/substances/substance';
import { SUBSTANCE } from '@core/substances/noun';
import { describe, expect, it } from 'vitest';

/** What is said of a blank substance with one thing entered; empty where it is taken. */
function said(entered: Partial<Record<keyof SubstanceContent, unknown>>): string {
  const { error } = substanceContent.safeParse({ ...blankSubstance('Invented Ester'), ...entered });
  return (error?.issues ?? []).map(({ message }) => message).join(' | ');
}
const names = (...list: string[]): { name: string }[] => list.map((name) => ({ name }));
const as = (countedAs: string, perMole: unknown) => [{ countedAs, perMole }];

describe('a substance', () => {
  it('of which nothing but the name is known may be entered, and is called by it', () => {
    expect(said({})).toBe('');
    expect(SUBSTANCE.titleOf(blankSubstance('Invented Ester'))).toBe('Invented Ester');
  });

  it.each([
    ['name', ''],
    ['name', '   '],
    ['name', 'x'.repeat(301)],
    ['name', 'two\nlines'],
    ['usName', 'x'.repeat(301)],
    ['colourIndex', 'x'.repeat(31)],
    ['cas', 'x'.repeat(201)],
    ['podKind', 'x'.repeat(301)],
    ['safetySource', 'x'.repeat(501)],
    ['hansenSource', 'x'.repeat(501)],
    ['allergenList', 'some list'],
    ['cmrClass', '3'],
  ] as const)('is refused with %s “%.12s”', (field, value) => expect(said({ [field]: value })).not.toBe(''));

  it.each([
    ['name', 'α-Isomethyl Ionone'],
    ['name', 'x'.repeat(300)],
    ['name', 'Ölsäure, 油酸'],
    ['cas', '99-49-0, 6485-40-1'],
    ['allergenList', 'added 2023'],
    ['allergenList', null],
    ['cmrClass', 'not classed'],
    ['cmrClass', null],
    ['notes', 'two\nlines'],
  ] as const)('is taken with %s “%.20s”', (field, value) => expect(said({ [field]: value })).toBe(''));
});

describe('the figures of a substance', () => {
  it.each([
    ['molarMass', 0, /The molar mass must be above zero\./],
    ['molarMass', -1, /The molar mass must be above zero\./],
    ['molarMass', 10_000_001, /The molar mass cannot be above 10000000\./],
    ['molarMass', Number.NaN, /Write The molar mass as a number\./i],
    ['pod', 0, /The point of departure must be above zero\./],
    ['oralBioavailability', -0.1, /The oral bioavailability cannot be negative\./],
    ['oralBioavailability', 100.1, /The oral bioavailability cannot be above 100 %\./],
    ['dermalAbsorption', -1, /The dermal absorption cannot be negative\./],
    ['dermalAbsorption', 101, /The dermal absorption cannot be above 100 %\./],
    ['absorbedPerArea', 0, /The amount absorbed must be above zero\./],
    ['hansenD', -0.1, /dispersion cannot be negative\./],
    ['hansenP', 100.1, /polar cannot be above 100\./],
    ['hansenH', -5, /hydrogen bonds cannot be negative\./],
    ['hansenRadius', 0, /The radius must be above zero\./],
    ['hansenRadius', 101, /The radius cannot be above 100\./],
  ] as const)('%s of %d is refused in words', (field, value, words) =>
    expect(said({ [field]: value })).toMatch(words),
  );

  it.each([
    ['molarMass', 10_000_000],
    ['molarMass', 0.001],
    ['oralBioavailability', 0],
    ['oralBioavailability', 100],
    ['dermalAbsorption', 0],
    ['dermalAbsorption', 100],
    ['hansenP', 0],
    ['hansenD', 100],
    ['pod', 1_000_000],
    ['molarMass', null],
    ['pod', null],
    ['hansenRadius', null],
  ] as const)('%s of %s is taken', (field, value) => expect(said({ [field]: value })).toBe(''));
});

describe('the other names and groups of a substance', () => {
  it.each([
    ['synonyms', names('Oxybenzone', 'oxybenzone'), /The same name is there twice\. Keep it once\./],
    ['groups', names('Parabens', 'Parabens'), /The same name is there twice/],
    ['synonyms', names(...Array.from({ length: 201 }, (_, n) => `Name ${n}`)), /200 other names at most/],
    ['synonyms', names('x'.repeat(301)), /./],
  ] as const)('%s are refused', (field, list, words) => expect(said({ [field]: list })).toMatch(words));

  it('are taken up to two hundred, and where they differ in an accent', () => {
    expect(said({ synonyms: names(...Array.from({ length: 200 }, (_, n) => `Name ${n}`)) })).toBe('');
    expect(said({ synonyms: names('Acide béhénique', 'Acide behenique') })).toBe('');
  });
});

describe('what a substance is counted as', () => {
  it.each([
    [as('Zinc', 0), /The count must be above zero\./],
    [as('Zinc', -1), /The count must be above zero\./],
    [as('Zinc', 101), /That is more than any molecule holds\./],
    [as('Zinc', 'two'), /Write the count as a number\./],
    [Array.from({ length: 21 }, () => as('Zinc', 1)[0]), /Twenty are enough\./],
  ] as const)('%j is refused', (equivalents, words) => expect(said({ equivalents })).toMatch(words));

  it.each([[as('Zinc', 1)], [as('Lactic Acid', 2)], [as('Fluorine', 0.5)], [as('Zinc', 100)], [[]]])(
    '%j is taken',
    (equivalents) => expect(said({ equivalents })).toBe(''),
  );
});

describe('the formula of a substance', () => {
  it.each(['C7H5NaO2', 'ZnSO4·7H2O', 'Mg3Si4O12H2', 'Al2(SO4)3', 'C₁₂H₂₂O₁₁', ''])(
    '“%s” is taken',
    (formula) => expect(said({ formula })).toBe(''),
  );

  it.each([
    ['C7H5Xx', /“Xx” is not an element/],
    ['Na(Cl', /a “\)” is missing/],
    ['()', /a bracket is empty/],
    ['C0H4', /a count is zero/],
    ['water', /is not an element/],
  ] as const)('“%s” is refused, and says how formulas are written', (formula, words) => {
    expect(said({ formula })).toMatch(words);
    expect(said({ formula })).toMatch(/Write it like C18H36O2/);
  });
});
