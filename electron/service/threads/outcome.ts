import { Problem, type ProblemParts } from '@core/problems/problem';

/** What became of a piece of work, as it can cross to another thread: a Problem does not survive that, its parts do. */
export type Outcome<Result> = { result: Result } | { problem: ProblemParts } | { fault: string };

/** Does the work, and gives what became of it. Never throws. */
export async function outcomeOf<Result>(work: () => Promise<Result> | Result): Promise<Outcome<Result>> {
  try {
    return { result: await work() };
  } catch (error) {
    if (!(error instanceof Problem))
      return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    const { code, message, advice, fields, facts } = error;
    return { problem: { code, title: message, advice, fields, facts } };
  }
}

/** The error that an outcome tells of. */
export function errorOf(outcome: { problem: ProblemParts } | { fault: string }): Error {
  return 'problem' in outcome ? new Problem(outcome.problem) : new Error(outcome.fault);
}
