import { describe, expect, it } from 'vitest';
import { checkFormula } from '@core/checks/all';
import type { Finding } from '@core/checks/check';
import { demoLibrary } from '@core/demo/demo-library';
import { benchTypeOf, type BenchType } from '@core/emulsions/bench/bench-state';
import { takeLines } from '@core/emulsions/bench/from-formula';
import type { RankedSystem } from '@core/emulsions/systems/rank-systems';
import { rankSystems } from '@core/emulsions/systems/rank-systems';
import { isOil, type OilLine } from '@core/emulsions/systems/oil-phase';
import { FEELS, type Feel } from '@core/emulsions/systems/wish';
import type { FormulaContent, ProductType } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { blankTarget } from '@core/formulas/formula';
import { content, phase, type Row } from '../checks/build';

const { materials, formulas } = demoLibrary();
const byId = new Map(materials.map((one) => [one.id, one]));
const byCode = (code: string): Material => materials.find((one) => one.code === code)!;

interface OilPhase {
  name: string;
  type: BenchType;
  oils: OilLine[];
  rest: OilLine[];
}

const PRODUCTS: Record<BenchType, ProductType> = {
  'o/w': 'o/w emulsion',
  'w/o': 'w/o emulsion',
  'cationic o/w': 'cationic o/w emulsion',
};

/** The oil phase of every demonstration formula that is an emulsion, for every type of emulsion, with and without the rest. */
const fromFormulas: OilPhase[] = formulas.flatMap((formula) => {
  const own = benchTypeOf(formula.productType);
  const taken = takeLines(formula, Object.fromEntries(byId));
  const lines = (list: { materialId: string; percent: number }[]): OilLine[] =>
    list.map(({ materialId, percent }) => ({ material: byId.get(materialId)!, mass: percent }));
  const water = byCode('H-100').id;
  const rest = lines(taken.rest.filter((line) => line.materialId !== water));
  return own === null
    ? []
    : [
        { name: `${formula.code} with its rest`, type: own, oils: lines(taken.oils), rest },
        ...(['o/w', 'w/o', 'cationic o/w'] as const).map((type) => ({
          name: `${formula.code} as ${type}`,
          type,
          oils: lines(taken.oils),
          rest: [],
        })),
      ];
});

/** Every oil, butter, wax and fatty alcohol of the shelf alone, at little, usual and much. */
const alone: OilPhase[] = materials
  .filter((one) => one.status !== 'archived' && isOil(one))
  .flatMap((material) =>
    (['o/w', 'w/o'] as const).flatMap((type) =>
      [2, 20, 45].map((mass) => ({
        name: `${material.code} ${mass} % ${type}`,
        type,
        oils: [{ material, mass }],
        rest: [],
      })),
    ),
  );

/** What a formula of a system is made up with so that only the system is judged: water, preservative, chelator, salt. */
function formulaOf({ type, oils, rest }: OilPhase, system: RankedSystem): FormulaContent {
  const rows = [...oils, ...rest].map(({ material, mass }): Row => [material, mass]);
  for (const line of system.lines) rows.push([byId.get(line.materialId)!, line.percent]);
  if (!rest.some((one) => one.material.functions.includes('preservative'))) rows.push([byCode('R-102'), 0.8]);
  if (type === 'w/o') rows.push([byCode('C-301'), 0.7]);
  const used = rows.reduce((sum, [, percent]) => sum + percent, 0);
  const whole = phase([...rows, [byCode('H-100'), 0]], 80);
  whole.lines.at(-1)!.toHundred = true;
  if (used > 100) throw new Error('More than the whole.');
  return content([whole], { productType: PRODUCTS[type], target: blankTarget() });
}

/** Checks of how a product is made and of the other lines: a system has no part in them. */
const NOT_OF_THE_SYSTEM = [
  'unmelted',
  'heat-sensitive',
  'total',
  'usage-range',
  'legal-limit',
  'no-preservative',
];

/** A remark on HLB about a system of which the ranking says that its HLB meets the oils: one rule must hold for both. */
function saidToFit(finding: Finding, { reasons }: RankedSystem): boolean {
  const said = reasons.find((reason) => reason.ruleId === 'hlb-fit')?.verdict;
  return finding.ruleId === 'hlb-match' && said === 'for';
}

function warnings(oilPhase: OilPhase, system: RankedSystem): Finding[] {
  const made = formulaOf(oilPhase, system);
  const own = new Set(system.lines.map((line) => line.materialId));
  const ownLines = new Set(
    made.phases.flatMap((one) => one.lines.filter((line) => own.has(line.materialId)).map((line) => line.id)),
  );
  return checkFormula({ content: made, materials: byId }).filter(
    (finding) =>
      (finding.severity !== 'note' || saidToFit(finding, system)) &&
      (!NOT_OF_THE_SYSTEM.includes(finding.ruleId) ||
        (finding.ruleId === 'usage-range' && finding.lines.some((id) => ownLines.has(id)))) &&
      // Ethoxylates bind a preservative: that finding is about the system, whichever lines it names.
      (finding.lines.length === 0 ||
        finding.ruleId === 'preservative-free' ||
        finding.lines.some((id) => ownLines.has(id))),
  );
}

function proposalsFor(oilPhase: OilPhase, feel: Feel, climate: 'both' | 'temperate'): RankedSystem[] {
  return rankSystems({
    wish: {
      ...{ emulsionType: oilPhase.type, feel, climate, ph: null, electrolyte: 'none' },
      currency: 'EUR',
    },
    oils: oilPhase.oils,
    rest: oilPhase.rest,
    materials,
    limit: 12,
  }).systems;
}

describe('what the bench proposes as sound meets no warning of our checks', () => {
  it.each(fromFormulas)('$name', (oilPhase) => {
    let sound = 0;
    for (const feel of FEELS) {
      for (const climate of ['both', 'temperate'] as const) {
        for (const system of proposalsFor(oilPhase, feel, climate)) {
          const found = warnings(oilPhase, system);
          const names = system.lines.map((line) => `${line.percent.toFixed(2)} ${line.name}`).join(', ');
          if (system.sound) {
            sound += 1;
            expect(
              found.map((one) => one.title),
              `${feel}, ${climate}: ${names}`,
            ).toEqual([]);
          } else {
            expect(
              found.length,
              `${feel}, ${climate}: ${names} is flagged, and no check warns`,
            ).toBeGreaterThan(0);
          }
        }
      }
    }
    expect(sound).toBeGreaterThan(0);
  });

  it('for every single oil of the shelf, at little, usual and much', () => {
    let sound = 0;
    for (const oilPhase of alone) {
      for (const feel of ['milk', 'rich cream'] as const) {
        for (const system of proposalsFor(oilPhase, feel, 'both').filter((one) => one.sound)) {
          sound += 1;
          const names = system.lines.map((line) => `${line.percent.toFixed(2)} ${line.name}`).join(', ');
          expect(
            warnings(oilPhase, system).map((one) => one.title),
            `${oilPhase.name}, ${feel}: ${names}`,
          ).toEqual([]);
        }
      }
    }
    expect(sound).toBeGreaterThan(1000);
  }, 120_000);
});
