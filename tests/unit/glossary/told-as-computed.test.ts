import fc from 'fast-check';
import { blendHlb } from '@core/emulsions/blend-hlb';
import { griffinMass } from '@core/emulsions/griffin';
import { hldIonic, hldMeaning, hldNonionic } from '@core/emulsions/hld';
import { GLOSSARY, type TermKey } from '@core/glossary/glossary';
import { FIGURE_TERMS } from '@core/glossary/of-figures';
import { WHERE_FIGURES_DIFFER } from '@core/glossary/where-figures-differ';
import { ALLERGEN_THRESHOLD_PPM } from '@core/labelling/allergens';
import { isSmall } from '@core/labelling/order';
import { FIGURE_KINDS, type FigureKind } from '@core/materials/figure';
import { tolerableError } from '@core/net-contents/tolerable-error';
import { q10ShelfLife } from '@core/physics/ageing';
import { undissociatedPercent } from '@core/preservation/undissociated';
import { ionicStrength } from '@core/solutions/ionic-strength';
import { smilesOfPick } from '@core/structure/chain-and-head';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { readStructure } from '@core/structure/read-structure';
import { substanceIndex } from '@core/substances/substance-index';
import { minimumWeight } from '@core/weighing/minimum-weight';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../limits/law';

const says = (key: TermKey): string => GLOSSARY[key].says;
const told = (of: string) => {
  const found = WHERE_FIGURES_DIFFER.find((one) => one.of === of);
  if (!found) throw new Error(`Nothing is told of ${of}.`);
  return found;
};

