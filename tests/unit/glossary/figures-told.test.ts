import { DAVIES_GROUPS } from '@core/emulsions/davies-groups';
import { WHERE_FIGURES_DIFFER } from '@core/glossary/where-figures-differ';
import { GLOSSARY, type TermKey } from '@core/glossary/glossary';
import { undissociatedPercent } from '@core/preservation/undissociated';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { readStructure } from '@core/structure/read-structure';
import { describe, expect, it } from 'vitest';

const says = (key: TermKey): string => GLOSSARY[key].says;

describe('a figure that the glossary tells', () => {
  it('round droplets fill 74 % of the volume at most: π / (3 √2)', () => {
    const closest = (100 * Math.PI) / (3 * Math.SQRT2);
    expect(says('internal-phase')).toContain(`about ${closest.toFixed(0)} % of the volume`);
  });

  it('an acid one unit below its pKa is 91 % undissociated, by our own computing and by hand', () => {
    const byHand = 100 / (1 + 10 ** -1);
    expect(undissociatedPercent(5, 4).value).toBeCloseTo(byHand, 9);
    expect(says('pka')).toContain(`${byHand.toFixed(0)} % is still undissociated`);
    expect(undissociatedPercent(5, 5).value).toBe(50);
    expect(says('pka')).toContain('at which half of an acid');
  });

  it('Davies’ HLB begins at 7, with a number for each group', () => {
    expect(says('davies-groups')).toContain('7 plus a number for every group');
    expect(Object.keys(DAVIES_GROUPS).length).toBeGreaterThan(10);
  });

  it('the structures that it writes are those that it names', () => {
    // Ethanol C2H6O 46.07, acetic acid C2H4O2 60.05 g/mol: CRC Handbook, from memory.
    expect(says('smiles')).toContain('CCO is ethanol, CC(=O)O acetic acid');
    expect(readStructure('CCO').formula).toBe('C2H6O');
    expect(readStructure('CCO').molarMass.value).toBeCloseTo(46.07, 2);
    expect(readStructure('CC(=O)O').formula).toBe('C2H4O2');
    expect(readStructure('CC(=O)O').molarMass.value).toBeCloseTo(60.05, 2);
  });

  it('an acid value and a saponification value are told in mg of potassium hydroxide, 56.1 g/mol', () => {
    expect(molarMassOfFormula('KOH').value).toBeCloseTo(56.106, 2);
    for (const key of ['acid-value', 'saponification-value'] as const)
      expect(says(key)).toMatch(/^Milligrams of potassium hydroxide .* in 1 g\./);
  });

  it('the thresholds of allergens are those of the Regulation: 0.001 % leave-on, 0.01 % rinse-off', () => {
    // Regulation (EC) No 1223/2009, Annex III, from memory.
    expect(says('allergen')).toMatch(/0\.001 % in leave-on or 0\.01 % in rinse-off/);
  });

  it('a safety data sheet has 16 sections, and a challenge test runs for 28 days', () => {
    // Regulation (EC) No 1907/2006, Annex II; ISO 11930, both from memory.
    expect(says('safety-data-sheet')).toContain('16 sections');
    expect(says('challenge-test')).toContain('28 days');
  });

  it('HLB makes w/o at 3 to 6 and o/w at 8 to 18, by Griffin 1949', () => {
    expect(says('hlb')).toMatch(/3 to 6 makes w\/o, 8 to 18 o\/w/);
  });
});

describe('what is told of figures that differ', () => {
  it.each(WHERE_FIGURES_DIFFER.map((one) => [one.of, one] as const))('%s: lower ends first', (_, one) => {
    for (const [, low, high] of one.figures.matchAll(/(\d+(?:\.\d+)?) to (\d+(?:\.\d+)?)/g))
      expect(Number(low), one.figures).toBeLessThan(Number(high));
  });

  it.each([
    ['Required HLB of one oil', 'hlb'],
    ['pKa of benzoic acid', 'pka'],
    ['The constants of HLD', 'hld'],
    ['Acid value of stearic acid', 'acid-value'],
    ['Ageing by Q10', 'q10'],
  ] as const)('“%s” is about a word that is explained', (of, key) => {
    expect(WHERE_FIGURES_DIFFER.map((one) => one.of)).toContain(of);
    expect(GLOSSARY[key].says.length).toBeGreaterThan(20);
  });

  it('sends nobody to the lowest figure for safety’s sake: each advice is to measure, try, or look it up', () => {
    for (const { of, advice } of WHERE_FIGURES_DIFFER)
      expect(advice, of).toMatch(
        /try|data sheet|Keep|not average|Confirm|certificate|spread|Go by|no proof|Compute|Measure|Check|Choose|decides/,
      );
  });
});
