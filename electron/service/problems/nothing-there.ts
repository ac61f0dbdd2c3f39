import { Problem } from '@core/problems/problem';

/** What is told of an address that no route answers. */
export const nothingThere = (): Problem =>
  new Problem({
    code: 'not-found',
    title: 'There is nothing at this address.',
    advice: 'Go back to the list.',
  });
