import { Worker } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import type { Rewriter, RewriteResult } from './rewrite';
import type { WorkerAnswer } from './rewrite-worker';

/**
 * Rewrites in a thread of its own, so that the process goes on answering.
 * @param workerUrl the built `rewrite-worker.js`
 */
export function createWorkerRewriter(workerUrl: URL): Rewriter {
  return (job) =>
    new Promise<RewriteResult>((resolve, reject) => {
      const worker = new Worker(workerUrl, { workerData: job });
      worker.once('message', (answer: WorkerAnswer) => {
        if ('problem' in answer) return reject(new Problem(answer.problem));
        const { result, backupProblem } = answer;
        resolve(backupProblem ? { ...result, backupProblem: new Problem(backupProblem) } : result);
      });
      worker.once('error', reject);
      // After a message this changes nothing: a promise settles once.
      worker.once('exit', (code) =>
        reject(new Error(`The rewrite worker ended without an answer (${code}).`)),
      );
    });
}
