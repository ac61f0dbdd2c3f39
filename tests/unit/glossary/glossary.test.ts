import { describe, expect, it } from 'vitest';
import { GLOSSARY, TERMS, termsFor, type TermKey } from '@core/glossary/glossary';
import { FIGURE_TERMS } from '@core/glossary/of-figures';
import { settings } from '@core/settings/settings';
import { glossarySheet } from '@core/sheets/glossary-sheet';
import { sheetRequest } from '@core/sheets/requests';
import { sourceWords } from '@core/working/source-words';

describe('the glossary', () => {
  it('explains at least sixty words, each once, in a line, with its source', () => {
    expect(TERMS.length).toBeGreaterThanOrEqual(60);
    const names = TERMS.map(({ term }) => term.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    for (const { term, says, source } of TERMS) {
      expect(says.length, term).toBeGreaterThan(20);
      expect(says.length, term).toBeLessThan(220);
      expect(says, term).toMatch(/\.$/);
      expect(sourceWords(source), term).toMatch(/common practice, no source|\(not verified\)|\d{4}/);
    }
  });

  // The words that the issue names, as a student would type them.
  it.each([
    'HLB',
    'INCI',
    'o/w',
    'w/o',
    'q.s.',
    'EACN',
    'Cc',
    'SMILES',
    'Krafft',
    'drop point',
    'lamellar',
    'required HLB',
    'HLD',
    'cationic',
  ])('finds %s first', (typed) => {
    const [first] = termsFor(typed);
    const names = [first?.term ?? '', ...(first?.also ?? [])].map((one) => one.toLowerCase());
    expect(names.some((name) => name.startsWith(typed.toLowerCase()))).toBe(true);
  });

  it('finds a word by another name, and by what is said of it; an empty search is all', () => {
    expect(termsFor('micelle')[0]?.key).toBe('cmc');
    expect(termsFor('MSDS')[0]?.key).toBe('safety-data-sheet');
    expect(termsFor('')).toHaveLength(TERMS.length);
    expect(termsFor('zzzz')).toEqual([]);
  });

  it('explains every figure by a word it holds', () => {
    for (const key of Object.values(FIGURE_TERMS)) expect(GLOSSARY[key]).toBeDefined();
  });
});

describe('the hand-out of words', () => {
  const print = (terms: readonly TermKey[]) =>
    JSON.stringify(glossarySheet(terms, settings.parse({}), '2026-03-01T10:00:00Z').content);

  it('holds all words, or those that were asked for, with their sources', () => {
    const all = print([]);
    for (const { says } of TERMS) expect(all).toContain(JSON.stringify(says).slice(1, -1));
    const some = glossarySheet(['qs', 'hlb'], settings.parse({}), '2026-03-01T10:00:00Z');
    const text = JSON.stringify(some.content);
    expect(text).toContain('Griffin W.C.');
    expect(text).not.toContain('Krafft');
    expect(text.indexOf('Hydrophile-lipophile')).toBeLessThan(text.indexOf('As much as is needed'));
  });

  it('refuses a word that the glossary does not hold', () => {
    expect(sheetRequest.safeParse({ kind: 'glossary', terms: ['hlb'] }).success).toBe(true);
    expect(sheetRequest.safeParse({ kind: 'glossary', terms: ['nothing'] }).success).toBe(false);
  });
});
