import { TERMS } from '@core/glossary/glossary';
import type { Term } from '@core/glossary/term';
import { describe, expect, it } from 'vitest';
import { sourcesWords, sourceWords } from '@core/working/source-words';
import { unwantedIn } from './unwanted-words';
import { visibleWords } from './visible-words';

describe('the words of the product', () => {
  const words = visibleWords();

  it('are all read: those of scripts, templates and attributes', () => {
    expect(words.length).toBeGreaterThan(4000);
    const texts = new Set(words.map((one) => one.text));
    for (const known of ['Every check passes.', 'Optimise for', 'Strength of the base'])
      expect(texts.has(known) || [...texts].some((one) => one.includes(known)), known).toBe(true);
  });

  it('hold none that reads translated, is a second word for one thing, or says how a source was come by', () => {
    // The labels of the case format are a developer's; what makers' own tables and suppliers' sheets call things is no word of ours.
    const others = [
      'shared-core/cases/',
      'shared-core/imports/headings.ts',
      'shared-core/datasheets/labels.ts',
    ];
    // A word that the glossary is asked for by its second name, which it then says nowhere else.
    const askedFor = new Set(Object.values(TERMS).flatMap(({ also = [] }: Term) => also));
    const shown = words.filter(
      ({ file, text }) =>
        !others.some((one) => file.startsWith(one)) &&
        !(file.startsWith('shared-core/glossary/terms/') && askedFor.has(text)),
    );
    expect(shown.flatMap(({ file, text }) => unwantedIn(text).map((found) => `${file}: ${found}`))).toEqual(
      [],
    );
  });
});

describe('a source as users see it', () => {
  it('says once that it is not verified, and not where its text says so', () => {
    expect(sourceWords({ text: 'A handbook, 2009', basis: 'memory' })).toBe(
      'A handbook, 2009 (not verified)',
    );
    expect(sourceWords({ text: 'A list (not verified)', basis: 'memory' })).toBe('A list (not verified)');
    expect(sourceWords({ text: 'A standard, 2014', basis: 'read' })).toBe('A standard, 2014');
  });

  it('is named once on a line', () => {
    const twice = { text: 'A handbook, 2009', basis: 'read' } as const;
    expect(sourcesWords([twice, { ...twice }])).toBe('A handbook, 2009');
  });
});
