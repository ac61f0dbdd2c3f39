import { describe, expect, it } from 'vitest';
import { checkFormula } from '@core/checks/all';
import { percentText } from '@core/checks/facts';
import { consequencesOf } from '@core/formulas/change/consequences';
import { formulaShares } from '@core/formulas/shares';
import { ingredientList } from '@core/labelling/ingredient-list';
import { lawOfFormula } from '@core/limits/in-formula';
import { blankLimit, type LimitContent } from '@core/limits/limit';
import { blankMarket } from '@core/products/market';
import { USUAL_CHECKS } from '@core/checks/check';
import { EXAMPLES, judged, kept, situation } from '../limits/law';
import { content, make, phase, type Row } from './build';

const water = make('Well', 'Aqua');
const onDay = '2026-11-28';
const found = (rows: Row[], parts = {}) =>
  checkFormula({
    content: content([phase(rows)], parts),
    materials: new Map(rows.map(([one]) => [one.id, one])),
    ...{ law: EXAMPLES, onDay },
  });

describe('what a formula may hold that is hard to judge', () => {
  it('a material without a composition: its label and its limits are said to be unknown, and nothing falls over', () => {
    const unknown = make('Unknown', [], { functions: ['active'] });
    const rows: Row[] = [
      [water, 99],
      [unknown, 1],
    ];
    expect(() => found(rows)).not.toThrow();
    const list = ingredientList(content([phase(rows)]), { [water.id]: water, [unknown.id]: unknown });
    expect(list.text).toBe('Aqua');
    expect(list.notes.join(' ')).toContain('Unknown');
  });

  it('two regions that disagree: each says its own', () => {
    const filter = make('H', 'Homosalate', { functions: ['uv filter'] });
    const market = { ...blankMarket(), kind: 'face cream' as const, regions: ['EU' as const, 'US' as const] };
    const rows: Row[] = [
      [water, 91],
      [filter, 9],
    ];
    const law = found(rows, { market }).filter(({ ruleId }) => ruleId === 'law');
    expect(law.map(({ title }) => title).join()).toMatch(/Homosalate.*\(EU\)/);
    expect(law.map(({ title }) => title).join()).not.toMatch(/Homosalate.*\(US\)/);
  });

  it('a limit counted as something that nobody knows: counted as it is, and said', () => {
    const limit = {
      ...blankLimit('Urea'),
      percent: 5,
      expressedAs: 'Unheard-of Acid',
      regions: ['EU' as const],
      source: 'invented',
    };
    const law = { substances: EXAMPLES.substances, limits: [kept<LimitContent>(limit)] };
    const [one] = judged([[make('U', 'Urea'), 4]], situation(), law);
    expect(one).toMatchObject({ verdict: 'within', total: { high: 4 } });
    expect(one?.cautions.join()).toContain('Unheard-of Acid, which is not in the table of substances');
  });

  it('200 lines: all are summed, to the ppm', () => {
    const many = Array.from({ length: 199 }, (_, at) =>
      make(`M${at}`, at % 2 === 0 ? 'Glycerin' : `Invented ${at}`),
    );
    const rows: Row[] = [[water, 80.1], ...many.map((one): Row => [one, 0.1])];
    const formula = content([phase(rows)]);
    expect(formulaShares(formula).totalPpm).toBe(1_000_000);
    const materials = new Map(rows.map(([one]) => [one.id, one]));
    const { contents } = lawOfFormula(formula, (id) => materials.get(id), EXAMPLES, onDay);
    const glycerin = [...contents.present.values()].find(({ substance }) => substance.name === 'Glycerin');
    expect(glycerin?.parts.reduce((sum, { used }) => sum + used, 0)).toBeCloseTo(100_000, 6);
    expect(found(rows).some(({ ruleId }) => ruleId === 'total')).toBe(false);
  });

  it('less than a ppm of a substance, within a blend of a trace: counted, and never shown as nothing that is something', () => {
    const trace = make('Trace', 'x', {
      composition: [
        { inci: 'Phenoxyethanol', lowPpm: 1, highPpm: 1 },
        { inci: 'Aqua', lowPpm: 999_999, highPpm: 999_999 },
      ],
    });
    const [one] = judged([[trace, 0.01]], situation()).filter(
      ({ limit }) => limit.subject === 'Phenoxyethanol',
    );
    // 0.01 % of a millionth.
    expect(one?.total.high).toBeCloseTo(1e-8, 14);
    expect(one?.verdict).toBe('within');
    expect(percentText(1)).toBe('0.0001 %');
  });

  it('consequences of a formula with nothing in it are figures, not faults', () => {
    const nothing = consequencesOf(
      { content: content([phase([])]), materials: {} },
      { law: EXAMPLES, onDay, currency: 'EUR', checks: USUAL_CHECKS },
    );
    expect(nothing.label).toEqual([]);
    expect(Number.isFinite(nothing.oilPhasePercent)).toBe(true);
  });
});
