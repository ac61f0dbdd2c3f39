import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import type { ReformulateInput } from '@core/reformulate/field';
import { reformulate, type ReformulateResult } from '@core/reformulate/reformulate';
import { rankSystems, type Ranking, type RankInput } from '@core/emulsions/systems/rank-systems';
import { materials } from '@db/materials/materials';
import type { RecordRows } from '@db/record/record-table';
import { solveWithHighs } from './optimiser';

/** Work of the bench that may take long, as plain data. */
export type Job =
  | { kind: 'optimise'; input: OptimiseInput }
  | { kind: 'systems'; rows: RecordRows[]; input: Omit<RankInput, 'materials'> }
  | { kind: 'reformulate'; rows: RecordRows[]; input: Omit<ReformulateInput, 'candidates'> };

/** What each kind of work gives. */
export interface JobResults {
  optimise: OptimiseResult;
  systems: Ranking;
  reformulate: ReformulateResult;
}

/** Does a job in this thread. @throws Problem as the computing does */
export async function perform(job: Job): Promise<JobResults[Job['kind']]> {
  switch (job.kind) {
    case 'optimise':
      return optimise(job.input, solveWithHighs);
    case 'systems':
      return rankSystems({ ...job.input, materials: job.rows.flatMap((rows) => materials.assemble(rows)) });
    case 'reformulate':
      return reformulate(
        { ...job.input, candidates: job.rows.flatMap((rows) => materials.assemble(rows)) },
        solveWithHighs,
      );
  }
}
