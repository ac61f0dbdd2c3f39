import { Problem, type ProblemCode } from '@core/problems/problem';
import { errorCode } from './file-system';

const SAFE = 'Everything saved before is safe.';

interface Words {
  code: ProblemCode;
  /** Completes "Stillroom could not …: ". */
  why: string;
  advice: string;
}

const FULL: Words = {
  code: 'disk-full',
  why: 'the disk is full',
  advice: 'Free some space on the disk that holds the library, then try again.',
};
const NOT_ALLOWED: Words = {
  code: 'library-read-only',
  why: 'the disk does not allow writing there',
  advice: 'Check that the folder and its files may be written to, or save a copy elsewhere.',
};
const FILE_FOR_FOLDER: Words = {
  code: 'disk-error',
  why: 'there is a file where its folder should be',
  advice:
    'Move or rename the file called “backups” or “attachments” in the library’s folder, then try again.',
};
const WORDS: Readonly<Record<string, Words>> = {
  ENOSPC: FULL,
  EDQUOT: {
    code: 'disk-full',
    why: 'your share of the disk is used up',
    advice: 'Delete files of yours that you do not need, or ask for more room, then try again.',
  },
  EROFS: NOT_ALLOWED,
  EACCES: NOT_ALLOWED,
  EPERM: NOT_ALLOWED,
  ENOTDIR: FILE_FOR_FOLDER,
  EEXIST: FILE_FOR_FOLDER,
  EBUSY: {
    code: 'disk-error',
    why: 'another program is holding the file',
    advice: 'Wait until the backup or synchronising program has finished, then try again.',
  },
};

/**
 * Turns a failed disk call into words. `doing` completes "Stillroom could not …". A Problem passes unchanged.
 */
export function diskProblem(error: unknown, doing: string): Problem {
  if (error instanceof Problem) return error;
  const errno = errorCode(error);
  const { code, why, advice } = WORDS[errno ?? ''] ?? {
    code: 'disk-error',
    why: `the disk reported an error${errno ? ` (${errno})` : ''}`,
    advice: 'Try again. If it happens again, save a copy on another disk and have this one checked.',
  };
  const title = `Stillroom could not ${doing}: ${why}.`;
  return new Problem(
    { code, title, advice: `${advice} ${SAFE}`, facts: { errno: errno ?? 'unknown' } },
    { cause: error },
  );
}
