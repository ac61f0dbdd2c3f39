import { Worker } from 'node:worker_threads';
import { Problem } from '@core/problems/problem';
import type { AnswerMessage, JobMessage } from './answer-jobs';
import { errorOf } from './outcome';

/** Does jobs one after another in a thread of its own, so that the process goes on answering. */
export interface Thread<Job, Result> {
  /**
   * When `signal` aborts, the job is ended, even in the middle, and `cancelled` is thrown.
   * @param given memory of the job that goes to the thread instead of being copied
   */
  run(job: Job, signal?: AbortSignal, given?: readonly ArrayBuffer[]): Promise<Result>;
}

/** The problem that a job was ended on request. */
export function cancelled(): Problem {
  return new Problem({
    code: 'cancelled',
    title: 'This was stopped.',
    advice: 'Nothing was changed. Ask again when you like.',
  });
}

/** Work of a thread makes much that is soon thrown away: with little room for it, a fifth of its time went into tidying. */
const YOUNG_MB = 192;

/**
 * A thread that starts with its first job and stays warm; a cancelled job ends it, and the next starts another.
 * @param workerUrl a built worker that calls `answerJobs`
 */
export function startThread<Job, Result>(workerUrl: URL): Thread<Job, Result> {
  let worker: Worker | undefined;
  let last: Promise<unknown> = Promise.resolve();
  let count = 0;

  function perform(job: Job, signal?: AbortSignal, given: readonly ArrayBuffer[] = []): Promise<Result> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(cancelled());
      count += 1;
      const number = count;
      worker ??= new Worker(workerUrl, { resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } });
      const current = worker;
      // An idle thread must not keep a host from ending; its server does that while it serves.
      current.unref();
      const end = (settle: () => void, keep = true): void => {
        current.off('message', heard).off('error', failed).off('exit', exited);
        signal?.removeEventListener('abort', stop);
        if (!keep) {
          worker = undefined;
          void current.terminate();
        }
        settle();
      };
      const heard = (answer: AnswerMessage<Result>): void => {
        if (answer.number !== number) return;
        end(() => {
          if ('result' in answer) resolve(answer.result);
          else reject(errorOf(answer));
        });
      };
      const failed = (error: unknown): void => end(() => reject(error as Error), false);
      const exited = (code: number): void => end(() => reject(new Error(`A worker ended (${code}).`)), false);
      const stop = (): void => end(() => reject(cancelled()), false);
      current.on('message', heard).once('error', failed).once('exit', exited);
      signal?.addEventListener('abort', stop, { once: true });
      current.postMessage({ number, job } satisfies JobMessage<Job>, [...given]);
    });
  }

  return {
    run(job, signal, given) {
      const result = last.then(() => perform(job, signal, given));
      last = result.catch(() => undefined);
      return result;
    },
  };
}
