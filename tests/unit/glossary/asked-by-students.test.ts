import { TERMS, termsFor, type TermKey } from '@core/glossary/glossary';
import { PRACTICE } from '@core/glossary/sources';
import { foldedWords } from '@core/quantities/fold';
import { describe, expect, it } from 'vitest';

const first = (typed: string): TermKey | undefined => termsFor(typed)[0]?.key;
const keys = (typed: string): TermKey[] => termsFor(typed).map(({ key }) => key);

describe('a word by its other name in the trade', () => {
  it.each([
    ['continuous phase', 'external-phase'],
    ['dispersed phase', 'internal-phase'],
    ['discontinuous phase', 'internal-phase'],
    ['liquid crystal', 'lamellar'],
    ['sedimentation', 'creaming'],
    ['HLB temperature', 'pit'],
    ['phase-inversion temperature', 'pit'],
    ['phase inversion', 'phase-inversion'],
    ['hydrophobic', 'lipophilic'],
    ['PEG', 'ethoxylate'],
    ['quat', 'quat'],
    ['quats', 'quat'],
    ['melting point', 'drop-point'],
    ['relative density', 'specific-gravity'],
    ['per cent by weight', 'w-w'],
    ['% w/w', 'w-w'],
    ['w/w', 'w-w'],
    ['TNE', 'e-mark'],
    ['rinse-off', 'leave-on'],
    ['preservation efficacy test', 'challenge-test'],
    ['group contribution', 'davies-groups'],
    ['characteristic curvature', 'cc'],
    ['equivalent alkane carbon number', 'eacn'],
    ['hydrophile-lipophile balance', 'hlb'],
    ['partner', 'co-emulsifier'],
    ['yield value', 'yield-stress'],
    ['batch number', 'lot'],
    ['chelating agent', 'chelator'],
    ['acid number', 'acid-value'],
    ['saponification number', 'saponification-value'],
    ['free acid', 'undissociated'],
    ['fragrance allergen', 'allergen'],
    ['Krafft point', 'krafft'],
    ['critical micelle concentration', 'cmc'],
    ['balance readability', 'readability'],
    ['o/w or w/o', 'emulsion-type'],
    ['INCI name', 'inci'],
    ['water-in-oil', 'wo'],
    ['freeze thaw', 'freeze-thaw'],
    ['q.s. to 100', 'qs'],
  ] as const)('“%s” is first %s', (typed, key) => expect(first(typed)).toBe(key));
});

describe('a question by what a word is about', () => {
  it.each([
    ['frost', 'krafft'],
    ['frost', 'freeze-thaw'],
    ['conditioner', 'quat'],
    ['micelles', 'cmc'],
    ['spindle', 'viscosity'],
    ['microbes', 'preservative'],
    ['microbes', 'water-activity'],
    ['potassium hydroxide', 'acid-value'],
    ['potassium hydroxide', 'saponification-value'],
    ['glycerol', 'triglyceride'],
    ['wax', 'drop-point'],
    ['waxes', 'drop-point'],
    ['recalled', 'lot'],
    ['contaminated', 'challenge-test'],
    ['cloudy', 'cloud-point'],
    ['powder', 'particulate'],
  ] as const)('“%s” finds %s among others', (typed, key) => expect(keys(typed)).toContain(key));

  it('puts what is called so before what only speaks of it', () => {
    for (const typed of ['preservative', 'emulsifier', 'soap', 'viscosity', 'buffer', 'ester', 'phase']) {
      const found = termsFor(typed);
      const called = found.map(({ term }) => foldedWords(term).some((word) => word.startsWith(typed)));
      // All that are called so, then the others: never one of them behind.
      expect(called.lastIndexOf(true), typed).toBe(called.filter(Boolean).length - 1);
      expect(found[0]?.term.toLowerCase()).toBe(typed);
    }
  });

  it('narrows with each word more, and finds nothing for one word too many', () => {
    const [one, two] = [keys('phase'), keys('phase inversion')];
    expect(two.length).toBeLessThan(one.length);
    expect(two.every((key) => one.includes(key))).toBe(true);
    expect(keys('phase inversion zebra')).toEqual([]);
  });
});

describe('a word of the glossary', () => {
  it.each(TERMS.map((one) => [one.term, one] as const))('%s is told in plain sentences', (_, one) => {
    const { says, term, also = [] } = one;
    // A sentence begins with a capital or a sign, ends with a full stop, and no dash or double space breaks it.
    expect(says).toMatch(/^[A-Z].*\.$/);
    expect(says).not.toMatch(/—| {2}|\.\.|\bi\.e\.|\be\.g\.|\betc\b/);
    // One spelling throughout: the British one.
    expect(says).not.toMatch(/\b(color|odor|fiber|neutraliz|stabiliz|crystalliz|sulphate)/i);
    expect(says).not.toMatch(/\d%|\d°/);
    for (const other of also) expect(other.toLowerCase()).not.toBe(term.toLowerCase());
  });

  it('does not explain itself by itself alone: each says a word that its name has not', () => {
    for (const { term, says } of TERMS) {
      const own = new Set(foldedWords(term));
      expect(
        foldedWords(says).filter((word) => word.length > 4 && !own.has(word)).length,
        term,
      ).toBeGreaterThan(1);
    }
  });

  it('leans on common practice only where no book or law was named, and never for most of them', () => {
    const practice = TERMS.filter(({ source }) => source === PRACTICE);
    expect(practice.length).toBeLessThan(TERMS.length / 4);
    for (const { source, term } of TERMS) expect(source.text.trim(), term).not.toBe('');
  });

  it('that speaks of another by name can be followed: the other is found first by it', () => {
    for (const [from, to] of [
      ['offered-hlb', 'HLB'],
      ['buffer', 'pKa'],
      ['eacn', 'HLD'],
      ['lamellar', 'fatty alcohol'],
      ['ostwald-ripening', 'oil phase'],
      ['self-emulsifying', 'soap'],
    ] as const) {
      const other = first(to);
      expect(other, `${from} to ${to}`).toBeDefined();
      expect(TERMS.find(({ key }) => key === other)?.term.toLowerCase()).toBe(to.toLowerCase());
    }
  });
});
