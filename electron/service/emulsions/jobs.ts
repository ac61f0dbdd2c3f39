import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import { rankSystems, type Ranking, type RankInput } from '@core/emulsions/systems/rank-systems';
import { materials } from '@db/materials/materials';
import type { RecordRows } from '@db/record/record-table';
import { solveWithHighs } from './optimiser';

/** Work of the bench that may take long, as plain data. */
export type Job =
  | { kind: 'optimise'; input: OptimiseInput }
  | { kind: 'systems'; rows: RecordRows[]; input: Omit<RankInput, 'materials'> };

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
      return rankSystems({ ...job.input, materials: job.rows.flatMap((rows) => materials.assemble(rows)) });
  }
}