describe('what the glossary tells is what Stillroom computes', () => {
  const oil = { eacn: 8, alcoholTerm: 0, k: 0.17, cc: 0 };

  it('HLD: below 0 o/w, above 0 w/o', () => {
    expect(says('hld')).toContain('Below 0 it favours o/w, above 0 w/o');
    expect(hldMeaning(-2)).toMatch(/o\/w/);
    expect(hldMeaning(2)).toMatch(/w\/o/);
  });

  it('Cc: negative for hydrophilic surfactants, so that a lower one makes o/w', () => {
    expect(says('cc')).toContain('Negative for hydrophilic, positive for lipophilic');
    const at = (cc: number): number =>
      hldNonionic({ ...oil, cc, salinityPercent: 0, b: 0.13, cT: 0.06 }, 25).value;
    expect(at(-3)).toBeLessThan(0);
    expect(at(3)).toBeGreaterThan(at(-3));
  });

  it('salt pushes surfactants out of the water, ionic ones most: from 1 to 5 g per 100 mL', () => {
    expect(says('salinity')).toMatch(/pushes surfactants out of the water, ionic ones most/);
    const ionic = (salinityPercent: number): number =>
      hldIonic({ ...oil, salinityPercent, alphaT: 0.01 }, 25).value;
    const nonIonic = (salinityPercent: number): number =>
      hldNonionic({ ...oil, salinityPercent, b: 0.13, cT: 0.06 }, 25).value;
    expect(ionic(5)).toBeGreaterThan(ionic(1));
    expect(nonIonic(5)).toBeGreaterThan(nonIonic(1));
    // ln 5 = 1.609; 0.13 × 4 = 0.52.
    expect(ionic(5) - ionic(1)).toBeGreaterThan(nonIonic(5) - nonIonic(1));
  });

  it('an ethoxylate turns lipophilic in heat: its HLD rises, and with it an emulsion turns to w/o', () => {
    expect(says('ethoxylate')).toMatch(/chains lose water in heat, so that it turns lipophilic/);
    expect(says('pit')).toMatch(/turns from o\/w to w\/o/);
    const at = (celsius: number): number =>
      hldNonionic({ ...oil, salinityPercent: 0, b: 0.13, cT: 0.06 }, celsius).value;
    expect(at(25)).toBeLessThan(0);
    expect(at(80)).toBeGreaterThan(0);
  });

  it('an oil of small EACN is the more polar: it lies nearer to w/o with one surfactant', () => {
    expect(says('eacn')).toMatch(/Small for polar oils, large for waxy ones/);
    const at = (eacn: number): number =>
      hldNonionic({ ...oil, eacn, salinityPercent: 0, b: 0.13, cT: 0.06 }, 25).value;
    expect(at(2)).toBeGreaterThan(at(16));
  });

  it('the offered HLB is the mean weighted by mass: 3 g of 15 and 1 g of 4.7 offer 12.425', () => {
    expect(says('offered-hlb')).toContain('weighted by mass');
    const mix = [
      { mass: 3, hlb: 15 },
      { mass: 1, hlb: 4.7 },
    ];
    expect(blendHlb(mix).value).toBeCloseTo(12.425, 9);
  });

  it('Griffin’s HLB runs from 0, all oil, to 20, all water-loving', () => {
    expect(says('hlb')).toContain('from 0 (oil) to 20 (water)');
    expect([griffinMass(0, 500).value, griffinMass(500, 500).value]).toEqual([0, 20]);
  });

  it('ionic strength: half the sum of concentration times charge squared; 0.1 of table salt 0.1, of magnesium sulfate 0.4', () => {
    expect(says('ionic-strength')).toMatch(
      /^Half the sum of each ion’s concentration times its charge squared/,
    );
    const of = (charge: number): number =>
      ionicStrength([
        { concentration: 0.1, charge },
        { concentration: 0.1, charge: -charge },
      ]).value;
    expect(of(1)).toBeCloseTo(0.1, 12);
    expect(of(2)).toBeCloseTo(0.4, 12);
  });

  it('minimum weight: two standard deviations over the limit; 0.05 g within 0.1 % is 100 g', () => {
    expect(says('minimum-weight')).toMatch(
      /2 standard deviations of repeated weighings over the limit, such as 0\.1 %/,
    );
    expect(minimumWeight(0.05, 0.01, 0.1, 'g').value).toBeCloseTo(100, 9);
  });

  it('an acid preservative works at low pH only: a unit of pH above the pKa leaves a tenth undissociated', () => {
    expect(says('undissociated')).toContain('works at low pH only');
    // 1 / (1 + 10), 1 / (1 + 100)
    expect(undissociatedPercent(4.2, 5.2).value).toBeCloseTo(9.09, 2);
    expect(undissociatedPercent(4.2, 6.2).value).toBeCloseTo(0.99, 2);
  });

  it('tolerable negative error is of one pack, by a table of contents: 4.5 % of 100 mL', () => {
    // Council Directive 76/211/EEC, Annex I: 50 to 100 mL 4.5 %, 300 to 500 mL 3 %, from memory.
    expect(says('e-mark')).toContain('by a table of net contents');
    expect(tolerableError(100, 'mL').value).toBeCloseTo(4.5, 9);
    expect(tolerableError(400, 'mL').value).toBeCloseTo(12, 9);
  });

  it('an allergen is named above the thresholds by which a label is made', () => {
    for (const [use, percent] of [
      ['leave-on', 0.001],
      ['rinse-off', 0.01],
    ] as const) {
      expect(ALLERGEN_THRESHOLD_PPM[use]).toBeCloseTo(percent * 10_000, 9);
      expect(says('allergen')).toContain(`${percent} % in ${use}`);
    }
  });

  it('a soap is the salt of a fatty acid with a base, and anionic; a quat is a cationic', () => {
    expect(says('soap')).toMatch(/salt of a fatty acid with a base\. An anionic emulsifier/);
    expect(readStructure(smilesOfPick('c18', 'soap-k', null)).charge).toBe('anionic');
    expect(says('quat')).toMatch(/lasting positive charge/);
    expect(readStructure(smilesOfPick('c16', 'trimethyl-ammonium', null)).charge).toBe('cationic');
    expect(says('non-ionic')).toMatch(/ethoxylates, sugar and polyglycerol esters/);
    for (const [head, count] of [
      ['peg-ether', 20],
      ['glucoside', null],
      ['polyglyceryl', 3],
    ] as const)
      expect(readStructure(smilesOfPick('c18', head, count)).charge).toBe('non-ionic');
  });

  it('a triglyceride is three fatty acids on one glycerol: three acids and glycerol less three waters', () => {
    expect(says('triglyceride')).toMatch(/^Three fatty acids on one glycerol/);
    const mass = (formula: string): number => molarMassOfFormula(formula).value;
    // Tristearin C57H110O6, stearic acid C18H36O2, glycerol C3H8O3.
    expect(mass('C57H110O6')).toBeCloseTo(3 * mass('C18H36O2') + mass('C3H8O3') - 3 * mass('H2O'), 6);
  });
});

