import { parentPort } from 'node:worker_threads';
import { Problem, type ProblemParts } from '@core/problems/problem';

/** A job on its way to a thread, and what comes back; a Problem does not survive the crossing, its parts do. */
export interface JobMessage<Job> {
  number: number;
  job: Job;
}
export type AnswerMessage<Result> = { number: number } & (
  { result: Result } | { problem: ProblemParts } | { fault: string }
);

/** In a worker: does each job that is sent, and answers under its number. */
export function answerJobs<Job, Result>(perform: (job: Job) => Promise<Result>): void {
  parentPort?.on('message', async ({ number, job }: JobMessage<Job>) => {
    parentPort?.postMessage(await answerOf(number, () => perform(job)));
  });
}

async function answerOf<Result>(number: number, work: () => Promise<Result>): Promise<AnswerMessage<Result>> {
  try {
    return { number, result: await work() };
  } catch (error) {
    if (!(error instanceof Problem))
      return { number, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    const { code, message, advice, fields, facts } = error;
    return { number, problem: { code, title: message, advice, fields, facts } };
  }
}
