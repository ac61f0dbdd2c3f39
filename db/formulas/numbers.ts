import type { Reader, Writer } from '../database';
import { drawNumber } from '../record/sequence';

function codesInUse(db: Reader, prefix: string): string[] {
  return db
    .all<{ code: string }>('SELECT code FROM formula WHERE substr(code, 1, length(?)) = ?', prefix, prefix)
    .map(({ code }) => code);
}

/** The next formula code behind a prefix; none is given twice. */
export function drawFormulaCode(tx: Writer, prefix: string): string {
  return drawNumber(tx, 'formula', {
    prefix,
    inUse: () => codesInUse(tx, prefix),
    isTaken: (code) => tx.get('SELECT 1 AS found FROM formula WHERE code = ?', code) !== undefined,
  });
}
