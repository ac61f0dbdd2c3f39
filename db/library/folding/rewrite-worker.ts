import { once } from 'node:events';
import { parentPort, workerData } from 'node:worker_threads';
import { Problem, type ProblemParts } from '@core/problems/problem';
import { migrations } from '../../migrations/list';
import { prepareState, type PreparedState, type StateToFollow } from '../backups/restore';
import { nodeFileSystem } from '../file/file-system';
import { performCheck, type CheckJob } from './check';
import { problemParts } from './problem-parts';
import { performRewrite, type RewriteJob, type RewriteResult } from './rewrite';

/** What a worker answers: a Problem does not survive the crossing, its parts do. */
export type WorkerAnswer =
  { result: Omit<RewriteResult, 'backupProblem'>; backupProblem?: ProblemParts } | { problem: ProblemParts };
/** What it asks before it replaces the file, and is told. */
export type WorkerMessage = { announce: string } | WorkerAnswer;
export type WorkerJob = { rewrite: RewriteJob } | { check: CheckJob } | { prepare: StateToFollow };
export type CheckAnswer = { whole: true } | { problem: ProblemParts };
export type PrepareAnswer = { prepared: PreparedState } | { problem: ProblemParts };
export type GoAhead = { go: true } | { stop: ProblemParts };

function tell(message: WorkerMessage): void {
  parentPort?.postMessage(message);
}

async function announce(sha256: string): Promise<void> {
  if (!parentPort) return;
  const answered = once(parentPort, 'message');
  tell({ announce: sha256 });
  const [reply] = (await answered) as [GoAhead];
  if ('stop' in reply) throw new Problem(reply.stop);
}

async function answer(job: RewriteJob): Promise<WorkerAnswer> {
  try {
    const { backupProblem, ...result } = await performRewrite(nodeFileSystem, job, announce);
    return backupProblem ? { result, backupProblem: problemParts(backupProblem) } : { result };
  } catch (error) {
    if (error instanceof Problem) return { problem: problemParts(error) };
    throw error;
  }
}

/** Looking a file through is done in the same thread as writing one. */
async function answerCheck(job: CheckJob): Promise<CheckAnswer> {
  try {
    await performCheck(nodeFileSystem, job);
    return { whole: true };
  } catch (error) {
    if (error instanceof Problem) return { problem: problemParts(error) };
    throw error;
  }
}

async function answerPrepare(state: StateToFollow): Promise<PrepareAnswer> {
  try {
    return { prepared: await prepareState(migrations, state) };
  } catch (error) {
    if (error instanceof Problem) return { problem: problemParts(error) };
    throw error;
  }
}

async function tellPrepared(state: StateToFollow): Promise<void> {
  const answer = await answerPrepare(state);
  parentPort?.postMessage(answer, 'prepared' in answer ? [answer.prepared.bytes.buffer as ArrayBuffer] : []);
}

const given = workerData as WorkerJob;
if ('prepare' in given) await tellPrepared(given.prepare);
else if ('check' in given) parentPort?.postMessage(await answerCheck(given.check));
else tell(await answer(given.rewrite));
