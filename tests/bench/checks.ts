import { checkFormula } from '@core/checks/all';
import { demoLibrary } from '@core/demo/demo-library';
import { blankTarget, type FormulaContent, type FormulaPhase } from '@core/formulas/formula';
import { blankProductFile } from '@core/formulas/product-file';
import type { Law } from '@core/limits/law';
import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import type { Material } from '@core/materials/material';
import { blankMarket } from '@core/products/market';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { figureFrom, timeOf, type BenchFigure } from './measure';
import { Seeded } from './seeded';

const KEPT = { revision: 1, createdAt: '2026-01-01T00:00:00.000Z', updatedAt: '2026-01-01T00:00:00.000Z' };
const id = (what: string, at: number): string => `${what} ${at}`;

/** The example law as a library holds it. */
function exampleLaw(): Law {
  return {
    substances: starterSubstances().map((one, at) => ({ ...one, ...KEPT, id: id('substance', at) })),
    limits: STARTER_LIMITS.map((one, at) => ({ ...one, ...KEPT, id: id('limit', at) })),
  };
}

/** A cream of so many lines in three phases, of materials of the demonstration, which every check has much to say of. */
function formulaOf(lines: number, materials: readonly Material[], random: Seeded): FormulaContent {
  const phases = [75, 75, 40].map((temperatureC, at): FormulaPhase => ({
    id: id('phase', at),
    title: '',
    temperatureC,
    lines: [],
  }));
  for (let at = 0; at < lines; at++) {
    const material = materials[Math.floor(random.next() * materials.length)];
    phases[at % 3]?.lines.push({
      id: id('line', at),
      materialId: material?.id ?? '',
      ppm: Math.round((1_000_000 / lines) * random.next()),
      toHundred: at === 0,
      note: '',
    });
  }
  return {
    ...{
      code: '',
      name: 'Bench cream',
      productType: 'o/w emulsion',
      use: 'leave-on',
      purpose: '',
      notes: '',
    },
    market: { ...blankMarket(), kind: 'face cream', regions: ['EU', 'US'], users: ['pregnancy'] },
    ...blankProductFile(),
    ...{ phases, steps: [], target: { ...blankTarget(), phLow: 5, phHigh: 6 }, accepted: [] },
  };
}

/** The formula after a keystroke: one share is another. */
function edited(content: FormulaContent, round: number): FormulaContent {
  const phases = content.phases.map((phase, at) =>
    at === round % content.phases.length
      ? {
          ...phase,
          lines: phase.lines.map((line, place) =>
            place === round % phase.lines.length ? { ...line, ppm: line.ppm + 1 } : line,
          ),
        }
      : phase,
  );
  return { ...content, phases };
}

async function timesOf(lines: number, rounds: number): Promise<number[]> {
  const { materials } = demoLibrary();
  const known = new Map(materials.map((one) => [one.id, one]));
  const law = exampleLaw();
  const random = new Seeded(lines);
  const times: number[] = [];
  let content = formulaOf(lines, materials, random);
  for (let round = 0; round < rounds; round++) {
    // Another formula now and then: a mean over many, and no luck of one.
    content = round % 20 === 0 ? formulaOf(lines, materials, random) : edited(content, round);
    times.push(await timeOf(() => checkFormula({ content, materials: known, law, onDay: '2026-11-28' })));
  }
  // What the first rounds compile is measured as well: p95 of 200 leaves no room for more than ten slow ones.
  return times;
}

/** All checks after each keystroke: what a maker waits for while writing. */
export async function benchChecks({ quick }: { quick: boolean }): Promise<BenchFigure[]> {
  const rounds = quick ? 100 : 400;
  return [
    figureFrom('all checks of a formula of 40 lines', await timesOf(40, rounds), { atMost: 16 }),
    figureFrom('all checks of a formula of 200 lines', await timesOf(200, rounds)),
  ];
}
