import fc from 'fast-check';
import { createListIndex } from '@core/lists/list-index';
import { listQuery } from '@core/lists/query';
import { SUBSTANCES_LIST, type SubstanceEntry } from '@core/substances/list';
import { nameKey } from '@core/substances/names';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { EXAMPLES, kept } from '../limits/law';

const index = substanceIndex(EXAMPLES.substances);
const named = (written: string): string | null => index.find(written)?.name ?? null;

describe('a name as suppliers write it', () => {
  it.each([
    ['Deionised Water', 'Aqua'],
    ['Aqua (Water)', 'Aqua'],
    ['Water/Aqua/Eau', 'Aqua'],
    ['Glycerine', 'Glycerin'],
    ['GLYCEROL', 'Glycerin'],
    ['Butyrospermum Parkii (Shea) Butter', 'Butyrospermum Parkii Butter'],
    ['Shea butter', 'Butyrospermum Parkii Butter'],
    ['Mineral Oil', 'Paraffinum Liquidum'],
    ['Simmondsia Chinensis (Jojoba) Seed Oil', 'Simmondsia Chinensis Seed Oil'],
    ['Oxybenzone', 'Benzophenone-3'],
    ['avobenzone', 'Butyl Methoxydibenzoylmethane'],
    ['Bronopol', '2-Bromo-2-Nitropropane-1,3-Diol'],
    ['MIT', 'Methylisothiazolinone'],
    ['CMIT', 'Methylchloroisothiazolinone'],
    ['Lye', 'Sodium Hydroxide'],
    ['TEA', 'Triethanolamine'],
    ['Trolamine', 'Triethanolamine'],
    ['Trolamine Salicylate', 'TEA-Salicylate'],
    ['Vitamin A', 'Retinol'],
    ['D5', 'Cyclopentasiloxane'],
    ['PABA', 'Aminobenzoic Acid'],
    ['d-Limonene', 'Limonene'],
    ['α-Isomethyl Ionone', 'Alpha-Isomethyl Ionone'],
    ['alpha isomethyl ionone', 'Alpha-Isomethyl Ionone'],
    ['C.I. 19140', 'CI 19140'],
    // Lakes and salts of a colour, which the law lists with it.
    ['CI 15850:1', 'CI 15850'],
    ['C.I. 15850:2 (Barium Lake)', 'CI 15850'],
    ['Red pigment (CI 15850:1)', 'CI 15850'],
    ['CI 15850:1/Red 7', 'CI 15850'],
    ['CI19140', 'CI 19140'],
    ['Tartrazine', 'CI 19140'],
    ['Titanium Dioxide (CI 77891)', 'Titanium Dioxide'],
    ['Nano Zinc Oxide', 'Zinc Oxide'],
    ['Zinc sulphate', 'Zinc Sulfate'],
    ['Magnesium Aluminium Silicate', 'Magnesium Aluminum Silicate'],
    ['Isotridecyl Invented', null],
    ['', null],
    ['   ', null],
    ['(nano)', null],
  ])('“%s” is %s', (written, name) => expect(named(written)).toBe(name));

  it.each([
    ['Sodium Benzoate', 'Benzoic Acid'],
    ['Retinol', 'Retinyl Palmitate'],
    ['Cetearyl Alcohol', 'Cetyl Alcohol'],
    ['PEG-40 Stearate', 'PEG-100 Stearate'],
    ['Ceteareth-6', 'Ceteareth-12'],
    ['Arbutin', 'Alpha-Arbutin'],
    ['Zinc Sulfate', 'Zinc Sulfate Heptahydrate'],
    ['Polysorbate 20', 'Polysorbate 80'],
    ['CI 77491', 'CI 77492'],
    ['Benzophenone-3', 'Benzophenone-4'],
  ])('%s is not %s, near as their names are', (one, other) => {
    expect(named(one)).toBe(one);
    expect(named(other)).toBe(other);
    expect(nameKey(one)).not.toBe(nameKey(other));
  });
});

describe('the groups of the examples', () => {
  const members = (group: string): string[] => index.members(group).map(({ name }) => name);

  it.each([
    ['Parabens', 'Methylparaben', true],
    ['Parabens', 'Propylparaben', true],
    ['Parabens', 'Isopropylparaben', false],
    ['Prohibited parabens', 'Isopropylparaben', true],
    ['Prohibited parabens', 'Methylparaben', false],
    ['Methyl- and ethylparaben', 'Propylparaben', false],
    ['Benzoates', 'Sodium Benzoate', true],
    ['Benzoates', 'Potassium Benzoate', true],
    // Annex V, entries 1 and 1a: the acid and its sodium salt are an entry of their own.
    ['Other benzoate salts and esters', 'Sodium Benzoate', false],
    ['Other benzoate salts and esters', 'Benzoic Acid', false],
    ['Formaldehyde releasers', 'DMDM Hydantoin', true],
    ['Formaldehyde releasers', 'Phenoxyethanol', false],
    ['Water-soluble zinc salts', 'Zinc Sulfate', true],
    // Insoluble, and so not of that entry.
    ['Water-soluble zinc salts', 'Zinc Oxide', false],
    ['Iron oxides', 'CI 77492', true],
    ['D4 and D5', 'Cyclohexasiloxane', false],
    ['Alpha-hydroxy acids, their salts and esters', 'Salicylic Acid', false],
  ])('%s holds %s: %s', (group, name, holds) => expect(members(group).includes(name)).toBe(holds));

  it('are known by their names whatever their case, and hold none twice', () => {
    for (const group of index.groups) {
      const all = members(group);
      expect(all.length, group).toBeGreaterThan(0);
      expect(new Set(all).size, group).toBe(all.length);
      expect(members(group.toUpperCase())).toEqual(all);
    }
  });

  it('parabens are parted without overlap: short, long and prohibited', () => {
    const parts = ['Methyl- and ethylparaben', 'Propyl- and butylparaben', 'Prohibited parabens'].flatMap(
      members,
    );
    expect(new Set(parts).size).toBe(parts.length);
    expect([...members('Parabens')].sort()).toEqual(
      ['Methyl- and ethylparaben', 'Propyl- and butylparaben'].flatMap(members).sort(),
    );
  });
});

