import { describe, expect, it } from 'vitest';
import { checkFormula } from '@core/checks/all';
import { KNOWN_CMR } from '@core/substances/classes';
import { hansenOf } from '@core/solubility/parameters-of';
import { PUBLISHED_HANSEN } from '@core/solubility/published-parameters';
import { blankSubstance, substanceContent, type SubstanceContent } from '@core/substances/substance';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { substanceIndex } from '@core/substances/substance-index';
import { content, make, phase } from '../checks/build';
import { EXAMPLES, kept } from '../limits/law';

const table = (parts: Partial<SubstanceContent> & { name: string }) => [
  kept<SubstanceContent>({ ...blankSubstance(parts.name), ...parts }),
];
const classedIn = (inci: string, substances: ReturnType<typeof table>) => {
  const one = make('Line', inci);
  const law = { substances, limits: [] };
  const found = checkFormula({
    ...{
      content: content([phase([[one, 1]])]),
      materials: new Map([[one.id, one]]),
      law,
      onDay: '2026-11-28',
    },
  });
  return found.filter(({ ruleId }) => ruleId === 'classified').map(({ severity }) => severity);
};

describe('what a maker records of a substance', () => {
  it('classes it as CMR, or takes a class back that is known of it', () => {
    expect(classedIn('Invented Oxide', table({ name: 'Invented Oxide', cmrClass: '1A or 1B' }))).toEqual([
      'warn',
    ]);
    expect(classedIn('Salicylic Acid', table({ name: 'Salicylic Acid' }))).toEqual(['note']);
    expect(classedIn('Salicylic Acid', table({ name: 'Salicylic Acid', cmrClass: 'not classed' }))).toEqual(
      [],
    );
    // By any of its names.
    const named = table({ name: 'Invented Oxide', cmrClass: '2', synonyms: [{ name: 'Old Oxide' }] });
    expect(classedIn('Old Oxide', named)).toEqual(['note']);
  });

  it('gives it Hansen parameters that go before the published ones, once all three are there', () => {
    const own = { hansenD: 17, hansenP: 3, hansenH: 5, hansenRadius: 6 };
    const of = (parts: Partial<SubstanceContent>) =>
      hansenOf('Squalane', substanceIndex(table({ name: 'Squalane', ...parts })));
    expect(of(own)).toEqual({ d: 17, p: 3, h: 5, radius: 6 });
    expect(of({ ...own, hansenH: null })).toMatchObject({ d: 15.63, p: 0, h: 0 });
    expect(hansenOf('Niacinamide', substanceIndex([]))).toBeNull();
    // Nought is a figure.
    expect(of({ hansenD: 15, hansenP: 0, hansenH: 0 })).toMatchObject({ d: 15, p: 0 });
  });
});

describe('the examples that a library begins with', () => {
  it('hold every class and every parameter that is known, as data that can be changed', () => {
    const index = substanceIndex(EXAMPLES.substances);
    for (const [name, cmr] of Object.entries(KNOWN_CMR)) expect(index.find(name)?.cmrClass, name).toBe(cmr);
    for (const [inci, { d, p, h, radius }] of PUBLISHED_HANSEN)
      expect(index.find(inci), inci).toMatchObject({
        ...{ hansenD: d, hansenP: p, hansenH: h, hansenRadius: radius },
      });
    for (const one of starterSubstances())
      expect(substanceContent.safeParse(one).success, one.name).toBe(true);
  });
});
