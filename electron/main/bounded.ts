import { Problem } from '@service/problems/problem';

/** The work's own outcome, or a Problem when it takes longer. The work itself is not stopped. */
export async function boundedBy<T>(limitMs: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(
      () =>
        reject(
          new Problem({
            code: 'disk-error',
            title: `The library was not closed within ${Math.round(limitMs / 1000)} seconds.`,
            advice: 'The disk may be slow or away. Open the library again later to see that all is there.',
          }),
        ),
      limitMs,
    );
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