describe('a table of substances', () => {
  const word = fc.stringMatching(/^[A-Z][a-z]{2,7}$/).filter((one) => !/sulph|alumin|nano|^ci/i.test(one));
  const table = fc
    .uniqueArray(word, { minLength: 2, maxLength: 8, selector: (one) => one.toLowerCase() })
    .map((names) => names.map((name): Substance => kept(blankSubstance(name))));
  const also = (one: Substance, ...names: string[]): Substance => ({
    ...one,
    synonyms: names.map((name) => ({ name })),
  });

  it('finds each by its own name, whatever others are called besides', () => {
    fc.assert(
      fc.property(table, (all) => {
        // Everyone bears the names of all the others as a second name.
        const names = all.map(({ name }) => name);
        const crossed = all.map((one) => also(one, ...names.filter((name) => name !== one.name)));
        const found = substanceIndex(crossed);
        for (const one of crossed) expect(found.find(one.name)).toBe(one);
      }),
      { numRuns: 40 },
    );
  });

  it('gives a second name that two share to neither, and tells both', () => {
    fc.assert(
      fc.property(table, (all) => {
        const shared = all.map((one) => also(one, 'Common Invented Name'));
        const found = substanceIndex(shared);
        expect(found.find('common invented name')).toBeNull();
        expect(found.several('Common Invented Name')).toEqual(shared);
      }),
      { numRuns: 30 },
    );
  });

  it('does not hang on the order of its rows', () => {
    fc.assert(
      fc.property(table, (all) => {
        const [one, other] = [substanceIndex(all), substanceIndex([...all].reverse())];
        for (const { name } of all) expect(one.find(name)).toBe(other.find(name));
      }),
      { numRuns: 30 },
    );
  });

  it('answers a name asked twice alike, and a table of nothing not at all', () => {
    expect(index.find('Aqua')).toBe(index.find('Aqua'));
    const none = substanceIndex<Substance>([]);
    expect([none.find('Aqua'), none.several('Aqua'), none.members('Parabens'), none.groups]).toEqual([
      null,
      [],
      [],
      [],
    ]);
  });
});

describe('the list of substances', () => {
  const entries = EXAMPLES.substances.map((one): SubstanceEntry => ({
    ...one,
    synonyms: one.synonyms.map(({ name }) => name),
    groups: one.groups.map(({ name }) => name),
  }));
  const list = createListIndex(SUBSTANCES_LIST, entries);
  const asked = (text: string, chosen: Record<string, string[]> = {}) =>
    list.search(listQuery(SUBSTANCES_LIST, { text, chosen, limit: 500 }));
  const names = (text: string): string[] => asked(text).rows.map(({ name }) => name);

  it.each([
    ['77891', 'Titanium Dioxide'],
    ['oxybenzone', 'Benzophenone-3'],
    ['122-99-6', 'Phenoxyethanol'],
    ['shea', 'Butyrospermum Parkii Butter'],
    ['bronopol', '2-Bromo-2-Nitropropane-1,3-Diol'],
    ['C8H10O2', 'Phenoxyethanol'],
    ['rose ketones', 'Damascenone'],
    ['glycérine', 'Glycerin'],
  ])('typed “%s” shows %s', (typed, name) => expect(names(typed)).toContain(name));

  it('filters by group, allergen list and class, and says how many each would leave', () => {
    expect(asked('', { allergenList: ['older 26'] }).total).toBe(26);
    const parabens = asked('', { groups: ['Parabens'] });
    expect(parabens.rows.map(({ name }) => name).sort()).toEqual(
      index
        .members('Parabens')
        .map(({ name }) => name)
        .sort(),
    );
    const classed = asked('', { cmrClass: ['1A or 1B'] }).rows.map(({ name }) => name);
    expect(classed).toContain('Formaldehyde');
    expect(classed).not.toContain('Salicylic Acid');
    expect(asked('').counts.allergenList?.['older 26']).toBe(26);
  });

  it('shows all of them in the order of their names where nothing is asked', () => {
    const { total, rows } = asked('');
    expect(total).toBe(entries.length);
    const collator = new Intl.Collator('en', { numeric: true });
    const iron = rows.map(({ name }) => name).filter((name) => /^CI 774|^PEG-/.test(name));
    expect(iron).toEqual([...iron].sort(collator.compare));
  });
});

it('a lake with a substance of its own is that one, and what only looks like a lake is none', () => {
  const own = { ...blankSubstance('CI 15850:1'), id: 'lake' } as Substance;
  expect(substanceIndex([...EXAMPLES.substances, own]).find('C.I. 15850:1')?.id).toBe('lake');
  expect(named('CI 99999:1')).toBeNull();
  expect(named('CI 15850 and 12 others')).toBeNull();
});
