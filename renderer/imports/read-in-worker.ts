import { Problem, type ProblemParts } from '@core/problems/problem';
import { refuseLarge } from '@core/tables/decode';
import type { Sheet } from '@core/tables/table';

/** What the reading of a file came to. */
export type TableRead = { sheets: Sheet[] } | { problem: ProblemParts };

/** No file of a maker takes longer to read; one that does is made to. */
const LONGEST_MS = 120_000;

const gaveUp = (title: string): Problem =>
  new Problem({
    code: 'invalid-input',
    title,
    advice:
      'Copy the rows that you need into a new spreadsheet, save that, and choose it. Nothing was read from this one.',
  });

/**
 * The sheets of a file, read in a thread of its own.
 * @throws Problem when it cannot be read, or takes too much; AbortError once `signal` aborts
 */
export async function readInWorker(file: File, signal: AbortSignal): Promise<Sheet[]> {
  refuseLarge(file.size);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const worker = new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' });
  try {
    const read = await new Promise<TableRead>((done, fail) => {
      signal.addEventListener('abort', () => fail(new DOMException('Stopped.', 'AbortError')));
      AbortSignal.timeout(LONGEST_MS).addEventListener('abort', () =>
        fail(gaveUp('This table takes far longer to read than it should; reading was stopped.')),
      );
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        fail(gaveUp('This table takes more memory than there is; reading was stopped.'));
      });
      worker.addEventListener('message', ({ data }: MessageEvent<TableRead>) => done(data));
      worker.postMessage({ name: file.name, bytes }, [bytes.buffer]);
    });
    if ('problem' in read) throw new Problem(read.problem);
    return read.sheets;
  } finally {
    worker.terminate();
  }
}
