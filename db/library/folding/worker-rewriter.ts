import { Worker } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { problemParts } from './problem-parts';
import type { Announce, Rewriter, RewriteResult } from './rewrite';
import type { GoAhead, WorkerMessage } from './rewrite-worker';

/**
 * Rewrites in a thread of its own, so that the process goes on answering.
 * @param workerUrl the built `rewrite-worker.js`
 */
export function createWorkerRewriter(workerUrl: URL): Rewriter {
  return (job, announce) =>
    new Promise<RewriteResult>((resolve, reject) => {
      const worker = new Worker(workerUrl, { workerData: job });
      worker.on('message', (message: WorkerMessage) => {
        if ('announce' in message) {
          void goAhead(announce, message.announce).then((reply) => worker.postMessage(reply));
        } else if ('problem' in message) reject(new Problem(message.problem));
        else {
          const { result, backupProblem } = message;
          resolve(backupProblem ? { ...result, backupProblem: new Problem(backupProblem) } : result);
        }
      });
      worker.once('error', reject);
      // After a message this changes nothing: a promise settles once.
      worker.once('exit', (code) =>
        reject(new Error(`The rewrite worker ended without an answer (${code}).`)),
      );
    });
}

async function goAhead(announce: Announce, sha256: string): Promise<GoAhead> {
  try {
    await announce(sha256);
    return { go: true };
  } catch (error) {
    return { stop: problemParts(diskProblem(error, 'write the library file')) };
  }
}
