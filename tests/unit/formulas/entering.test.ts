import fc from 'fast-check';
import { compositionFigures } from '@core/formulas/composition-figures';
import { distributed, scaledGroup, withShares } from '@core/formulas/change/adjust-shares';
import { enteredFormula, formulaContent, phaseLetter, type FormulaContent } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { amountOf } from '@core/formulas/pasting/pasted-table';
import { likelyMeaning, pastedLines, pastedShares } from '@core/formulas/pasting/pasted-lines';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';
import { CREAM } from '../sheets/samples';
import { refusal } from '../working/refusal';

const issueOf = (
  edit: (copy: FormulaContent) => void,
  shape: typeof formulaContent | typeof enteredFormula = enteredFormula,
) => {
  const copy = structuredClone(CREAM);
  edit(copy);
  return shape.safeParse(copy).error?.issues[0]?.message ?? null;
};

describe('a formula as it is entered', () => {
  it('is taken as it is, and comes back as it was written', () => {
    expect(enteredFormula.parse(JSON.parse(JSON.stringify(CREAM)))).toEqual(CREAM);
  });

  it.each<[string, (copy: FormulaContent) => void, RegExp]>([
    ['two q.s. lines', (copy) => (copy.phases[1]!.lines[0]!.toHundred = true), /Only one line can be q\.s\./],
    [
      'a line twice',
      (copy) => (copy.phases[1]!.lines[0]!.id = copy.phases[0]!.lines[1]!.id),
      /Two lines have the same/,
    ],
    ['a phase twice', (copy) => (copy.phases[1]!.id = copy.phases[0]!.id), /Two phases have the same/],
    ['a step twice', (copy) => (copy.steps[1]!.id = copy.steps[0]!.id), /Two steps have the same/],
    ['no name', (copy) => (copy.name = '  '), /name/],
    ['a pH upside down', (copy) => Object.assign(copy.target, { phLow: 7, phHigh: 5 }), /pH: the lower end/],
    ['a pH of 15', (copy) => (copy.target.phHigh = 15), /pH runs from 0 to 14/],
    ['a viscosity upside down', (copy) => (copy.target.viscosityLow = 90_000), /Viscosity: the lower end/],
    ['a phase of 201 °C', (copy) => (copy.phases[0]!.temperatureC = 201), /above 200/],
    ['a step of −21 °C', (copy) => (copy.steps[0]!.temperatureC = -21), /below −20/],
    ['a negative speed', (copy) => (copy.steps[0]!.speedRpm = -1), /cannot be negative/],
    ['a negative share', (copy) => (copy.phases[0]!.lines[1]!.ppm = -1), /./],
    ['a share of more than all', (copy) => (copy.phases[0]!.lines[1]!.ppm = 1_000_001), /./],
    ['half a ppm', (copy) => (copy.phases[0]!.lines[1]!.ppm = 0.5), /./],
    [
      '27 phases',
      (copy) =>
        (copy.phases = Array.from({ length: 27 }, () => ({ ...copy.phases[0]!, id: nextId(), lines: [] }))),
      /26 phases at most/,
    ],
  ])('refuses %s', (_, edit, message) => {
    expect(issueOf(edit)).toMatch(message);
  });

  it('takes ends that meet, and ends of which one is open', () => {
    expect(issueOf((copy) => Object.assign(copy.target, { phLow: 5.5, phHigh: 5.5 }))).toBeNull();
    expect(issueOf((copy) => Object.assign(copy.target, { phLow: null, phHigh: 5 }))).toBeNull();
    expect(issueOf((copy) => Object.assign(copy.target, { phLow: 14, phHigh: null }))).toBeNull();
  });

  it('is still read from a library with what older rules let in: a target upside down, no name', () => {
    expect(issueOf((copy) => Object.assign(copy.target, { phLow: 7, phHigh: 5 }), formulaContent)).toBeNull();
    expect(issueOf((copy) => (copy.name = ''), formulaContent)).toBeNull();
    expect(issueOf((copy) => (copy.phases[1]!.lines[0]!.toHundred = true), formulaContent)).toMatch(
      /Only one line/,
    );
  });

  it('has 26 letters for 26 phases', () => {
    expect([0, 1, 25].map(phaseLetter)).toEqual(['A', 'B', 'Z']);
  });
});

