import { Problem } from '@core/problems/problem';

/** Whatever is asked of a library when none is open. */
export function noLibrary(): Problem {
  return new Problem({
    code: 'no-library',
    title: 'No library is open.',
    advice: 'Open one, or start a new one, on the first screen.',
  });
}
