import { parentPort } from 'node:worker_threads';
import { outcomeOf, type Outcome } from './outcome';

/** A job on its way to a thread, and what comes back under its number. */
export interface JobMessage<Job> {
  number: number;
  job: Job;
}
export type AnswerMessage<Result> = { number: number } & Outcome<Result>;

/**
 * In a worker: does each job that is sent, and answers under its number.
 * @param given memory of an answer that is given away instead of being copied
 */
export function answerJobs<Job, Result>(
  perform: (job: Job) => Promise<Result>,
  given: (result: Result) => ArrayBuffer[] = () => [],
): void {
  parentPort?.on('message', async ({ number, job }: JobMessage<Job>) => {
    const answer: AnswerMessage<Result> = { number, ...(await outcomeOf(() => perform(job))) };
    parentPort?.postMessage(answer, 'result' in answer ? given(answer.result) : []);
  });
}
