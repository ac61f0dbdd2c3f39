import { cmrClassOf } from '@core/substances/classes';
import { substanceIndex } from '@core/substances/substance-index';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import type { Substance } from '@core/substances/substance';
import { describe, expect, it } from 'vitest';

const NONE = substanceIndex<Substance>([]);

/** Harmonised classes by Regulation (EC) No 1272/2008, Annex VI, from memory. */
describe('a substance that is classed as CMR', () => {
  it.each([
    ['Acrylamide', '1A or 1B', 'Carc. 1B, Muta. 1B'],
    ['Formaldehyde', '1A or 1B', 'Carc. 1B'],
    ['Boric Acid', '1A or 1B', 'Repr. 1B'],
    ['Dibutyl Phthalate', '1A or 1B', 'Repr. 1B'],
    ['Zinc Pyrithione', '1A or 1B', 'Repr. 1B'],
    ['Benzophenone', '1A or 1B', 'Carc. 1B'],
    ['Trimethylbenzoyl Diphenylphosphine Oxide', '1A or 1B', 'Repr. 1B'],
    ['Butylphenyl Methylpropional', '1A or 1B', 'Repr. 1B'],
    ['Polyaminopropyl Biguanide', '2', 'Carc. 2'],
    ['Quaternium-15', '2', 'Repr. 2, of its cis form'],
    ['Hexane', '2', 'Repr. 2'],
    ['Toluene', '2', 'Repr. 2'],
    ['Salicylic Acid', '2', 'Repr. 2'],
    ['Cyclotetrasiloxane', '2', 'Repr. 2'],
    ['Furfural', '2', 'Carc. 2'],
    ['Hydroquinone', '2', 'Carc. 2, Muta. 2'],
  ] as const)('%s is of category %s (%s)', (name, category, _) => {
    expect(cmrClassOf(name, NONE)).toBe(category);
    expect(cmrClassOf(name.toUpperCase(), NONE)).toBe(category);
    const example = starterSubstances().find((one) => one.name === name);
    if (example) expect(example.cmrClass).toBe(category);
  });

  it.each([
    'Phenoxyethanol',
    'Sodium Salicylate',
    'Cyclopentasiloxane',
    'Zinc Oxide',
    // Its class was annulled: General Court, T-279/20 and others, upheld in C-71/23 P and C-82/23 P (from memory).
    'Titanium Dioxide',
    'CI 77891',
    'Hexylene Glycol',
    '1,2-Hexanediol',
    'Polyaminopropyl Biguanide Stearate',
    'Benzophenone-3',
    'Retinol',
    'Propylene Glycol',
    'Isohexadecane',
    'Aqua',
    '',
  ])('“%s” is none, however near its name is', (name) => expect(cmrClassOf(name, NONE)).toBeNull());

  it.each([
    ['Aqua (and) Furfural', '2'],
    ['Furfural (and) Formaldehyde', '1A or 1B'],
    ['Mica (and) CI 77891', null],
    ['CI 77891 (and) Toluene', '2'],
    ['Aqua (and) Glycerin', null],
  ] as const)('of “%s” the gravest is %s', (written, category) =>
    expect(cmrClassOf(written, NONE)).toBe(category),
  );
});
