import type { Finding } from '@core/checks/check';
import { formulaFacts } from '@core/checks/facts';
import { rankSystems } from '@core/emulsions/systems/rank-systems';
import type { FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import {
  added,
  all,
  heatedTo,
  instead,
  moved,
  scaled,
  targetOf,
  without,
  type Shelf,
  type Way,
} from './follow';

const LESS = [0.9, 0.75, 0.5, 0.33, 0.2, 0.1];
const MORE = [1.15, 1.4, 1.8, 2.5, 4];

interface Asked {
  finding: Finding;
  formula: FormulaContent;
  shelf: Shelf;
}

function materialsOf({ finding, formula, shelf }: Asked): { id: string; material: Material }[] {
  return formula.phases.flatMap(({ lines }) =>
    lines.flatMap(({ id, materialId }) => {
      const material = shelf.byId.get(materialId);
      return finding.lines.includes(id) && material ? [{ id, material }] : [];
    }),
  );
}

const idsThat = (asked: Asked, is: (material: Material) => boolean): string[] =>
  materialsOf(asked).flatMap(({ id, material }) => (is(material) ? [id] : []));

/** Other preservatives of the shelf at their usual dose, in the place of all that are there. */
function preserved({ formula, shelf }: Asked): Way[] {
  const old = formula.phases.flatMap(({ lines }) =>
    lines.flatMap(({ id, materialId }) =>
      shelf.byId.get(materialId)?.functions.includes('preservative') ? [id] : [],
    ),
  );
  return ['R-101', 'R-102', 'R-104', 'R-105', 'R-106', 'R-107'].map((code) => {
    const one = shelf.code(code);
    const usual = (one.usage?.typicalPpm ?? one.usage?.maxPpm ?? 10_000) / 10_000;
    return all(without(old), added(one, usual));
  });
}

/** The emulsifiers that the bench proposes for this oil phase, in the place of those that are there. */
function emulsified({ formula, shelf }: Asked): Way[] {
  const facts = formulaFacts({ content: formula, materials: shelf.byId });
  const { emulsionType } = facts;
  if (emulsionType === null) return [];
  const lines = (of: typeof facts.used) => of.map(({ material, ppm }) => ({ material, mass: ppm / 10_000 }));
  const old = new Set(facts.emulsifiers.map(({ lineId }) => lineId));
  const rest = facts.used.filter((one) => !facts.oils.includes(one) && !old.has(one.lineId));
  // The bench asks for one pH, the formula says a range: either end.
  const ends = facts.ph ? [facts.ph.low, facts.ph.high] : [null];
  const systems = ends.flatMap(
    (ph) =>
      rankSystems({
        wish: {
          ...{ emulsionType, feel: 'cream', climate: 'both', electrolyte: 'none' },
          ph,
          currency: 'EUR',
        },
        oils: lines(facts.oils.filter(({ lineId }) => !old.has(lineId))),
        rest: lines(rest.filter(({ material }) => material.code !== 'H-100')),
        materials: [...shelf.byId.values()],
        limit: 12,
      }).systems,
  );
  return systems.flatMap(({ lines: made }) => {
    const way = all(
      without([...old]),
      ...made.map(({ materialId, percent }) => added(shelf.byId.get(materialId)!, percent)),
    );
    // A wax among them asks for heat where all was cold.
    return [
      way,
      all(way, (one) =>
        heatedTo(
          (one.phases[0]?.lines ?? []).map(({ id }) => id),
          80,
        )(one),
      ),
    ];
  });
}

/** What makes room for a line that takes what is left to 100 %. */
const othersThan = ({ finding, formula }: Asked): string[] =>
  formula.phases.flatMap(({ lines }) => lines.flatMap(({ id }) => (finding.lines.includes(id) ? [] : [id])));

const leftOut = (asked: Asked): Way[] => asked.finding.lines.map((id) => without([id]));
const lower = ({ finding }: Asked): Way[] => LESS.map((by) => scaled(finding.lines, by));
const bases = ({ shelf }: Asked): Way[] =>
  ['C-202', 'C-204', 'C-206'].flatMap((code) =>
    Array.from({ length: 100 }, (_, step) => added(shelf.code(code), 0.1 * 1.05 ** step)),
  );

/** What a maker does who follows the advice of each check, in all the ways that it names. */
export const WAYS: Readonly<Record<string, (asked: Asked) => Way[]>> = {
  law: (asked) => [targetOf(asked.finding), ...lower(asked), ...leftOut(asked)],
  'legal-limit': lower,
  'usage-range': (asked) => [
    ...(asked.finding.advice.includes('raise it')
      ? [
          ...MORE.map((by) => scaled(asked.finding.lines, by)),
          ...LESS.map((by) => scaled(othersThan(asked), by)),
        ]
      : lower(asked)),
    ...leftOut(asked),
  ],
  'charge-conflict': leftOut,
  neutralising: (asked) => [
    ...(asked.finding.advice.includes('in its place') ? [...leftOut(asked), ...emulsified(asked)] : []),
    ...bases(asked),
    ...[...MORE, 8, 16, 32].map((by) =>
      scaled(
        idsThat(asked, (one) => one.functions.includes('base')),
        by,
      ),
    ),
  ],
  'too-much-base': (asked) =>
    LESS.map((by) =>
      scaled(
        idsThat(asked, (one) => one.functions.includes('base')),
        by,
      ),
    ),
  'emulsion-type': emulsified,
  'disperses-in-water': emulsified,
  'hlb-match': emulsified,
  'emulsifier-to-oil': (asked) => [
    ...MORE.map((by) => scaled(asked.finding.lines, by)),
    ...emulsified(asked),
  ],
  'water-in-oil-partners': emulsified,
  'cationic-partner': (asked) => [added(asked.shelf.code('N-101'), 1), ...emulsified(asked)],
  'water-in-oil-salt': ({ shelf }) => [added(shelf.code('C-301'), 0.7)],
  electrolyte: (asked) => [
    ...leftOut(asked),
    ...asked.finding.lines.map((id) => instead([id], asked.shelf.code('T-102'), 0.3)),
    ...preserved(asked),
    ...emulsified(asked),
  ],
  'no-preservative': preserved,
  'preservative-ph': (asked) => [targetOf(asked.finding), ...preserved(asked)],
  'preservative-spectrum': preserved,
  'preservative-free': (asked) => [
    ...preserved(asked),
    ...asked.formula.phases.flatMap(({ lines }) => lines.map(({ id }) => without([id]))),
  ],
  'working-ph': (asked) => [targetOf(asked.finding), ...leftOut(asked), ...emulsified(asked)],
  'harmful-pairs': leftOut,
  nitrosamines: leftOut,
  'heat-sensitive': (asked) => [moved(asked.finding.lines, 'cool')],
  unmelted: (asked) => [
    moved(asked.finding.lines, 'hot'),
    ...[75, 80, 85, 90].map((heat) => heatedTo(asked.finding.lines, heat)),
  ],
  solubility: (asked) => [
    ...lower(asked),
    moved(asked.finding.lines, 'hot'),
    moved(asked.finding.lines, 'cool'),
  ],
  antioxidant: ({ shelf }) => [added(shelf.code('V-101'), 0.2)],
  'archived-material': (asked) => [...emulsified(asked), ...leftOut(asked)],
  chelator: ({ shelf }) => [added(shelf.code('R-301'), 0.1), added(shelf.code('R-302'), 0.1)],
  'one-sided-charge': (asked) => [
    ...['A-305', 'A-306', 'A-307', 'A-308', 'N-101', 'N-113'].map((code) =>
      added(asked.shelf.code(code), 0.5),
    ),
    ...emulsified(asked),
  ],
  'powder-load': lower,
  'storage-temperatures': leftOut,
  'user-and-site': leftOut,
  classified: leftOut,
};

/** What tells of something that follows from what is meant to be there, and asks for no other formula. */
export const NOTHING_TO_FOLLOW = new Set([
  'label-notices',
  'uv-filters',
  'nano',
  'small-lines',
  'supply',
  'papers',
  'withdrawn-material',
  'water-activity',
  'internal-phase',
  'allergen-data',
  'sanitising',
  'missing-material',
  'empty',
  'total',
]);
