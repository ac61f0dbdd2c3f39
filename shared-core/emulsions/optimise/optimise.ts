import { z } from 'zod';
import { Problem } from '../../problems/problem';
import { choiceOf, type Level } from './choice';
import { candidate, demand as demandSchema, type Candidate, type Demand } from './demand';
import { explain } from './explain';
import { prepare, refuseContradictions } from './prepare';
import type { OptimiseResult, SolveLp } from './result';
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

function cautionsFor(demand: Demand, best: Level[]): string[] {
  const cautions = ['Published HLB values disagree by 1 to 2 units: try a series of ±1 HLB in steps of 0.5.'];
  if (demand.targetHlb !== null && demand.tolerance < 0.2) {
    cautions.push('A tolerance below 0.2 asks for more than HLB values are known to.');
  }
  const others = best.filter(({ player }) => !player.described).map(({ player }) => player.one.name);
  if (demand.targetHlb !== null && others.length > 0) {
    cautions.push(`The mean HLB leaves out ${others.join(', ')}, which it does not describe.`);
  }
  return demand.targetHlb === null ? [] : cautions;
}

async function alternativesTo(search: Search, best: Level[]): Promise<Level[][]> {
  const found: Level[][] = [];
  const cuts = [best.map(({ player }) => player.y)];
  while (found.length < search.demand.alternatives) {
    const next = await bestAnswer(search, { cuts });
    if (!next) break;
    found.push(next);
    cuts.push(next.map(({ player }) => player.y));
  }
  return found;
}

/**
 * Which emulsifiers, and how much of each: a mixed-integer model, solved to proven optimality.
 *
 * Candidates with no value for what is asked (no HLB, no price) are left out and named. Ionic, polymeric and
 * particulate emulsifiers have no weight in the mean HLB, which does not describe them; beside a target HLB they take
 * part only when pinned or asked for by a charge rule, and make up half of the emulsifier at most. Alternatives are
 * next-best answers, none of which holds all the materials of one before it.
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
  const alternatives = await alternativesTo(search, best);
  return {
    status: 'optimal',
    best: choiceOf(best, demand),
    alternatives: alternatives.map((levels) => choiceOf(levels, demand)),
    leftOut,
    cautions: cautionsFor(demand, best),
  };
}