const [one, two, three] = [make('One', 'Squalane'), make('Two', 'Glycerin'), make('Three', 'Aqua')];
const lines = (...percents: number[]) =>
  content([phase(percents.map((percent, at) => [[one, two, three][at % 3]!, percent]))]);
const ids = (formula: FormulaContent) => formulaLines(formula).map(({ id }) => id);
const ppms = (formula: FormulaContent) => formulaLines(formula).map(({ ppm }) => ppm);

describe('scaling lines together', () => {
  it('keeps their proportions, by hand: 2 and 6 to 12 are 3 and 9', () => {
    const formula = lines(2, 6, 50);
    expect(ppms(scaledGroup(formula, ids(formula).slice(0, 2), 120_000, new Set()))).toEqual([
      30_000, 90_000, 500_000,
    ]);
  });

  it('leaves the locked line, and gives the others the rest', () => {
    const formula = lines(2, 6, 4);
    const [first] = ids(formula);
    expect(ppms(scaledGroup(formula, ids(formula), 220_000, new Set([first!])))).toEqual([
      20_000, 120_000, 80_000,
    ]);
  });

  it('leaves nothing to the others where the locked ones are all of it', () => {
    const formula = lines(2, 6, 4);
    const scaled = scaledGroup(formula, ids(formula), 20_000, new Set(ids(formula).slice(0, 1)));
    expect(ppms(scaled)).toEqual([20_000, 0, 0]);
  });

  it('gives lines of nothing alike, and the odd ppm to one of them', () => {
    const formula = lines(0, 0, 0);
    const shares = ppms(scaledGroup(formula, ids(formula), 100, new Set()));
    expect([...shares].sort()).toEqual([33, 33, 34]);
  });

  it('does it again and nothing more happens', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 2, maxLength: 6 }),
        fc.integer({ min: 1, max: 900_000 }),
        (percents, total) => {
          const formula = lines(...percents);
          const once = scaledGroup(formula, ids(formula), total, new Set());
          expect(ppms(once).reduce((a, b) => a + b, 0)).toBe(total);
          expect(ppms(scaledGroup(once, ids(formula), total, new Set()))).toEqual(ppms(once));
        },
      ),
      { numRuns: 40 },
    );
  });

  it.each([
    ['more than the whole', 1_000_001, /0 to 100 %/],
    ['less than nothing', -1, /0 to 100 %/],
    ['no number', Number.NaN, /0 to 100 %/],
    ['less than what is locked', 10_000, /locked lines of the group alone/],
  ])('refuses %s', (_, total, says) => {
    const formula = lines(2, 6, 4);
    refusal(() => scaledGroup(formula, ids(formula), total, new Set(ids(formula).slice(0, 1))), says);
  });

  it('refuses a group in which nothing may move: all locked, only the q.s. line, or none', () => {
    const formula = lines(2, 6);
    refusal(() => scaledGroup(formula, ids(formula), 90_000, new Set(ids(formula))), /No line of the group/);
    refusal(() => scaledGroup(formula, [], 90_000, new Set()), /No line of the group/);
    const filled = lines(2, 6);
    filled.phases[0]!.lines[0]!.toHundred = true;
    refusal(() => scaledGroup(filled, ids(filled).slice(0, 1), 90_000, new Set()), /No line of the group/);
  });

  it('leaves nothing below nothing for the q.s. line', () => {
    const filled = lines(0, 40, 30);
    filled.phases[0]!.lines[0]!.toHundred = true;
    const group = ids(filled).slice(1, 2);
    expect(formulaShares(scaledGroup(filled, group, 700_000, new Set())).byLine.get(ids(filled)[0]!)).toBe(0);
    refusal(() => scaledGroup(filled, group, 700_001, new Set()), /nothing for the q\.s\. line/);
  });
});

