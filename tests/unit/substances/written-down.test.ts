import { marginOfSafety, systemicExposureDose, type Dose } from '@core/exposure/exposure';
import { fieldDifferences } from '@core/record/differences';
import { SUBSTANCE_FIELDS, SUBSTANCE_SECTIONS } from '@core/substances/fields';
import { nameKey } from '@core/substances/names';
import { SUBSTANCE } from '@core/substances/noun';
import { starterContent } from '@core/substances/starter/entry';
import { onlyKnownData, withKnownData } from '@core/substances/starter/more-data';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { blankSubstance, type SubstanceContent } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../limits/law';

const index = substanceIndex(EXAMPLES.substances);

describe('the figures of an example for a safety assessment', () => {
  const at = (name: string, dose: (one: NonNullable<ReturnType<typeof index.find>>) => Dose): number => {
    const one = index.find(name)!;
    const from = { pod: one.pod ?? 0, oralBioavailabilityPercent: one.oralBioavailability ?? 100 };
    return marginOfSafety(from, dose(one)).value;
  };
  const share =
    (amountGramsPerDay: number, concentrationPercent: number) =>
    (one: { dermalAbsorption: number | null }): Dose => ({
      use: { amountGramsPerDay, bodyWeight: 60, retention: 1 },
      concentrationPercent,
      absorptionPercent: one.dermalAbsorption ?? 0,
    });

  // Why the annex asks just these shares: the committee's opinions on homosalate, benzophenone-3 and octocrylene, from memory.
  it('of homosalate leave a margin of 100 at 7.34 % in a face cream, 1.54 g a day, and not a tenth of it on the whole body', () => {
    // 25.667 × 0.0734 × 0.053 = 0.09985; 10 / 0.09985
    expect(at('Homosalate', share(1.54, 7.34))).toBeCloseTo(100.2, 1);
    // On the whole body, 18 g: 300 × 0.0734 × 0.053 = 1.167.
    expect(at('Homosalate', share(18, 7.34))).toBeLessThan(10);
  });

  it('of benzophenone-3 leave 104 at 2.2 % on the whole body, and 6 % not a half of 100', () => {
    // 300 × 0.022 × 0.099 = 0.6534; 67.9 / 0.6534
    expect(at('Benzophenone-3', share(18, 2.2))).toBeCloseTo(103.9, 1);
    expect(at('Benzophenone-3', share(18, 6))).toBeLessThan(50);
    expect(at('Benzophenone-3', share(1.54, 6))).toBeGreaterThan(100);
  });

  it('of octocrylene leave 135 by what is absorbed per area: 0.97 µg/cm² on 17 500 cm² twice a day', () => {
    const perArea = (one: { absorbedPerArea: number | null }): Dose => ({
      absorbedPerArea: one.absorbedPerArea ?? 0,
      area: 17_500,
      applicationsPerDay: 2,
      bodyWeight: 60,
    });
    // 0.97 × 17500 × 2 × 0.001 / 60 = 0.56583; 153 × 50 % / 0.56583
    expect(systemicExposureDose(perArea(index.find('Octocrylene')!)).value).toBeCloseTo(0.56583, 5);
    expect(at('Octocrylene', perArea)).toBeCloseTo(135.2, 1);
  });

  it('stand with their source wherever there is one, and say that they are examples', () => {
    for (const { name, pod, safetySource, dermalAbsorption, absorbedPerArea } of EXAMPLES.substances)
      if (pod !== null || dermalAbsorption !== null || absorbedPerArea !== null)
        expect(safetySource, name).toMatch(/^example: /);
  });
});

