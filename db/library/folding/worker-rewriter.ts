import { Worker } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { problemParts } from './problem-parts';
import type { Announce, Rewriter, RewriteResult } from './rewrite';
import type { StatePreparer } from '../backups/restore';
import type { Checker } from './check';
import type { CheckAnswer, GoAhead, PrepareAnswer, WorkerJob, WorkerMessage } from './rewrite-worker';

/**
 * Rewrites in a thread of its own, so that the process goes on answering.
 * @param workerUrl the built `rewrite-worker.js`
 */
export function createWorkerRewriter(workerUrl: URL): Rewriter {
  return (job, announce) =>
    new Promise<RewriteResult>((resolve, reject) => {
      const worker = new Worker(workerUrl, { workerData: { rewrite: job } satisfies WorkerJob });
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

/**
 * Looks files through in a thread of its own.
 * @param workerUrl the built `rewrite-worker.js`
 */
export function createWorkerChecker(workerUrl: URL): Checker {
  return (job) =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(workerUrl, { workerData: { check: job } satisfies WorkerJob });
      worker.once('message', (answer: CheckAnswer) =>
        'problem' in answer ? reject(new Problem(answer.problem)) : resolve(),
      );
      worker.once('error', reject);
      worker.once('exit', (code) => reject(new Error(`The check ended without an answer (${code}).`)));
    });
}

/**
 * Makes states ready in a thread of its own; their bytes go there, and others come back.
 * @param workerUrl the built `rewrite-worker.js`
 */
export function createWorkerPreparer(workerUrl: URL): StatePreparer {
  return (state) =>
    new Promise((resolve, reject) => {
      const bytes = inMemoryOfItsOwn(state.bytes);
      const worker = new Worker(workerUrl, {
        workerData: { prepare: { ...state, bytes } } satisfies WorkerJob,
        transferList: [bytes.buffer],
      });
      worker.once('message', (answer: PrepareAnswer) =>
        'problem' in answer ? reject(new Problem(answer.problem)) : resolve(answer.prepared),
      );
      worker.once('error', reject);
      worker.once('exit', (code) => reject(new Error(`The state could not be made ready (${code}).`)));
    });
}

/** Only memory that nothing else stands in can be given to another thread. */
function inMemoryOfItsOwn(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const { buffer, byteLength } = bytes;
  const isOwn = buffer instanceof ArrayBuffer && buffer.byteLength === byteLength;
  return isOwn ? (bytes as Uint8Array<ArrayBuffer>) : new Uint8Array(bytes);
}

async function goAhead(announce: Announce, sha256: string): Promise<GoAhead> {
  try {
    await announce(sha256);
    return { go: true };
  } catch (error) {
    return { stop: problemParts(diskProblem(error, 'write the library file')) };
  }
}
