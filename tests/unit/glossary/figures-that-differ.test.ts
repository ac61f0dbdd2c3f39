import { FORM_KEYS } from '@core/calculators/all-forms';
import { calculateForm, formOf } from '@core/calculators/form-calculation';
import { daviesHlb } from '@core/emulsions/davies';
import { griffinEthoxylate } from '@core/emulsions/griffin';
import { WHERE_FIGURES_DIFFER } from '@core/glossary/where-figures-differ';
import { GLOSSARY, TERM_KEYS, TERMS, termsFor, type TermKey } from '@core/glossary/glossary';
import type { Term } from '@core/glossary/term';
import { sampleCorrectionFactor } from '@core/net-contents/us-packages';
import { theoreticalAcidValue } from '@core/neutralisation/neutralise';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { smilesOfPick } from '@core/structure/chain-and-head';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';

const said = (of: string): string => {
  const found = WHERE_FIGURES_DIFFER.find((one) => one.of === of);
  if (!found) throw new Error(`Nothing is said of ${of}.`);
  return found.figures;
};

describe('where figures differ, the figures are those of the tables and of our own computing', () => {
  const oils = publishedValues(
    'required-hlb',
    z.array(
      z.object({
        inci: z.string(),
        byList: z.array(z.object({ ow: z.union([z.number(), z.string()]).nullable() })).default([]),
      }),
    ),
  );
  const ends = (text: string | number): number[] => (String(text).match(/\d+(\.\d+)?/g) ?? []).map(Number);
  const printed = (oil: RegExp): number[] =>
    oils
      .filter(({ inci }) => oil.test(inci))
      .flatMap(({ byList }) => byList.flatMap(({ ow }) => ends(ow ?? '')));

  it.each([
    [/^Paraffinum Liquidum \(mineral oil\), paraffinic/, [10, 10.5, 12]],
    [/^Petrolatum/, [7, 12]],
    [/^Cera Alba|^Beeswax/, [9, 16]],
    [/^Cetyl Alcohol/, [13, 16]],
  ] as const)('required HLB of %s is in print as it is told', (oil, figures) => {
    const all = printed(oil);
    for (const one of figures) expect(all, String(one)).toContain(one);
    const text = said('Required HLB of one oil');
    for (const one of figures) expect(text).toContain(String(one));
    expect(Math.min(...all)).toBeGreaterThanOrEqual(Math.min(...figures));
  });

  it('laureth-6 is 11.7 by Griffin and 5.2 by Davies', () => {
    const read = readStructure(smilesOfPick('c12', 'peg-ether', 6));
    const griffin = griffinEthoxylate(read.oxyethylenePercent).value.toFixed(1);
    const davies = daviesHlb(read.groups).value.toFixed(1);
    expect(said('Griffin’s and Davies’ HLB')).toContain(`laureth-6 is ${griffin} and ${davies}`);
  });

  it('sodium lauryl sulfate is 40 by Davies’ own count', () => {
    const { groups } = readStructure(smilesOfPick('c12', 'sulfate-na', null));
    expect(daviesHlb(groups).value).toBeCloseTo(40, 9);
    expect(said('HLB above 20')).toContain('Sodium lauryl sulfate 40');
  });

  it('pure stearic acid has the acid value that its molar mass gives', () => {
    const { value } = theoreticalAcidValue(molarMassOfFormula('C18H36O2').value, 1);
    expect(said('Acid value of stearic acid')).toContain(`pure stearic acid ${value.toFixed(0)}.`);
  });

  it('at pH 4 benzoic acid of those pKas is undissociated as far as it is told', () => {
    // 1 / (1 + 10^(4 − pKa)), by hand.
    const share = (pKa: number): string => (100 / (1 + 10 ** (4 - pKa))).toFixed(0);
    expect(said('pKa of benzoic acid')).toContain(
      `4.16 to 4.20. At pH 4 the undissociated share is ${share(4.16)} to ${share(4.2)} %`,
    );
  });

  it('the factor of 48 packages is 0.290 by the rule', () => {
    expect(said('US sample factor of 48 packages')).toContain(sampleCorrectionFactor(48).value.toFixed(3));
  });

  it('the shelf life that is printed wrongly is what its readings give', () => {
    // Chow, bottle 5: the readings as printed, with 28.6 beside them (the reference’s disagreements).
    const { results } = calculateForm({
      ...{ of: 'form', form: 'trend-shelf-life', values: { limit: 90 } },
      rows: [106.1, 104.3, 101.5, 101.1, 99.4, 98.2].map((reading, index) => ({
        month: [0, 3, 6, 9, 12, 18][index] ?? null,
        reading,
      })),
    });
    expect(said('Published shelf lives')).toContain(
      `28.6 months where its own readings give ${results[0]?.worked.value.toFixed(1)}`,
    );
  });

  it('each is told once, in sentences, with what to do', () => {
    expect(new Set(WHERE_FIGURES_DIFFER.map(({ of }) => of)).size).toBe(WHERE_FIGURES_DIFFER.length);
    for (const { of, figures, advice } of WHERE_FIGURES_DIFFER) {
      expect(figures, of).toMatch(/\d.*\.$|change/);
      expect(advice, of).toMatch(/\.$/);
    }
  });
});

describe('a search among the words', () => {
  it('finds every word first by its own name, however it is typed', () => {
    for (const { key, term } of TERMS)
      for (const typed of [term, term.toUpperCase(), `  ${term} `])
        expect(termsFor(typed)[0]?.key, typed).toBe(key);
  });

  it('finds every word by each other name that it has', () => {
    for (const key of TERM_KEYS)
      for (const other of (GLOSSARY[key] as Term).also ?? [])
        expect(
          termsFor(other).map((one) => one.key),
          other,
        ).toContain(key);
  });

  it('narrows with every letter: what a longer text finds, a shorter one found too', () => {
    for (const word of ['emulsifier', 'saponification', 'phase inversion', 'required hlb'])
      for (let end = 1; end < word.length; end += 1) {
        const fewer = termsFor(word.slice(0, end + 1)).map(({ key }) => key);
        const more = new Set<TermKey>(termsFor(word.slice(0, end)).map(({ key }) => key));
        expect(fewer.filter((key) => !more.has(key))).toEqual([]);
      }
  });

  it('explains every word by which a form’s label is marked', () => {
    const marked = FORM_KEYS.flatMap((key) => [...formOf(key).fields, ...(formOf(key).lines?.columns ?? [])]);
    const terms = marked.flatMap(({ term, label }) => (term ? [[term, label] as const] : []));
    expect(terms.length).toBeGreaterThan(5);
    for (const [term, label] of terms) {
      const { term: word, also = [], says } = GLOSSARY[term] as Term;
      const words = [word, ...also, says].join(' ').toLowerCase();
      expect(
        label
          .toLowerCase()
          .split(' ')
          .some((one) => words.includes(one)),
        `${label}: ${word}`,
      ).toBe(true);
    }
  });
});
