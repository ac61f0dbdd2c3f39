import { plain, saysNothing } from '../imports/plain';
import { readCell, type ReadingWays } from '../imports/read-cell';
import { targetOf } from '../imports/targets';
import type { InciPart } from '../materials/composition';
import { WHOLE_PPM } from '../quantities/share';
import { casNumbersOf } from './cas-numbers';
import { labelOf } from './find-label';
import { around, overlap, type Cell, type Line } from './lines';
import type { Proposal } from './proposal';
import { compositionSaid } from './read-value';

const SHARE =
  /^(?:(?:content|share|amount|concentration|proportion|weight|typical content|percentage|percent|gehalt|anteil|konzentration|massenanteil|teneur|part|pourcentage|contenido|porcentaje|concentracion|proporcion|range|bereich)s?(?: (?:range|w w|m m|p p|typical))?|w w|wt|gew|)$/;

type Column = 'inci' | 'cas' | 'share' | 'other';

interface TableHead {
  line: Line;
  columns: { column: Column; cell: Cell }[];
}

function columnOf(cell: Cell): Column {
  const key = labelOf(cell.text)?.key;
  if (key === 'composition') return 'inci';
  if (key === 'casNumbers') return 'cas';
  const bare = plain(cell.text.replace(/[([].*?[)\]]/g, ' ').replace(/%/g, ' '));
  const named = SHARE.test(bare) && (bare !== '' || cell.text.includes('%'));
  return named ? 'share' : 'other';
}

/** A line that heads a table of INCI names: with their shares, their CAS numbers, or both. */
function headOf(line: Line): TableHead | null {
  const columns = line.cells.map((cell) => ({ column: columnOf(cell), cell }));
  const count = (wanted: Column): number => columns.filter(({ column }) => column === wanted).length;
  const is =
    count('inci') === 1 && count('share') <= 1 && count('cas') <= 1 && count('share') + count('cas') > 0;
  return is ? { line, columns } : null;
}

const distance = (a: Cell, b: Cell): number => Math.max(0, -overlap(a, b));
function columnAt({ columns }: TableHead, cell: Cell): Column {
  const near = [...columns].sort(
    (a, b) =>
      distance(a.cell, cell) - distance(b.cell, cell) ||
      Math.abs(a.cell.x - cell.x) - Math.abs(b.cell.x - cell.x),
  );
  return near[0]?.column ?? 'other';
}

interface Row {
  inci: string;
  cas: string;
  share: string;
  cells: Cell[];
}

/** The rows below a head, as far as each has its name and no label of something else begins one. */
function rowsBelow(head: TableHead, lines: readonly Line[], at: number): { rows: Row[]; used: number } {
  const rows: Row[] = [];
  let used = 1;
  for (const line of lines.slice(at + 1)) {
    const before = lines[at + used - 1]!;
    if (line.page !== before.page || line.y - before.y > before.height * 4) break;
    if (line.cells.some(({ text }) => labelOf(text)?.key !== undefined)) break;
    const row: Row = { inci: '', cas: '', share: '', cells: line.cells };
    for (const cell of line.cells) {
      const column = columnAt(head, cell);
      if (column !== 'other') row[column] = `${row[column]} ${cell.text}`.trim();
    }
    const last = rows[rows.length - 1];
    const alone = row.inci !== '' && row.cas === '' && row.share === '';
    if (row.inci === '' || /^(total|sum|summe|somme|suma)\b/i.test(row.inci)) break;
    if (alone && last && line.y - before.y < line.height * 1.7) {
      last.inci = `${last.inci} ${row.inci}`;
      last.cells = [...last.cells, ...row.cells];
    } else if (alone) break;
    else rows.push(row);
    used += 1;
  }
  return { rows, used };
}

/** The share of a row in ppm; null where it says none, undefined where it cannot be read. */
function shareOf({ share }: Row, ways: ReadingWays): readonly [number, number] | null | undefined {
  if (saysNothing(share)) return null;
  const text = /\bbalance|rest|ad 100|q\.?s/i.test(share) ? '0–100' : share;
  const reading = readCell(text, targetOf('composition.share'), '%', ways);
  return reading.ok ? (reading.value as readonly [number, number]) : undefined;
}

function partsOf(rows: readonly Row[], ways: ReadingWays): InciPart[] | null {
  const shares = rows.map((row) => shareOf(row, ways));
  if (shares.includes(undefined)) return null;
  return rows.map(({ inci }, at) => {
    const share = shares[at];
    const whole = rows.length === 1 ? WHOLE_PPM : 0;
    return { inci, lowPpm: share?.[0] ?? whole, highPpm: share?.[1] ?? WHOLE_PPM };
  });
}

export interface TablesRead {
  proposals: Proposal[];
  /** The lines without those of the tables. */
  left: Line[];
}

/** Tables of INCI names with their shares and CAS numbers, read row by row. */
export function compositionTables(lines: readonly Line[], ways: ReadingWays): TablesRead {
  const proposals: Proposal[] = [];
  const left: Line[] = [];
  for (let at = 0; at < lines.length; at += 1) {
    const head = headOf(lines[at]!);
    const { rows, used } = head ? rowsBelow(head, lines, at) : { rows: [], used: 1 };
    if (rows.length === 0) {
      left.push(lines[at]!);
      continue;
    }
    const { page } = lines[at]!;
    const rect = around(rows.flatMap(({ cells }) => cells));
    const line = rows.map(({ cells }) => cells.map(({ text }) => text).join('  ')).join(' / ');
    const parts = partsOf(rows, ways);
    const cas = casNumbersOf(rows.map((row) => row.cas).join(' '));
    const found = [
      ...(parts ? compositionSaid(parts) : []),
      ...(cas && cas.length > 0
        ? [{ key: 'casNumbers', value: cas.join(', '), sure: 'sure' as const, note: '' }]
        : []),
    ];
    proposals.push(...found.map((one) => ({ ...one, page, rect, line })));
    at += used - 1;
  }
  return { proposals, left };
}
