import type { Field, Fields } from '@core/record/field';
import type { SqlValue } from '../database';
import { columnName, columnsOf, scalarReading, type Row } from './columns';

type Content = Record<string, unknown>;

/** A table beside the noun's own that holds lists of it: its name's ending, its columns after the noun's id, its order. */
export interface ListTable {
  ending: string;
  columns: string[];
  order: string;
  /** The rows that a noun has there. */
  rows(content: Content): SqlValue[][];
}

const FIGURE_COLUMNS = ['kind', 'low', 'value', 'high', 'provenance', 'source'];
const WORD_COLUMNS = ['list', 'position', 'word'];

/** The fields that are lists of words, those of groups among them, each with how to reach it. */
export function wordLists(fields: Fields): { list: string; of(content: Content): string[] }[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const { shape } = field;
    if (shape.kind === 'words')
      return [{ list: columnName(key, field), of: (content: Content) => (content[key] ?? []) as string[] }];
    if (shape.kind !== 'group') return [];
    return wordLists(shape.fields).map(({ list, of }) => ({
      list,
      of: (content: Content) => (content[key] ? of(content[key] as Content) : []),
    }));
  });
}

function wordTable(fields: Fields): ListTable[] {
  const lists = wordLists(fields);
  if (lists.length === 0) return [];
  return [
    {
      ending: 'word',
      columns: WORD_COLUMNS,
      order: 'list, position',
      rows: (content) => lists.flatMap(({ list, of }) => of(content).map((word, at) => [list, at, word])),
    },
  ];
}

function rowsTable(key: string, field: Field, row: Fields): ListTable {
  const columns = columnsOf(row);
  return {
    ending: columnName(key, field),
    columns: ['position', ...columns.map(({ name }) => name)],
    order: 'position',
    rows: (content) =>
      ((content[key] ?? []) as Content[]).map((held, at) => [at, ...columns.map(({ write }) => write(held))]),
  };
}

function figuresTable(key: string, field: Field): ListTable {
  return {
    ending: columnName(key, field),
    columns: FIGURE_COLUMNS,
    order: 'kind',
    rows: (content) =>
      Object.entries((content[key] ?? {}) as Record<string, Record<string, SqlValue> | undefined>).flatMap(
        ([kind, held]) =>
          held ? [[kind, ...FIGURE_COLUMNS.slice(1).map((name) => held[name] ?? null)]] : [],
      ),
  };
}

/** The tables beside the noun's own. */
export function listTables(fields: Fields): ListTable[] {
  const own = Object.entries(fields).flatMap(([key, field]): ListTable[] => {
    if (field.shape.kind === 'rows') return [rowsTable(key, field, field.shape.row)];
    return field.shape.kind === 'figures' ? [figuresTable(key, field)] : [];
  });
  return [...wordTable(fields), ...own];
}

/** The rows of the tables beside, by the table's ending. */
export type ListRows = Record<string, readonly Row[]>;

type Reading = (row: Row, lists: ListRows) => unknown;

/** How a group is read: as nothing where nothing of it is there, and it may be nothing. */
function groupReading(key: string, field: Field, fields: Fields): Reading {
  const whole = contentReading(fields, columnName(key, field));
  if (field.blank !== null) return whole;
  const columns = columnsOf({ [key]: field }).map(({ name }) => name);
  return (row, lists) => (columns.every((name) => (row[name] ?? null) === null) ? null : whole(row, lists));
}

function fieldReading(key: string, field: Field, within: string): Reading {
  const { shape } = field;
  if (shape.kind === 'group') return groupReading(key, field, shape.fields);
  const name = columnName(key, field);
  if (shape.kind === 'words')
    return (_, lists) => (lists.word ?? []).filter((one) => one.list === name).map((one) => one.word);
  if (shape.kind === 'figures')
    return (_, lists) =>
      Object.fromEntries(
        (lists[name] ?? []).map(({ kind, low, value, high, provenance, source }) => [
          kind,
          { low, value, high, provenance, source },
        ]),
      );
  if (shape.kind === 'rows') {
    const one = contentReading(shape.row, '');
    return (_, lists) => (lists[name] ?? []).map((row) => one(row, {}));
  }
  return scalarReading(key, field, within);
}

/**
 * How what a noun holds is put together from its row and the rows of the tables beside; not validated yet. The names of
 * its columns are worked out once, not record by record.
 */
export function contentReading(fields: Fields, within = ''): (row: Row, lists: ListRows) => Content {
  const readings = Object.entries(fields).map(
    ([key, field]) => [key, fieldReading(key, field, within)] as const,
  );
  return (row, lists) => {
    const content: Content = {};
    for (const [key, reading] of readings) content[key] = reading(row, lists);
    return content;
  };
}
