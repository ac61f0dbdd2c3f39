import type { Finding } from '@core/checks/check';
import type { FormulaContent, FormulaLine, FormulaPhase } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';

/** A way of doing what a finding advises, on a formula; null where it does not apply. */
export type Way = (formula: FormulaContent) => FormulaContent | null;

/** What followers know besides the formula: the shelf, by code and by id. */
export interface Shelf {
  code: (code: string) => Material;
  byId: ReadonlyMap<string, Material>;
}

const eachLine =
  (edit: (line: FormulaLine, phase: FormulaPhase) => FormulaLine[]): Way =>
  (formula) => ({
    ...formula,
    phases: formula.phases.map((phase) => ({
      ...phase,
      lines: phase.lines.flatMap((line) => edit(line, phase)),
    })),
  });

let made = 0;
const line = (material: Material, percent: number): FormulaLine => ({
  id: `followed ${(made += 1)}`,
  materialId: material.id,
  ppm: Math.round(percent * 10_000),
  toHundred: false,
  note: '',
});

/** The lines' shares times a factor; the q.s. line takes up the difference. */
export const scaled = (ids: readonly string[], factor: number): Way =>
  eachLine((one) => [ids.includes(one.id) ? { ...one, ppm: Math.round(one.ppm * factor) } : one]);

export const without = (ids: readonly string[]): Way =>
  eachLine((one) => (ids.includes(one.id) && !one.toHundred ? [] : [one]));

/** Another material on the lines' place, the first of them at a share of its own where one is given. */
export const instead = (ids: readonly string[], material: Material, percent?: number): Way =>
  eachLine((one) =>
    !ids.includes(one.id)
      ? [one]
      : one.id === ids[0]
        ? [{ ...one, materialId: material.id, ppm: percent ? Math.round(percent * 10_000) : one.ppm }]
        : [],
  );

const byHeat = (formula: FormulaContent): FormulaPhase[] =>
  [...formula.phases].sort((a, b) => (a.temperatureC ?? 20) - (b.temperatureC ?? 20));

/** A material put where it belongs: with the water, with the oils, or into the coolest phase (a new one below 40 °C). */
export const added = (material: Material, percent: number): Way => {
  const one = line(material, percent);
  return (formula) => {
    const cool = byHeat(formula)[0];
    const oily = formula.phases[0]?.id;
    const watery = formula.phases.find(({ lines }) => lines.some(({ toHundred }) => toHundred))?.id;
    const goes =
      material.phaseOfUse === 'oil'
        ? oily
        : material.phaseOfUse === 'water'
          ? (watery ?? cool?.id)
          : undefined;
    const coolEnough = cool && (cool.temperatureC ?? 20) <= 40 ? cool.id : undefined;
    const where = goes ?? coolEnough;
    if (where)
      return {
        ...formula,
        phases: formula.phases.map((phase) =>
          phase.id === where ? { ...phase, lines: [...phase.lines, one] } : phase,
        ),
      };
    return {
      ...formula,
      phases: [...formula.phases, { id: 'cool', title: '', temperatureC: 35, lines: [one] }],
    };
  };
};

/** The lines moved into the coolest phase, a new one where none is cool enough; or into the hottest. */
export const moved = (ids: readonly string[], to: 'cool' | 'hot'): Way => {
  return (formula) => {
    const lines = formulaLines(formula).filter(({ id }) => ids.includes(id));
    const rest = without(ids)(formula) ?? formula;
    const sorted = byHeat(rest);
    const goal = to === 'hot' ? sorted.at(-1) : sorted[0];
    if (to === 'cool' && (goal?.temperatureC ?? 20) > 35)
      return { ...rest, phases: [...rest.phases, { id: 'cool', title: '', temperatureC: 30, lines }] };
    return {
      ...rest,
      phases: rest.phases.map((phase) =>
        phase.id === goal?.id ? { ...phase, lines: [...phase.lines, ...lines] } : phase,
      ),
    };
  };
};

/** The phases of the lines brought to a temperature. */
export const heatedTo =
  (ids: readonly string[], temperatureC: number): Way =>
  (formula) => ({
    ...formula,
    phases: formula.phases.map((phase) =>
      phase.lines.some(({ id }) => ids.includes(id)) ? { ...phase, temperatureC } : phase,
    ),
  });

/** The target pH as an advice says it; null where it says that none suits. */
export const targetOf =
  ({ advice }: Finding): Way =>
  (formula) => {
    const said =
      /Set the target (?:within pH ([\d.]+) to ([\d.]+)|at pH ([\d.]+)( or below| or above)?)/.exec(advice);
    if (!said) return null;
    const at = said[3] === undefined ? null : Number(said[3]);
    const [low, high] =
      at === null
        ? [Number(said[1]), Number(said[2])]
        : [said[4] === ' or below' ? at - 0.5 : at, said[4] === ' or above' ? at + 0.5 : at];
    return { ...formula, target: { ...formula.target, phLow: low, phHigh: high } };
  };

export const all =
  (...ways: Way[]): Way =>
  (formula) =>
    ways.reduce<FormulaContent | null>((done, way) => done && way(done), formula);
