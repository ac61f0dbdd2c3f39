import { parentPort, workerData } from 'node:worker_threads';
import { Problem, type ProblemParts } from '@core/problems/problem';
import { nodeFileSystem } from '../file/file-system';
import { performRewrite, type RewriteJob, type RewriteResult } from './rewrite';

/** What a worker answers: a Problem does not survive the crossing, its parts do. */
export type WorkerAnswer =
  { result: Omit<RewriteResult, 'backupProblem'>; backupProblem?: ProblemParts } | { problem: ProblemParts };

function partsOf({ code, message, advice, fields, facts }: Problem): ProblemParts {
  return { code, title: message, advice, fields, facts };
}

async function answer(job: RewriteJob): Promise<WorkerAnswer> {
  try {
    const { backupProblem, ...result } = await performRewrite(nodeFileSystem, job);
    return backupProblem ? { result, backupProblem: partsOf(backupProblem) } : { result };
  } catch (error) {
    if (error instanceof Problem) return { problem: partsOf(error) };
    throw error;
  }
}

parentPort?.postMessage(await answer(workerData as RewriteJob));