describe('an example as it is written down', () => {
  it('of which only the name is said is a substance of which nothing else is known', () => {
    expect(starterContent({ name: 'Invented Wax' })).toEqual(blankSubstance('Invented Wax'));
  });

  it('takes its other names, groups and equivalents apart into rows, and leaves the rest alone', () => {
    const one = starterContent({
      name: 'Invented Salt',
      also: ['Old Salt', 'Salt I'],
      groups: ['Invented salts'],
      as: [['Invented Acid', 2]],
      allergen: 'added 2023',
      allergenLabel: 'Salts',
    });
    expect(one).toMatchObject({
      synonyms: [{ name: 'Old Salt' }, { name: 'Salt I' }],
      groups: [{ name: 'Invented salts' }],
      equivalents: [{ countedAs: 'Invented Acid', perMole: 2 }],
      allergenList: 'added 2023',
      allergenLabel: 'Salts',
      molarMass: null,
      pod: null,
    });
    // What is no field of a substance does not stay on it.
    expect(Object.keys(one).sort()).toEqual(Object.keys(blankSubstance('x')).sort());
  });

  it('gets the class that is known of it by any of its names, but keeps one that it has', () => {
    expect(withKnownData({ ...blankSubstance('Salt of Old'), usName: 'Salicylic Acid' }).cmrClass).toBe('2');
    const own = { ...blankSubstance('Salicylic Acid'), cmrClass: 'not classed' as const };
    expect(withKnownData(own).cmrClass).toBe('not classed');
    expect(withKnownData(blankSubstance('Invented Wax'))).toEqual(blankSubstance('Invented Wax'));
  });

  it('has all three Hansen parameters with a source, or none of them', () => {
    for (const { name, hansenD, hansenP, hansenH, hansenSource } of starterSubstances()) {
      const known = [hansenD, hansenP, hansenH].filter((one) => one !== null).length;
      expect([0, 3], name).toContain(known);
      expect(hansenSource !== '', name).toBe(known === 3);
    }
  });

  it('of which only a class or a solubility is known is added once, and never beside one of that name', () => {
    const all = onlyKnownData([]).map(({ name }) => nameKey(name));
    expect(new Set(all).size).toBe(all.length);
    expect(all).toContain(nameKey('Formaldehyde'));
    const others = [{ ...blankSubstance('Other'), synonyms: [{ name: 'FORMALDEHYDE' }] }];
    const rest = onlyKnownData(others).map(({ name }) => nameKey(name));
    expect(rest).toEqual(all.filter((name) => name !== 'formaldehyde'));
  });
});

describe('what changed of a substance, as its history tells it', () => {
  const was: SubstanceContent = { ...blankSubstance('Lactate'), molarMass: 112.06 };
  const told = (parts: Partial<SubstanceContent>) =>
    fieldDifferences(SUBSTANCE_FIELDS, was, { ...was, ...parts }, 'en-GB').map(({ label, after }) => [
      label,
      after,
    ]);

  it.each([
    [{ synonyms: [{ name: 'Old' }, { name: 'Older' }] }, 'Other names', 'Old; Older'],
    [{ groups: [{ name: 'Salts' }] }, 'Groups that a limit may name', 'Salts'],
    [
      { equivalents: [{ countedAs: 'Lactic Acid', perMole: 2 }] },
      'What limits count it as',
      '2 Lactic Acid per molecule',
    ],
    [{ cas: '72-17-3' }, 'CAS numbers', '72-17-3'],
    [{ cmrClass: '2' }, 'Classed as CMR, category', '2'],
  ] as [Partial<SubstanceContent>, string, string][])('%j', (parts, label, after) => {
    expect(told(parts)).toEqual([[label, after]]);
  });

  it('is nothing where nothing differs, and each field where several do', () => {
    expect(told({})).toEqual([]);
    expect(told({ pod: 10, podKind: 'NOAEL' }).map(([label]) => label)).toEqual([
      'Point of departure',
      'What study and effect it is of',
    ]);
  });
});

describe('the record of a substance', () => {
  it('is read as it was kept, called by its name, and judges the versions of formulas', () => {
    const one = { ...blankSubstance('Invented Wax'), cas: '1-2-3' };
    expect(SUBSTANCE.read(one)).toEqual(one);
    expect(SUBSTANCE.titleOf(one)).toBe('Invented Wax');
    expect(SUBSTANCE.judgesVersions).toBe(true);
    expect(() => SUBSTANCE.read({ ...one, molarMass: 'heavy' })).toThrow();
  });

  it('has every field in a part of its form that is there', () => {
    const parts = new Set(Object.keys(SUBSTANCE_SECTIONS));
    for (const [key, { section }] of Object.entries(SUBSTANCE_FIELDS))
      expect(parts.has(section), key).toBe(true);
  });
});
