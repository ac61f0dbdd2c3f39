import type { HlbBand } from '../hlb-band';

/** One answer: materials at their levels (% of the formula). */
export interface Choice {
  lines: { id: string; name: string; percent: number }[];
  totalPercent: number;
  /** Mass-weighted mean over the non-ionic classic ones; null when there are none with a value. */
  hlb: number | null;
  /** The band that the figures' own spread gives to that mean; null with it. */
  hlbBand: HlbBand | null;
  /** What the emulsifiers add to the cost of a kg of product, in minor units; null when a price is missing. */
  costPerKg: number | null;
  /** The value of the objective: minor units per kg, HLB units from the target, or a count. */
  objective: number;
}

/** A demand that, if given up or eased, makes an answer possible; `says` tells how far. */
export interface Relaxation {
  demand: string;
  says: string;
}

export interface LeftOut {
  id: string;
  name: string;
  why: string;
}

export type OptimiseResult =
  | {
      status: 'optimal';
      best: Choice;
      /**
       * Next-best answers, best first, each of other materials. Those that hold all materials of a better answer and
       * some more are among them only where there are too few without.
       */
      alternatives: Choice[];
      /** Whether the best and the alternatives are all the sets of materials that meet the demand. */
      noMore: boolean;
      leftOut: LeftOut[];
      cautions: string[];
    }
  | {
      status: 'infeasible';
      /** In one sentence, which demands cannot be met together. */
      reason: string;
      /** Each alone makes an answer possible; empty when only several together do. */
      relax: Relaxation[];
      /** A smallest set of demands that cannot be met together. */
      conflict: string[];
      leftOut: LeftOut[];
    };

/** What a solver of linear and mixed-integer models answers. */
export interface LpSolution {
  status: 'optimal' | 'infeasible';
  /** By the names of the variables in the model. */
  values: Readonly<Record<string, number>>;
  /** The dual price of each row in the model's order; zeros where the model has whole-number variables. */
  duals: readonly number[];
}

/** The solver gave neither an optimum nor a proof that there is none. */
export class SolverFailed extends Error {
  override name = 'SolverFailed';
}

/**
 * Solves a model in CPLEX LP format to proven optimality, or proves it infeasible.
 * @throws SolverFailed on anything else
 */
export type SolveLp = (lp: string) => Promise<LpSolution>;
