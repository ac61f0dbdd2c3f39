import type { Field, Fields } from '@core/record/field';
import type { SqlValue } from '../database';

/** A row as SQLite gives it. */
export type Row = Record<string, SqlValue>;
type Content = Record<string, unknown>;

/** One column of a noun's table, with how it is filled from what the noun holds. */
export interface Column {
  name: string;
  write(content: Content): SqlValue;
}

const snake = (key: string): string => key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** The name of a field's column, or of the list or table that holds it. */
export function columnName(key: string, field: Field, within = ''): string {
  const { column } = field;
  if (field.shape.kind === 'group') return column ?? snake(key);
  return column ?? `${within ? `${within}_` : ''}${snake(key)}`;
}

/** Whether a field stands in columns of the noun's own table. */
function isScalar({ shape }: Field): boolean {
  return !['words', 'rows', 'figures', 'group'].includes(shape.kind);
}

function asSql(value: unknown): SqlValue {
  if (value === undefined || value === null) return null;
  return typeof value === 'boolean' ? Number(value) : (value as SqlValue);
}

/** The columns that fields stand in, those of groups among them. */
export function columnsOf(fields: Fields): Column[] {
  return Object.entries(fields).flatMap(([key, field]): Column[] => {
    if (isScalar(field)) return [{ name: columnName(key, field), write: (content) => asSql(content[key]) }];
    if (field.shape.kind !== 'group') return [];
    const within = columnName(key, field);
    return Object.entries(field.shape.fields)
      .filter(([, part]) => isScalar(part))
      .map(([partKey, part]) => ({
        name: columnName(partKey, part, within),
        write: (content) => asSql((content[key] as Content | null)?.[partKey]),
      }));
  });
}

/** How a scalar field is read from its row. */
export function scalarReading(key: string, field: Field, within: string): (row: Row) => unknown {
  const name = columnName(key, field, within);
  const { kind } = field.shape;
  if (kind === 'flag') return (row) => row[name] === 1;
  if (kind === 'known') return (row) => ((row[name] ?? null) === null ? null : row[name] === 1);
  // A text that was never written, as in a group that another tool filled in part.
  if (kind === 'line' || kind === 'text') return (row) => row[name] ?? '';
  return (row) => row[name] ?? null;
}

export { isScalar };
