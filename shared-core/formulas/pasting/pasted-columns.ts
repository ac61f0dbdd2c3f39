import { amountOf } from './pasted-table';

/** What a column of a pasted table holds. */
export type ColumnKind = 'code' | 'name' | 'inci' | 'amount' | 'note' | 'phase' | 'other';

/** What columns are headed in English, German, French and Spanish. From memory; common practice, no source. */
const HEADINGS: readonly [ColumnKind, RegExp][] = [
  ['phase', /^(phases?|fases?)$/i],
  ['inci', /\binci\b/i],
  [
    'amount',
    /%|\bw\/w\b|per ?cent|\b(share|amount|quantity|mass|weight|parts|dosage|anteil|menge|einwaage|gehalt|masse|dosierung|teneur|poids|cantidad|peso|porcentaje)\b|prozent|pourcentage|quantit|^k?g$/i,
  ],
  [
    'code',
    /\bcode\b|\bcodigo\b|^código$|(artikel|rohstoff)-?\s?(nr|nummer)|^(item|article|art\.?|ref\.?)\s?(no\.?|nr\.?)?$|^n[or]\.?$|nummer$/i,
  ],
  [
    'note',
    /\b(notes?|remarks?|comments?|bemerkung(en)?|anmerkung(en)?|hinweise?|remarques?|notas?|observaci\p{L}+)$/iu,
  ],
  [
    'name',
    /\b(name|material|ingredient|product|trade|handelsname|produkt|zutat(en)?|nom|nombre|materia|ingrediente)\b|rohstoff|bezeichnung|inhaltsstoff|mati[eè]re|ingr[eé]dient/i,
  ],
];

const kindOfHeading = (cell: string): ColumnKind | null =>
  HEADINGS.find(([, words]) => words.test(cell.trim()))?.[0] ?? null;

/** Whether a row heads the others: it names at least two columns, one of them the materials', and says no amount. */
function isHeading(cells: readonly string[]): boolean {
  const kinds = cells.map(kindOfHeading);
  const named = kinds.includes('name') || kinds.includes('inci');
  return named && kinds.filter((kind) => kind !== null).length >= 2 && !cells.some((cell) => amountOf(cell));
}

const PHASE = /^(phase\s*)?[a-z]\d?$/i;
const CODE = /^[a-z]{0,6}[-_./ ]?\d[\d-]*$/i;

function columnOf(rows: readonly string[][], at: number): string[] {
  return rows.map((cells) => cells[at] ?? '').filter((cell) => cell !== '');
}

/** How far the numbers of a column are from making 100; none for a column without numbers. The q.s. mark decides. */
function distance(cells: readonly string[]): number {
  const amounts = cells.map(amountOf);
  if (amounts.filter(Boolean).length * 2 < cells.length || cells.length === 0) return Infinity;
  if (amounts.some((amount) => amount?.kind === 'to 100')) return -1;
  return Math.abs(100 - amounts.reduce((sum, one) => sum + (one?.kind === 'number' ? one.value : 0), 0));
}

function guessed(rows: readonly string[][], width: number): ColumnKind[] {
  const columns = Array.from({ length: width }, (_, at) => columnOf(rows, at));
  const distances = columns.map(distance);
  const amountAt = distances.indexOf(Math.min(...distances, Number.MAX_VALUE));
  let named = 0;
  return columns.map((cells, at): ColumnKind => {
    if (at === amountAt) return 'amount';
    if (cells.length === 0 || Number.isFinite(distances[at])) return 'other';
    if (width > 2 && cells.every((cell) => PHASE.test(cell))) return 'phase';
    if (cells.every((cell) => CODE.test(cell))) return 'code';
    named += 1;
    return named === 1 ? 'name' : named === 2 ? 'inci' : 'other';
  });
}

const PERCENT = /%|per ?cent/i;

/** A table as its columns are understood. */
export interface ReadColumns {
  /** Without their heading. */
  rows: string[][];
  kinds: ColumnKind[];
  /** Whether the heading of the amounts says that they are per cent. */
  headedPercent: boolean;
}

/**
 * What the columns of a table hold: by its headings where it has them, else by what stands in them. Of several columns
 * of numbers the one with a q.s. mark, else the one that comes nearest to 100, says the amounts.
 */
export function columnsOf(table: readonly string[][]): ReadColumns {
  const width = Math.max(0, ...table.map((cells) => cells.length));
  const [first, ...others] = table;
  if (!first || !isHeading(first))
    return { rows: [...table], kinds: guessed(table, width), headedPercent: false };
  const headed = Array.from({ length: width }, (_, at) => kindOfHeading(first[at] ?? '') ?? 'other');
  // Of several columns headed alike the first counts: “% w/w” before “% of phase”.
  const kinds = headed.map((kind, at) => (headed.indexOf(kind) === at ? kind : 'other'));
  return { rows: others, kinds, headedPercent: PERCENT.test(first[kinds.indexOf('amount')] ?? '') };
}