describe('what is told where figures differ is what Stillroom computes', () => {
  it('commercial stearic acid, half of it C16, has an acid value between those of both acids', () => {
    const acidValue = (formula: string): number => 56_106 / molarMassOfFormula(formula).value;
    // As many grams of each: 218.8 and 197.2 make 208.
    const half = (acidValue('C16H32O2') + acidValue('C18H36O2')) / 2;
    const [, low, high] = /(\d+) to (\d+)/.exec(told('Acid value of stearic acid').figures) ?? [];
    expect(half).toBeGreaterThan(Number(low));
    expect(half).toBeLessThan(Number(high));
  });

  it('the spread of benzoic acid’s pKa is small beside that of a pH reading of a tenth', () => {
    expect(told('pKa of benzoic acid').advice).toContain('small beside that of a pH reading');
    const byPka = undissociatedPercent(4.2, 4).value - undissociatedPercent(4.16, 4).value;
    const byPh = undissociatedPercent(4.2, 3.9).value - undissociatedPercent(4.2, 4.1).value;
    expect(byPh).toBeGreaterThan(2 * byPka);
  });

  it('at a Q10 of 2 three months at 45 °C stand for a year at 25 °C, and at 3 for more than two', () => {
    expect(told('Ageing by Q10').advice).toContain('Three months at 45 °C are custom, and no proof');
    expect(q10ShelfLife(2, 45, 3, 25).value).toBeCloseTo(12, 9);
    expect(q10ShelfLife(3, 45, 3, 25).value).toBeCloseTo(27, 9);
  });

  it('exactly 1 % stands by weight in the EU and in any order in the US', () => {
    expect(told('Ingredients at exactly 1 %').figures).toMatch(
      /EU lets those below 1 % .* the US those of 1 % or less/,
    );
    expect([isSmall(10_000, 'EU'), isSmall(10_000, 'US')]).toEqual([false, true]);
    expect([isSmall(9_999, 'EU'), isSmall(10_001, 'US')]).toEqual([true, false]);
  });

  it('what is above 20 is off Griffin’s scale, whatever is put in', () => {
    expect(told('HLB above 20').figures).toContain('Griffin’s scale of 0 to 20');
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 100, max: 9000 }),
        (part, mass) => {
          const { value } = griffinMass(part * mass, mass);
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(20);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('what the glossary names', () => {
  const index = substanceIndex(EXAMPLES.substances);

  it.each([
    ['ester', 'isopropyl myristate'],
    ['fatty-alcohol', 'cetearyl alcohol'],
    ['fatty-acid', 'stearic acid'],
    ['humectant', 'glycerin'],
    ['humectant', 'urea'],
    ['chelator', 'disodium EDTA'],
    ['ethoxylate', 'ceteareth-20'],
    ['self-emulsifying', 'glyceryl stearate SE'],
    ['anionic', 'carbomer'],
  ] as const)('%s: %s is a substance that the examples hold', (key, name) => {
    expect(says(key)).toContain(name);
    expect(index.find(name)).not.toBeNull();
  });

  it('as the word of a figure bears the figure’s own name among its names', () => {
    // What a supplier states, and what it is called in the trade.
    const asked: readonly FigureKind[] = [
      'hlb',
      'eacn',
      'cc',
      'acidValue',
      'saponificationValue',
      'pKa',
      'molarMass',
      'activePercent',
      'meltingPoint',
      'cloudPoint',
    ];
    for (const figure of asked) {
      const key = FIGURE_TERMS[figure];
      expect(key, figure).toBeDefined();
      const { term, also = [] } = GLOSSARY[key!] as { term: string; also?: readonly string[] };
      const names = [term, ...also].map((one) => one.toLowerCase());
      const label = FIGURE_KINDS[figure].label.toLowerCase();
      expect(
        names.some(
          (name) =>
            label.includes(name) ||
            label.split(/ or | \(|\)/).some((part) => name.startsWith(part.trim()) && part.trim() !== ''),
        ),
        `${figure}: ${label}`,
      ).toBe(true);
    }
  });
});
