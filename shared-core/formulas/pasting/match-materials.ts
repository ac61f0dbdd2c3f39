import type { MaterialRow } from '../../materials/list';
import { otherNames } from '../../materials/synonyms';
import { fold, foldedWords } from '../../quantities/fold';

/** By what a material was recognised. */
export type MatchedBy = 'code' | 'trade name' | 'INCI name';

type Named = Pick<MaterialRow, 'id' | 'code' | 'tradeName' | 'inci' | 'status'>;

export interface MaterialMatch<Row extends Named> {
  by: MatchedBy;
  /** Those that bear the name, in the order of their trade names. Never empty. */
  rows: Row[];
}

const plain = (text: string): string => fold(text).replace(/\s+/g, ' ').trim();

/** A name and what else it may stand as: "Aqua (Water)" and "Water/Aqua" are both, and water is aqua. */
function spellings(name: string): string[] {
  const parts = [name, ...name.split(/[/()]/)].map(plain).filter((part) => part !== '');
  const others = parts.flatMap((part) => otherNames(foldedWords(part).join(' ')).map(plain));
  return [...new Set([...parts, ...others])];
}

/**
 * Recognises materials by names that stand for them exactly, whatever their case and accents: by code before trade
 * name before INCI name. What is archived is passed over.
 */
export function materialMatcher<Row extends Named>(rows: Iterable<Row>) {
  const known: Record<MatchedBy, Map<string, Row[]>> = {
    code: new Map(),
    'trade name': new Map(),
    'INCI name': new Map(),
  };
  const put = (by: MatchedBy, name: string, row: Row): void => {
    const key = plain(name);
    if (key === '') return;
    const there = known[by].get(key);
    if (there) there.push(row);
    else known[by].set(key, [row]);
  };
  for (const row of rows) {
    if (row.status === 'archived') continue;
    put('code', row.code, row);
    put('trade name', row.tradeName, row);
    put('INCI name', row.inci, row);
  }
  const find = (names: readonly string[]): MaterialMatch<Row> | null => {
    for (const by of ['code', 'trade name', 'INCI name'] as const)
      for (const name of names.flatMap((one) => (by === 'INCI name' ? spellings(one) : [plain(one)]))) {
        const found = known[by].get(name);
        if (found) return { by, rows: [...found].sort((a, b) => (a.tradeName < b.tradeName ? -1 : 1)) };
      }
    return null;
  };
  return find;
}
