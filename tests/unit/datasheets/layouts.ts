import type { Content, Margins } from 'pdfmake/interfaces';

/* The layouts in which suppliers set their sheets, each as a piece of a document. Of no real one: made up. */

const after: Margins = [0, 0, 0, 10];
export const title = (text: string, size = 18): Content => ({
  text,
  fontSize: size,
  bold: true,
  margin: after,
});
export const heading = (text: string, size = 12): Content => ({
  text,
  fontSize: size,
  bold: true,
  margin: [0, 8, 0, 4],
});
export const prose = (...texts: string[]): Content =>
  texts.map((text) => ({ text, margin: [0, 0, 0, 6] as Margins, alignment: 'justify' as const }));

type Row = readonly string[];

/** A ruled or open table, its first row as heads where `headed`. */
export function table(
  rows: readonly Row[],
  widths: (string | number)[],
  look: 'ruled' | 'open' = 'ruled',
): Content {
  const body = rows.map((row) => widths.map((_, at) => row[at] ?? ''));
  return { table: { widths, body }, layout: look === 'ruled' ? undefined : 'noBorders', margin: after };
}

/** Two columns: what, and its value. */
export const twoColumns = (rows: readonly Row[], look: 'ruled' | 'open' = 'open'): Content =>
  table(rows, [170, '*'], look);

/** “Label: value”, a line each. */
export const colons = (rows: readonly Row[]): Content =>
  rows.map(([label = '', value = '']) => ({ text: [{ text: `${label}: `, bold: true }, value] }));

/** Labels and values with a row of points between. */
export const leaders = (rows: readonly Row[]): Content =>
  rows.map(([label = '', value = '']) => ({
    text: `${label} ${'.'.repeat(Math.max(6, 60 - label.length))} ${value}`,
  }));

/** Each label above its value. */
export const stacked = (rows: readonly Row[]): Content =>
  rows.map(([label = '', value = '']) => [
    { text: label, fontSize: 8, color: '#555555' },
    { text: value, margin: [0, 0, 0, 8] as Margins },
  ]);

/** Two pieces beside each other. */
export const beside = (left: Content, right: Content): Content => ({
  columns: [
    { width: '*', stack: [left] },
    { width: '*', stack: [right] },
  ],
  columnGap: 24,
  margin: after,
});

/** A guide formula, with its own shares and figures: none of it is of the material. */
export const sampleFormula = (head: string, heads: Row, rows: readonly Row[], below: Row = []): Content => [
  heading(head),
  table([heads, ...rows], [40, '*', 60], 'ruled'),
  ...below.map((text) => ({ text, margin: after })),
];

export const footer = (...lines: string[]): Content =>
  lines.map((text) => ({ text, fontSize: 7, color: '#555555' }));
