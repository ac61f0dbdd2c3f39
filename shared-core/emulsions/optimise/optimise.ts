import { z } from 'zod';
import { Problem } from '../../problems/problem';
import { targetCautions } from '../systems/oil-phase';
import { assumedUseCaution } from '../usage-range';
import { choiceOf, type Level } from './choice';
import { candidate, demand as demandSchema, type Candidate, type Demand } from './demand';
import { explain } from './explain';
import type { Cut } from './model';
import { prepare, refuseContradictions, type Player } from './prepare';
import { SolverFailed, type Choice, type OptimiseResult, type SolveLp } from './result';
import { bestAnswer, type Search } from './search';

const input = z.object({
  candidates: z.array(candidate).max(5000, 'Filter down to 5,000 candidates or fewer.'),
  demand: demandSchema,
});
export type OptimiseInput = z.input<typeof input>;

function parsed(raw: OptimiseInput): { candidates: Candidate[]; demand: Demand } {
  const result = input.safeParse(raw);
  if (result.success) return result.data;
  throw new Problem({
    code: 'invalid-input',
    title: result.error.issues[0]?.message ?? 'The demand cannot be read.',
    advice: 'Correct the demand and compute again. Nothing was changed.',
    fields: result.error.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message })),
  });
}

function hlbCautions(demand: Demand, best: Level[]): string[] {
  if (demand.targetHlb === null) return [];
  const cautions = [
    'Published HLB values disagree by 1 to 2 units: try a series of ±1 HLB in steps of 0.5.',
    ...targetCautions(demand.targetHlb, demand.emulsionType),
  ];
  if (demand.tolerance < 0.2) {
    cautions.push('A tolerance below 0.2 asks for more than HLB values are known to.');
  }
  const others = best.filter(({ player }) => !player.described).map(({ player }) => player.one.name);
  if (others.length > 0) {
    cautions.push(`The mean HLB leaves out ${others.join(', ')}, which it does not describe.`);
  }
  return cautions;
}

function cautionsFor(
  demand: Demand,
  best: Level[],
  players: readonly Player[],
  choices: readonly Choice[],
): string[] {
  const shown = new Set(choices.flatMap((choice) => choice.lines.map((line) => line.id)));
  const assumed = players.filter(({ one }) => one.maxAssumed && shown.has(one.id)).map(({ one }) => one.name);
  return [...hlbCautions(demand, best), ...assumedUseCaution(assumed)];
}

/** Next-best answers, best first. */
interface Alternatives {
  choices: Choice[];
  noMore: boolean;
  cautions: string[];
}

/** Best first: by the objective without the solver's noise, then by cost, a missing price last. */
function byWorth(a: Choice, b: Choice): number {
  const steps = (choice: Choice): number => Math.round(choice.objective * 1e6);
  return steps(a) - steps(b) || (a.costPerKg ?? Infinity) - (b.costPerKg ?? Infinity) || 0;
}

/**
 * Answers unlike those before come first: none holds all the materials of another. Where those are too few, every other
 * set of materials is let in, such as one with a further material beside pins that suffice.
 */
async function alternativesTo(search: Search, best: Level[]): Promise<Alternatives> {
  const { demand } = search;
  const answers = [best];
  const cautions: string[] = [];
  const wanted = demand.alternatives + 1;
  try {
    for (const exact of [false, true]) {
      while (answers.length < wanted) {
        const cuts = answers.map((levels): Cut => ({ used: levels.map(({ player }) => player.y), exact }));
        const next = await bestAnswer(search, { cuts });
        if (!next) break;
        answers.push(next);
      }
    }
  } catch (failure) {
    // The best is proven already, and must not be lost with the rest.
    if (!(failure instanceof SolverFailed)) throw failure;
    cautions.push('The solver could not settle a further choice: there may be more than are shown.');
  }
  const choices = answers.slice(1).map((levels) => choiceOf(levels, demand));
  const noMore = answers.length < wanted && cautions.length === 0;
  return { choices: choices.sort(byWorth), noMore, cautions };
}

/**
 * Which emulsifiers, and how much of each: a mixed-integer model, solved to proven optimality.
 *
 * Candidates with no value for what is asked (no HLB, no price) are left out and named. Ionic, polymeric and
 * particulate emulsifiers have no weight in the mean HLB, which does not describe them; beside a target HLB they take
 * part only when pinned or asked for by a charge rule, and make up half of the emulsifier at most. Alternatives are
 * next-best answers of other materials, as many as are asked for unless there are no more.
 *
 * @param raw candidates and demand; levels in % of the formula, costs in minor units per kg
 * @param solve solves a CPLEX LP text to proven optimality
 * @throws Problem `invalid-input` for contradictory pins, values out of range, or candidates that cannot take part
 */
export async function optimise(raw: OptimiseInput, solve: SolveLp): Promise<OptimiseResult> {
  const { candidates, demand } = parsed(raw);
  refuseContradictions(candidates, demand);
  const { players, leftOut } = prepare(candidates, demand);
  const search: Search = { players, demand, solve };
  const best = await bestAnswer(search, {});
  if (!best) return { status: 'infeasible', ...(await explain(search)), leftOut };
  const { choices, noMore, cautions } = await alternativesTo(search, best);
  const first = choiceOf(best, demand);
  return {
    status: 'optimal',
    best: first,
    alternatives: choices,
    noMore,
    leftOut,
    cautions: [...cautionsFor(demand, best, players, [first, ...choices]), ...cautions],
  };
}
