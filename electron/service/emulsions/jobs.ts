import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import type { ReformulateInput } from '@core/reformulate/field';
import { reformulate, type ReformulateResult } from '@core/reformulate/reformulate';
import { rankSystems, type Ranking, type RankInput } from '@core/emulsions/systems/rank-systems';
import { KeptShelf, type Lacking, type Shelf } from '../shelf/kept-shelf';
import { solveWithHighs } from './optimiser';

/** Work of the bench that may take long, as plain data. */
export type Job =
  | { kind: 'optimise'; input: OptimiseInput }
  | { kind: 'systems'; shelf: Shelf; input: Omit<RankInput, 'materials'> }
  | { kind: 'reformulate'; shelf: Shelf; input: Omit<ReformulateInput, 'candidates'> };

/** What each kind of work gives. */
export interface JobResults {
  optimise: OptimiseResult;
  systems: Ranking | Lacking;
  reformulate: ReformulateResult | Lacking;
}

const kept = new KeptShelf();

/** Does a job in this thread. @throws Problem as the computing does */
export async function perform(job: Job): Promise<JobResults[Job['kind']]> {
  switch (job.kind) {
    case 'optimise':
      return optimise(job.input, solveWithHighs);
    case 'systems': {
      const shelf = kept.take(job.shelf);
      return 'lacking' in shelf ? shelf : rankSystems({ ...job.input, materials: shelf });
    }
    case 'reformulate': {
      const shelf = kept.take(job.shelf);
      return 'lacking' in shelf ? shelf : reformulate({ ...job.input, candidates: shelf }, solveWithHighs);
    }
  }
}
