import type { Writer } from '../database';
import { drawNumber } from '../record/sequence';

/** The next batch number behind a prefix; none is given twice. */
export function drawBatchNumber(tx: Writer, prefix: string): string {
  return drawNumber(tx, 'batch', {
    prefix,
    inUse: () =>
      tx
        .all<{ number: string }>(
          'SELECT number FROM batch WHERE substr(number, 1, length(?)) = ?',
          prefix,
          prefix,
        )
        .map(({ number }) => number),
    isTaken: (number) => tx.get('SELECT 1 AS found FROM batch WHERE number = ?', number) !== undefined,
  });
}
