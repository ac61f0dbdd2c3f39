import fc from 'fast-check';
import { canBeSwitchedOff, checkFormula, CHECKS } from '@core/checks/all';
import { USUAL_CHECKS, type CheckChoices, type Finding } from '@core/checks/check';
import { PRODUCT_TYPES, USES, type FormulaContent, type FormulaLine } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import { blankMarket } from '@core/products/market';
import { PRODUCT_KINDS, REGIONS, SITES, USERS } from '@core/products/product-kinds';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../unit/checks/build';
import { library } from '../unit/demo/demo-shelf';
import { EXAMPLES } from '../unit/limits/law';

/** Materials about which next to nothing is known, or what is known is odd: a draft may hold any of them. */
const ODD = [
  make('Nameless', ''),
  make('Joined', 'Sodium Benzoate (and) Potassium Sorbate'),
  make('Signs', '(((/)) , - & (and)'),
  make('Of nothing', 'Phenoxyethanol', { composition: [{ inci: 'Phenoxyethanol', lowPpm: 0, highPpm: 0 }] }),
  make('Of anything', 'Benzoic Acid', {
    composition: [{ inci: 'Benzoic Acid', lowPpm: 0, highPpm: 1_000_000 }],
    figures: { hlb: { low: 0, value: null, high: 40, provenance: 'estimated', source: '' } },
    functions: ['emulsifier', 'acid', 'preservative'],
  }),
];
const SHELF = [...library.materials, ...ODD];
const byId = new Map(SHELF.map((one) => [one.id, one]));

const maybePh = fc.option(fc.integer({ min: 0, max: 140 }).map((tenths) => tenths / 10));
const formulas = fc
  .record({
    lines: fc.uniqueArray(
      fc.record({
        of: fc.nat(SHELF.length - 1),
        ppm: fc.integer({ min: 1, max: 60_000 }),
        second: fc.boolean(),
      }),
      { minLength: 1, maxLength: 9, selector: ({ of }) => of },
    ),
    productType: fc.constantFrom(...PRODUCT_TYPES),
    use: fc.constantFrom(...USES),
    ph: fc.tuple(maybePh, maybePh),
    heat: fc.option(fc.integer({ min: 20, max: 95 })),
    market: fc.record({
      kind: fc.option(fc.constantFrom(...PRODUCT_KINDS)),
      sites: fc.subarray([...SITES], { maxLength: 2 }),
      users: fc.subarray([...USERS], { maxLength: 2 }),
      regions: fc.subarray([...REGIONS], { maxLength: 2 }),
    }),
  })
  .map(({ lines, productType, use, ph, heat, market }): FormulaContent => {
    const formula = content([phase([], heat), phase([])], {
      ...{ productType, use, market: { ...blankMarket(), ...market } },
    });
    const [low, high] = ph;
    const swapped = low !== null && high !== null && low > high;
    formula.target.phLow = swapped ? high : low;
    formula.target.phHigh = swapped ? low : high;
    lines.forEach(({ of, ppm, second }, at) =>
      formula.phases[second ? 1 : 0]!.lines.push({
        ...{ id: nextId(), materialId: SHELF[of]!.id, ppm, note: '' },
        toHundred: at === 0,
      }),
    );
    return formula;
  });

const find = (of: FormulaContent, choices: CheckChoices = USUAL_CHECKS): Finding[] =>
  checkFormula({ content: of, materials: byId, law: EXAMPLES, onDay: '2026-11-28' }, choices);
/** What is found, without words that follow the order of the lines: the check, how serious, and on which lines. */
const told = (found: readonly Finding[]): string[] =>
  found.map(({ ruleId, severity, lines }) => [ruleId, severity, ...[...lines].sort()].join(' ')).sort();
const kinds = (found: readonly Finding[]): string[] =>
  [...new Set(found.map(({ ruleId, severity }) => `${ruleId} ${severity}`))].sort();
const overLines = (of: FormulaContent, change: (lines: FormulaLine[]) => FormulaLine[]): FormulaContent => ({
  ...of,
  phases: of.phases.map((one) => ({ ...one, lines: change(one.lines) })),
});

describe('all checks over any formula', () => {
  it('speak in whole sentences, of lines that are there, with advice and source: no figure is missing', () => {
    fc.assert(
      fc.property(formulas, (formula) => {
        const ids = new Set(formula.phases.flatMap(({ lines }) => lines.map(({ id }) => id)));
        for (const { ruleId, title, advice, source, lines, working } of find(formula)) {
          const words = [title, advice, source.text, ...(working?.cautions ?? [])].join(' ');
          expect(words, ruleId).not.toMatch(/NaN|undefined|Infinity|\bnull\b|\[object/);
          expect(title.trim(), ruleId).not.toBe('');
          expect(advice.trim(), ruleId).not.toBe('');
          expect(source.text.trim(), ruleId).not.toBe('');
          expect(
            lines.filter((id) => !ids.has(id)),
            ruleId,
          ).toEqual([]);
          for (const step of working?.steps ?? []) expect(Number.isFinite(step.result), ruleId).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('find the same in whatever order the lines of a phase stand', () => {
    fc.assert(
      fc.property(formulas, (formula) => {
        const turned = overLines(formula, (lines) => [...lines].reverse());
        expect(told(find(turned))).toEqual(told(find(formula)));
      }),
      { numRuns: 30 },
    );
  });

  it('find the same where a material stands on two lines with its share between them', () => {
    fc.assert(
      fc.property(formulas, fc.nat(8), (formula, which) => {
        const all = formula.phases
          .flatMap(({ lines }) => lines)
          .filter(({ toHundred, ppm }) => !toHundred && ppm > 1);
        fc.pre(all.length > 0);
        const { id, ppm } = all[which % all.length]!;
        const half = Math.floor(ppm / 2);
        const split = overLines(formula, (lines) =>
          lines.flatMap((line) =>
            line.id === id
              ? [
                  { ...line, ppm: half },
                  { ...line, id: nextId(), ppm: ppm - half },
                ]
              : [line],
          ),
        );
        expect(formulaShares(split).totalPpm).toBe(formulaShares(formula).totalPpm);
        // A line by itself may become too small for a balance.
        const counted = (of: FormulaContent) =>
          kinds(find(of).filter(({ ruleId }) => ruleId !== 'small-lines'));
        expect(counted(split)).toEqual(counted(formula));
      }),
      { numRuns: 30 },
    );
  });

  it('are silent one by one when they are switched off, and leave the others as they were', () => {
    fc.assert(
      fc.property(formulas, fc.subarray(CHECKS.map(({ id }) => id)), (formula, checksOff) => {
        const silent = new Set(
          CHECKS.filter((rule) => canBeSwitchedOff(rule) && checksOff.includes(rule.id)).map(({ id }) => id),
        );
        const all = find(formula);
        expect(find(formula, { ...USUAL_CHECKS, checksOff })).toEqual(
          all.filter(({ ruleId }) => !silent.has(ruleId)),
        );
      }),
      { numRuns: 20 },
    );
  });

  it('stand most serious first, and each by the name of one check', () => {
    fc.assert(
      fc.property(formulas, (formula) => {
        const found = find(formula);
        const ranks = found.map(({ severity }) => ['stop', 'warn', 'note'].indexOf(severity));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        for (const { ruleId } of found) expect(CHECKS.filter(({ id }) => id === ruleId)).toHaveLength(1);
      }),
      { numRuns: 30 },
    );
  });
});
