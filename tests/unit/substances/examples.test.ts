import fc from 'fast-check';
import { KNOWN_CMR, cmrClassOf } from '@core/substances/classes';
import { molarMassOf } from '@core/substances/counted-as';
import { formulaText } from '@core/substances/fields';
import { nameKey, namesWithin } from '@core/substances/names';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { blankSubstance, substanceContent, type SubstanceContent } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { EXAMPLES, kept } from '../limits/law';

const all = starterSubstances();
const index = substanceIndex(EXAMPLES.substances);

/** The last digit of a CAS number: the others, from the right, each times its place, modulo ten (CAS, Check Digit Verification). */
function hasCheckDigit(cas: string): boolean {
  const digits = cas.replace(/\D/g, '');
  const body = [...digits.slice(0, -1)].reverse();
  return body.reduce((sum, one, at) => sum + Number(one) * (at + 1), 0) % 10 === Number(digits.at(-1));
}

describe('the example substances', () => {
  it('have CAS numbers whose check digit is right', () => {
    // Water 7732-18-5 and sodium chloride 7647-14-5 as anchors of the rule.
    expect(['7732-18-5', '7647-14-5', '7732-18-4'].map(hasCheckDigit)).toEqual([true, true, false]);
    const numbers = all.flatMap(({ name, cas }) =>
      cas.split(/[,;/]\s*|\s+/).flatMap((one) => (one === '' ? [] : [[name, one] as const])),
    );
    expect(numbers.length).toBeGreaterThan(50);
    for (const [name, cas] of numbers) {
      expect(cas, name).toMatch(/^\d{2,7}-\d{2}-\d$/);
      expect(hasCheckDigit(cas), `${name} ${cas}`).toBe(true);
    }
  });

  it('have colour index numbers of five digits, each on one substance', () => {
    const numbers = all.flatMap(({ colourIndex }) => (colourIndex === '' ? [] : [colourIndex]));
    expect(numbers.length).toBeGreaterThan(5);
    for (const one of numbers) expect(one).toMatch(/^CI \d{5}(:\d)?$/);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  it('are found by every name that is theirs alone, and by none of another', () => {
    const owners = new Map<string, Set<string>>();
    for (const one of EXAMPLES.substances)
      for (const name of [one.name, one.usName, one.colourIndex, ...one.synonyms.map((each) => each.name)])
        if (name !== '') {
          const key = nameKey(name);
          owners.set(key, (owners.get(key) ?? new Set()).add(one.id));
        }
    for (const one of EXAMPLES.substances)
      for (const name of [one.usName, one.colourIndex, ...one.synonyms.map((each) => each.name)]) {
        if (name === '' || (owners.get(nameKey(name))?.size ?? 0) > 1) continue;
        expect(index.find(name)?.name, name).toBe(one.name);
        expect(index.find(name.toUpperCase())?.name, name).toBe(one.name);
      }
  });

  it('are not read apart by their own names: none is what suppliers write of several', () => {
    for (const { name } of all) expect(namesWithin(name), name).toEqual([name]);
  });

  it('weigh what a salt and its acid differ by: a sodium for a hydrogen is 21.98 g/mol more', () => {
    const mass = (name: string): number => molarMassOf(index.find(name)!)!;
    // IUPAC abridged weights: Na 22.990, K 39.098, H 1.008.
    expect(mass('Sodium Benzoate') - mass('Benzoic Acid')).toBeCloseTo(22.99 - 1.008, 2);
    expect(mass('Potassium Sorbate') - mass('Sorbic Acid')).toBeCloseTo(39.098 - 1.008, 2);
    expect(mass('Sodium Salicylate') - mass('Salicylic Acid')).toBeCloseTo(22.99 - 1.008, 2);
    // A homologue is a methylene more: C 12.011, 2 H.
    expect(mass('Ethylparaben') - mass('Methylparaben')).toBeCloseTo(14.027, 2);
    expect(mass('Butylparaben') - mass('Propylparaben')).toBeCloseTo(14.027, 2);
  });

  it('that share an allergen’s label are of one list and one group', () => {
    const byLabel = new Map<string, SubstanceContent[]>();
    for (const one of all)
      if (one.allergenLabel !== '')
        byLabel.set(one.allergenLabel, [...(byLabel.get(one.allergenLabel) ?? []), one]);
    for (const [label, members] of byLabel)
      expect(new Set(members.map(({ allergenList }) => allergenList)).size, label).toBe(1);
    expect(
      all.filter(({ allergenList, allergenLabel }) => allergenList !== null && allergenLabel === ''),
    ).toEqual([]);
  });
});

describe('a class as CMR', () => {
  // Regulation (EC) No 1272/2008, Annex VI, from memory: carcinogenic or toxic to reproduction, and in which category.
  it.each([
    ['Formaldehyde', '1A or 1B'],
    ['Boric Acid', '1A or 1B'],
    ['Butylphenyl Methylpropional', '1A or 1B'],
    ['Zinc Pyrithione', '1A or 1B'],
    // Repr. 2 (H361f): its siblings of five and six units are not classed at all.
    ['Cyclotetrasiloxane', '2'],
    ['Cyclopentasiloxane', null],
    ['Cyclohexasiloxane', null],
    ['Hydroquinone', '2'],
    ['Toluene', '2'],
    ['Glycerin', null],
    ['Phenoxyethanol', null],
  ] as const)('of %s is %s', (name, cmr) => expect(cmrClassOf(name, index)).toBe(cmr));

  it('is known of a name however it is written, and a maker’s own word goes before', () => {
    for (const [name, cmr] of Object.entries(KNOWN_CMR)) {
      expect(cmrClassOf(name.toUpperCase(), index), name).toBe(cmr);
      expect(cmrClassOf(name, substanceIndex([])), name).toBe(cmr);
    }
    const own = substanceIndex([
      kept({ ...blankSubstance('Salicylic Acid'), cmrClass: 'not classed' as const }),
    ]);
    expect(cmrClassOf('salicylic acid', own)).toBeNull();
    expect(cmrClassOf('Glycerin', index)).toBeNull();
    // Of several that a supplier wrote into one the gravest counts, wherever it stands.
    expect(cmrClassOf('Glycerin (and) Salicylic Acid', index)).toBe('2');
    expect(cmrClassOf('Salicylic Acid (and) Formaldehyde (and) Glycerin', index)).toBe('1A or 1B');
  });
});

describe('what may be entered of a substance', () => {
  const said = (part: Partial<SubstanceContent>): string[] =>
    substanceContent
      .safeParse({ ...blankSubstance('Urea'), ...part })
      .error?.issues.map(({ message }) => message) ?? [];
  it.each([
    [{}, []],
    [{ name: ' ' }, ['Give the substance’s name.']],
    [{ molarMass: 0 }, ['The molar mass must be above zero.']],
    [{ molarMass: 10_000_001 }, ['The molar mass cannot be above 10000000.']],
    [{ dermalAbsorption: 101 }, ['The dermal absorption cannot be above 100 %.']],
    [{ oralBioavailability: -1 }, ['The oral bioavailability cannot be negative.']],
    [{ pod: 0 }, ['The point of departure must be above zero.']],
    [{ hansenD: -0.1 }, ['Hansen parameter, dispersion cannot be negative.']],
    [{ equivalents: [{ countedAs: 'Zinc', perMole: 0 }] }, ['The count must be above zero.']],
    [
      { synonyms: [{ name: 'Carbamide' }, { name: 'CARBAMIDE' }] },
      ['The same name is there twice. Keep it once.'],
    ],
  ] as [Partial<SubstanceContent>, string[]][])('%j: %j', (part, messages) =>
    expect(said(part)).toEqual(messages),
  );

  it('a formula that can be read, or none', () => {
    expect(['', 'C7H6O2', 'CuSO4·5H2O'].every((one) => formulaText.safeParse(one).success)).toBe(true);
    for (const written of ['C7H6Q2', 'water', 'C7(H6'])
      expect(formulaText.safeParse(written).error?.issues[0]?.message ?? '', written).not.toBe('');
  });

  it('any formula of real elements weighs the sum of its atoms, whichever order they stand in', () => {
    const elements = { C: 12.011, H: 1.008, O: 15.999, N: 14.007, Na: 22.99, Cl: 35.45 };
    const atoms = fc.uniqueArray(
      fc.tuple(
        fc.constantFrom(...(Object.keys(elements) as (keyof typeof elements)[])),
        fc.integer({ min: 1, max: 60 }),
      ),
      { minLength: 1, maxLength: 6, selector: ([element]) => element },
    );
    fc.assert(
      fc.property(atoms, (parts) => {
        const written = parts.map(([element, count]) => `${element}${count === 1 ? '' : count}`).join('');
        const mass = parts.reduce((sum, [element, count]) => sum + elements[element] * count, 0);
        expect(molarMassOf({ formula: written, molarMass: null })).toBeCloseTo(mass, 1);
      }),
    );
  });
});
