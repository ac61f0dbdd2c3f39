import { parentPort, workerData } from 'node:worker_threads';
import { Problem, type ProblemParts } from '@core/problems/problem';
import { perform, type Job, type JobResults } from './jobs';

/** What the worker answers: a Problem does not survive the crossing, its parts do. */
export type EmulsionsAnswer = { result: JobResults[Job['kind']] } | { problem: ProblemParts };

async function answer(job: Job): Promise<EmulsionsAnswer> {
  try {
    return { result: await perform(job) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { code, message, advice, fields, facts } = error;
    return { problem: { code, title: message, advice, fields, facts } };
  }
}

parentPort?.postMessage(await answer(workerData as Job));
