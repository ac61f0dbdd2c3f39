import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import { rankSystems, type Ranking, type RankInput } from '@core/emulsions/systems/rank-systems';
import { assembleMaterials, type MaterialRows } from '@db/materials/read-many';
import { solveWithHighs } from './optimiser';

/** Work of the bench that may take long, as plain data. */
export type Job =
  | { kind: 'optimise'; input: OptimiseInput }
  | { kind: 'systems'; rows: MaterialRows[]; input: Omit<RankInput, 'materials'> };

/** What each kind of work gives. */
export interface JobResults {
  optimise: OptimiseResult;
  systems: Ranking;
}

/** Does a job in this thread. @throws Problem as the computing does */
export async function perform(job: Job): Promise<JobResults[Job['kind']]> {
  switch (job.kind) {
    case 'optimise':
      return optimise(job.input, solveWithHighs);
    case 'systems':
      return rankSystems({ ...job.input, materials: job.rows.flatMap(assembleMaterials) });
  }
}
