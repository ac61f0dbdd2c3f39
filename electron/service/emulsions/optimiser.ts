import loadHighs, { type Highs } from 'highs';
import { SolverFailed, type LpSolution, type SolveLp } from '@core/emulsions/optimise/result';

/** Seconds after which a model is given up; the largest models of the bench take a fraction of one. */
const TIME_LIMIT = 20;

/**
 * Searches for good answers and fresh starts that cost more on models of this size than the proof itself: without
 * them the demonstration shelf's models take an eighth of the time.
 */
const SMALL_MODELS = {
  mip_heuristic_run_feasibility_jump: false,
  mip_heuristic_run_rins: false,
  mip_heuristic_run_rens: false,
  mip_heuristic_run_root_reduced_cost: false,
  mip_allow_restart: false,
  mip_allow_cut_separation_at_nodes: false,
};

/** What is tried in turn: HiGHS's presolve fails on a few models whose optimum is zero in many ways at once. */
const ATTEMPTS = [
  SMALL_MODELS,
  { ...SMALL_MODELS, presolve: 'off' as const },
  { ...SMALL_MODELS, presolve: 'off' as const, mip_feasibility_tolerance: 1e-9 },
  { mip_feasibility_tolerance: 1e-9 },
];

type Attempt = (typeof ATTEMPTS)[number];
type Answer = ReturnType<Highs['solve']>;

let loading: Promise<Highs> | null = null;

/** The solver, loaded once. After a failure inside it the instance is dropped: its memory may be in disorder. */
async function solver(): Promise<Highs> {
  loading ??= loadHighs();
  try {
    return await loading;
  } catch (cause) {
    loading = null;
    throw new Error('The solver could not be loaded.', { cause });
  }
}

async function attempt(lp: string, options: Attempt): Promise<Answer> {
  const highs = await solver();
  try {
    return highs.solve(lp, { ...options, output_flag: false, mip_rel_gap: 0, time_limit: TIME_LIMIT });
  } catch (cause) {
    loading = null;
    throw new SolverFailed('The solver failed on this model.', { cause });
  }
}

/** The answer when it settles the model; null when it is worth trying another way. */
function settled(solution: Answer): LpSolution | null {
  if (solution.Status === 'Infeasible') return { status: 'infeasible', values: {}, duals: [] };
  if (solution.Status === 'Time limit reached') {
    throw new SolverFailed(`The solver did not settle this model within ${TIME_LIMIT} s.`);
  }
  if (solution.Status !== 'Optimal') return null;
  const columns = Object.entries(solution.Columns);
  return {
    status: 'optimal',
    values: Object.fromEntries(columns.map(([name, column]) => [name, column.Primal])),
    duals: solution.Rows.map((row) => ('Dual' in row ? row.Dual : 0)),
  };
}

/**
 * Solves a model in CPLEX LP format with HiGHS, to proven optimality (gap 0). A model on which the solver stumbles is
 * tried again without presolve, and then with a tighter tolerance.
 *
 * @throws SolverFailed when the model cannot be read, is not settled within 20 s, or fails every way it is tried; the
 * next call starts afresh
 */
export const solveWithHighs: SolveLp = async (lp): Promise<LpSolution> => {
  let failure: unknown = null;
  for (const options of ATTEMPTS) {
    try {
      const solution = await attempt(lp, options);
      const answer = settled(solution);
      if (answer) return answer;
      failure = new SolverFailed(`The solver stopped with: ${solution.Status}.`);
    } catch (cause) {
      // Out of time once, it would be so again.
      if (!(cause instanceof SolverFailed) || cause.cause === undefined) throw cause;
      failure = cause;
    }
  }
  throw failure;
};
