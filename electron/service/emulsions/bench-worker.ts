import { Worker } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import type { EmulsionsAnswer } from './emulsions-worker';
import { perform, type Job, type JobResults } from './jobs';

/** Does the bench's long work. When `signal` aborts, the work stops and a `Problem` `cancelled` is thrown. */
export type RunJob = <J extends Job>(job: J, signal?: AbortSignal) => Promise<JobResults[J['kind']]>;

function cancelled(): Problem {
  return new Problem({
    code: 'cancelled',
    title: 'The computing was stopped.',
    advice: 'Nothing was changed. Ask again when you like.',
  });
}

/** Works in the process itself: for tests, and where no worker is built. */
export const runInline: RunJob = async <J extends Job>(job: J, signal?: AbortSignal) => {
  if (signal?.aborted) throw cancelled();
  return (await perform(job)) as JobResults[J['kind']];
};

/**
 * Works in a thread of its own for each job, so that the process goes on answering and a job can be ended at any
 * moment.
 * @param workerUrl the built `emulsions-worker.js`
 */
export function workerRunner(workerUrl: URL): RunJob {
  return <J extends Job>(job: J, signal?: AbortSignal) =>
    new Promise<JobResults[J['kind']]>((resolve, reject) => {
      if (signal?.aborted) return reject(cancelled());
      const worker = new Worker(workerUrl, { workerData: job });
      const stop = (): void => {
        reject(cancelled());
        void worker.terminate();
      };
      signal?.addEventListener('abort', stop, { once: true });
      worker.once('message', (answer: EmulsionsAnswer) => {
        if ('problem' in answer) reject(new Problem(answer.problem));
        else resolve(answer.result as JobResults[J['kind']]);
      });
      worker.once('error', reject);
      worker.once('exit', (code) => {
        signal?.removeEventListener('abort', stop);
        // After a message this changes nothing: a promise settles once.
        reject(new Error(`The bench’s worker ended without an answer (${code}).`));
      });
    });
}
