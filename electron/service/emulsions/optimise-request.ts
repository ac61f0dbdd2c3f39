import { candidateFilter, filtered } from '@core/emulsions/bench/candidate-filter';
import { demand } from '@core/emulsions/optimise/demand';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import { readCandidates } from '@db/emulsions/candidates';
import { readSettings } from '@db/settings/settings';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { runInline } from './run-job';

/** What is asked of the optimiser; its candidates are read from the library here. */
export const optimiseRequest = z.object({ filter: candidateFilter, demand });

/**
 * Chooses emulsifiers from the library for a demand.
 * @throws Problem as `optimise`, and `cancelled` when the asker has gone
 */
export function optimiseFromLibrary(
  context: ServiceContext,
  { filter, demand: asked }: z.infer<typeof optimiseRequest>,
  signal: AbortSignal,
): Promise<OptimiseResult> {
  const { library } = context.session.current();
  const all = readCandidates(library, readSettings(library).currency);
  const candidates = filtered(all, filter, asked.pinned);
  // One that is excluded but filtered out already needs no demand of its own.
  const known = new Set(candidates.map((one) => one.id));
  const excluded = asked.excluded.filter((id) => known.has(id));
  const run = context.runJob ?? runInline;
  return run({ kind: 'optimise', input: { candidates, demand: { ...asked, excluded } } }, signal);
}
