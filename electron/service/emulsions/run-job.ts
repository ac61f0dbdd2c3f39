import { cancelled, startThread } from '../threads/thread';
import type { Job, JobResults } from './jobs';

/** Does the bench's long work. When `signal` aborts, the work stops and a `Problem` `cancelled` is thrown. */
export type RunJob = <J extends Job>(job: J, signal?: AbortSignal) => Promise<JobResults[J['kind']]>;

/** Works in the process itself: for tests, and where no worker is built. The solver is loaded only then. */
export const runInline: RunJob = async <J extends Job>(job: J, signal?: AbortSignal) => {
  if (signal?.aborted) throw cancelled();
  const { perform } = await import('./jobs');
  return (await perform(job)) as JobResults[J['kind']];
};

/**
 * Works in a thread of its own, so that the process goes on answering and a job can be ended at any moment. The thread
 * stays warm: the solver is compiled once, not for every question.
 * @param workerUrl the built `emulsions-worker.js`
 */
export function workerRunner(workerUrl: URL): RunJob {
  const thread = startThread<Job, JobResults[Job['kind']]>(workerUrl);
  return async <J extends Job>(job: J, signal?: AbortSignal) =>
    (await thread.run(job, signal)) as JobResults[J['kind']];
}
