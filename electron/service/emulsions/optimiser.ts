import loadHighs, { type Highs } from 'highs';
import type { LpSolution, SolveLp } from '@core/emulsions/optimise/result';

/** Seconds after which a model is given up; the largest models of the bench take a fraction of one. */
const TIME_LIMIT = 20;

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

/**
 * Solves a model in CPLEX LP format with HiGHS, to proven optimality (gap 0).
 *
 * @throws Error when the model cannot be read, or is not settled within 20 s; the next call starts afresh
 */
export const solveWithHighs: SolveLp = async (lp): Promise<LpSolution> => {
  const highs = await solver();
  let solution: ReturnType<Highs['solve']>;
  try {
    solution = highs.solve(lp, { output_flag: false, mip_rel_gap: 0, time_limit: TIME_LIMIT });
  } catch (cause) {
    loading = null;
    throw new Error('The solver failed on this model.', { cause });
  }
  if (solution.Status === 'Infeasible') return { status: 'infeasible', values: {}, duals: [] };
  if (solution.Status !== 'Optimal') throw new Error(`The solver stopped with: ${solution.Status}.`);
  const columns = Object.entries(solution.Columns);
  return {
    status: 'optimal',
    values: Object.fromEntries(columns.map(([name, column]) => [name, column.Primal])),
    duals: solution.Rows.map((row) => ('Dual' in row ? row.Dual : 0)),
  };
};
