import { formatNumber, formatPercent, type Region } from '../locale/numbers';
import { capital, joined, yesNo } from '../locale/words';
import type { Field, Fields } from './field';

function numberWords(
  value: unknown,
  { unit, digits }: { unit: string; digits: number },
  region: Region,
): string {
  if (typeof value !== 'number') return '';
  const shown = formatNumber(value, region, { min: 0, max: digits });
  return unit === '' ? shown : `${shown}\u00a0${unit}`;
}

function rowsWords(row: Fields, value: unknown, region: Region): string {
  const told = (value as Record<string, unknown>[]).map((held) =>
    Object.entries(row)
      .map(([key, field]) => fieldWords(field, held[key], region))
      .filter(Boolean)
      .join(' '),
  );
  return told.join('; ');
}

function groupWords(fields: Fields, value: unknown, region: Region): string {
  if (value === null) return '';
  const held = value as Record<string, unknown>;
  return Object.entries(fields)
    .flatMap(([key, field]) => {
      const words = fieldWords(field, held[key], region);
      return words === '' ? [] : [`${field.label}: ${words}`];
    })
    .join('; ');
}

/** What a field holds, in words for screen and paper; empty where there is nothing to tell. */
export function fieldWords(field: Field, value: unknown, region: Region): string {
  if (field.tell) return field.tell(value, region);
  const { shape } = field;
  switch (shape.kind) {
    case 'word':
      return typeof value === 'string' ? (shape.names?.[value] ?? capital(value)) : '';
    case 'words':
      return capital(joined(value as string[]));
    case 'flag':
      return value === true ? 'Yes' : '';
    case 'known':
      return yesNo(value as boolean | null);
    case 'share':
      return typeof value === 'number' ? formatPercent(value, region) : '';
    case 'number':
    case 'whole':
      return numberWords(value, shape, region);
    case 'group':
      return groupWords(shape.fields, value, region);
    case 'rows':
      return rowsWords(shape.row, value, region);
    default:
      return typeof value === 'string' ? value : '';
  }
}

/** The label and the words of every field of some sections that a sheet draws by itself; empty ones too. */
export function sheetFacts(
  fields: Fields,
  sections: readonly string[],
  content: object,
  region: Region,
): { label: string; value: string }[] {
  const held = content as Record<string, unknown>;
  return Object.entries(fields)
    .filter(([, field]) => field.places.sheet === 'derived' && sections.includes(field.section))
    .map(([key, field]) => ({ label: field.label, value: fieldWords(field, held[key], region) }));
}