describe('distributing the rest', () => {
  it('by hand: 40 and 20 to 100 beside a locked 10 are 60 and 30', () => {
    const formula = lines(40, 20, 10);
    expect(ppms(distributed(formula, new Set(ids(formula).slice(2))))).toEqual([600_000, 300_000, 100_000]);
  });

  it('takes too much back as it gives too little', () => {
    const formula = lines(120 / 2, 120 / 2, 30);
    expect(formulaShares(distributed(formula, new Set())).totalPpm).toBe(1_000_000);
  });

  it('does nothing where a q.s. line makes it whole, and refuses what cannot move', () => {
    const filled = lines(0, 40);
    filled.phases[0]!.lines[0]!.toHundred = true;
    expect(distributed(filled, new Set())).toBe(filled);
    const formula = lines(60, 50);
    refusal(() => distributed(formula, new Set(ids(formula))), /Every line is locked/);
    const over = lines(60, 50, 1);
    refusal(() => distributed(over, new Set(ids(over).slice(0, 2))), /locked lines alone pass 100 %/);
  });

  it('puts shares on lines by their id alone, and never on the q.s. line', () => {
    const filled = lines(5, 40);
    filled.phases[0]!.lines[0]!.toHundred = true;
    const [first, second] = ids(filled);
    expect(
      ppms(
        withShares(
          filled,
          new Map([
            [first!, 1],
            [second!, 2],
            ['unknown', 3],
          ]),
        ),
      ),
    ).toEqual([50_000, 2]);
  });
});

describe('what dries and what stays', () => {
  const solids = (inci: string) => {
    const only = make('Only', inci);
    return compositionFigures(content([phase([[only, 100]])]), () => only).solids.high.value;
  };

  it.each([
    'Aqua',
    'Aqua/Water/Eau',
    'Aqua (Water)',
    'Water',
    'Alcohol',
    'Alcohol Denat.',
    'Cyclopentasiloxane',
    'Rosa Damascena Flower Water',
  ])('%s leaves', (inci) => {
    expect(solids(inci)).toBe(0);
  });

  it.each(['Cetyl Alcohol', 'Benzyl Alcohol', 'Dimethicone', 'Glycerin', 'Waterlily Extract'])(
    '%s stays',
    (inci) => {
      expect(solids(inci)).toBe(100);
    },
  );
});

describe('what a pasted cell says of an amount', () => {
  it.each([
    'q.s.',
    'qs',
    'q.s. to 100',
    'q. s. 100 %',
    'q.s.p. 100',
    'ad 100',
    'ad 100,0',
    'to 100 %',
    'q.s. ad 100 g',
  ])('“%s” is the line that fills up', (cell) => {
    expect(amountOf(cell)).toEqual({ kind: 'to 100' });
  });

  it.each([
    ['5', 5],
    ['0,5 %', 0.5],
    ['12.5 g', 12.5],
    ['100', 100],
    ['3 parts', 3],
  ])('“%s” is %d', (cell, value) => {
    expect(amountOf(cell)).toMatchObject({ kind: 'number', value });
  });

  it.each(['', '  ', 'Aqua', 'PEG-40', 'top', 'ad hoc', 'q.s. to 90', '5-10', '–'])(
    '“%s” is none',
    (cell) => {
      expect(amountOf(cell)).toBeNull();
    },
  );

  it('of nothing at all comes in as nothing, in parts too, with a word about it', () => {
    const bare = pastedLines('Aqua\nGlycerin');
    expect(likelyMeaning(bare)).toBe('per cent');
    for (const share of pastedShares(bare, 'per cent'))
      expect(share).toMatchObject({ ppm: 0, fault: expect.stringContaining('0 %') });
    const some = pastedLines('Aqua\t3\nGlycerin\t');
    expect(pastedShares(some, 'parts')).toMatchObject([
      { ppm: 1_000_000, fault: null },
      { ppm: 0, fault: expect.stringContaining('No amount') },
    ]);
    expect(() => pastedShares(bare, 'parts')).not.toThrow();
  });
});
