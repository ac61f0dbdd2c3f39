import type { Region } from '../locale/numbers';
import { percentFromPpm } from '../quantities/share';
import type { Field, Fields } from '../record/field';
import type { TableColumn } from '../record/table-column';
import { fieldWords } from '../record/words';
import type { Cell } from '../tables/table';

type Content = Readonly<Record<string, unknown>>;

/** Ten letters long: such a line is a day. */
const DAY_LETTERS = 10;

const headed = (label: string, unit: string): string => (unit === '' ? label : `${label} (${unit})`);

function lineCell(value: unknown, max: number): Cell {
  if (typeof value !== 'string' || value === '') return null;
  return max === DAY_LETTERS && /^\d{4}-\d\d-\d\d$/.test(value) ? { date: value } : value;
}

/** What a value that is one fact is as a cell of its own kind. */
function cellOf(field: Field, value: unknown, region: Region): Cell {
  const { shape } = field;
  switch (shape.kind) {
    case 'line':
      return lineCell(value, shape.max);
    case 'text':
    case 'word':
      return typeof value === 'string' && value !== '' ? value : null;
    case 'words':
      return (value as string[]).join(', ') || null;
    case 'flag':
    case 'known':
      return typeof value === 'boolean' ? value : null;
    case 'share':
      return typeof value === 'number' ? percentFromPpm(value) : null;
    case 'number':
    case 'whole':
      return typeof value === 'number' ? value : null;
    default:
      return fieldWords(field, value, region) || null;
  }
}

function columnsOfField(field: Field, region: Region, taken: ReadonlySet<string>): TableColumn<unknown>[] {
  const { shape, label } = field;
  if (field.columns) return [...field.columns];
  if (shape.kind === 'attachment') return [];
  if (shape.kind === 'group')
    return Object.entries(shape.fields).flatMap(([key, part]) =>
      columnsOfField(part, region, taken).map(({ heading, cell }) => ({
        heading: taken.has(heading) ? `${label}: ${heading}` : heading,
        cell: (held: unknown) => (held === null ? null : cell((held as Content)[key])),
      })),
    );
  const unit = 'unit' in shape ? shape.unit : '';
  return [{ heading: headed(label, unit), cell: (value) => cellOf(field, value, region) }];
}

/**
 * The columns of a table of a noun's records, a row each, from its fields: their labels with their units, and cells of
 * their own kind. The part of a group is named after the group too where another column bears its name.
 */
export function fieldColumns(fields: Fields, region: Region): TableColumn<Content>[] {
  const own = Object.values(fields).filter(({ shape }) => shape.kind !== 'group');
  const taken = new Set(
    own.flatMap((field) => columnsOfField(field, region, new Set())).map((one) => one.heading),
  );
  const partHeadings = Object.values(fields)
    .filter(({ shape }) => shape.kind === 'group')
    .flatMap((field) => columnsOfField(field, region, new Set()).map((one) => one.heading));
  partHeadings.forEach((heading, at) => {
    if (partHeadings.indexOf(heading) !== at) taken.add(heading);
  });
  return Object.entries(fields).flatMap(([key, field]) =>
    columnsOfField(field, region, taken).map(({ heading, cell }) => ({
      heading,
      cell: (content: Content) => cell(content[key] ?? field.blank),
    })),
  );
}
