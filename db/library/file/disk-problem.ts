import { Problem } from '@core/problems/problem';
import { errorCode } from './file-system';

const SAFE = 'Everything saved before is safe.';

/**
 * Turns a failed disk call into words. `doing` completes "Stillroom could not …". A Problem passes unchanged.
 */
export function diskProblem(error: unknown, doing: string): Problem {
  if (error instanceof Problem) return error;
  const code = errorCode(error);
  const facts = { errno: code ?? 'unknown' };
  const title = `Stillroom could not ${doing}`;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return new Problem(
        {
          code: 'disk-full',
          title:
            code === 'EDQUOT'
              ? `${title}: your share of the disk is used up.`
              : `${title}: the disk is full.`,
          advice:
            code === 'EDQUOT'
              ? `Delete files of yours that you do not need, or ask for more room, then try again. ${SAFE}`
              : `Free some space on the disk that holds the library, then try again. ${SAFE}`,
          facts,
        },
        { cause: error },
      );
    case 'EROFS':
    case 'EACCES':
    case 'EPERM':
      return new Problem(
        {
          code: 'library-read-only',
          title: `${title}: the disk does not allow writing there.`,
          advice: `Check that the folder and its files may be written to, or save a copy elsewhere. ${SAFE}`,
          facts,
        },
        { cause: error },
      );
    case 'ENOTDIR':
    case 'EEXIST':
      return new Problem(
        {
          code: 'disk-error',
          title: `${title}: there is a file where its folder should be.`,
          advice: `Move or rename the file of that name (“backups” or “attachments”) in the library’s folder, then try again. ${SAFE}`,
          facts,
        },
        { cause: error },
      );
    case 'EBUSY':
      return new Problem(
        {
          code: 'disk-error',
          title: `${title}: another program is holding the file.`,
          advice: `Wait until the backup or synchronising program has finished, then try again. ${SAFE}`,
          facts,
        },
        { cause: error },
      );
    default:
      return new Problem(
        {
          code: 'disk-error',
          title: `${title}: the disk reported an error${code ? ` (${code})` : ''}.`,
          advice: `Try again. If it happens again, save a copy on another disk and have this one checked. ${SAFE}`,
          facts,
        },
        { cause: error },
      );
  }
}
