import { formatNumber, formatPercent, type Region } from '@core/locale/numbers';
import type { Clash } from '@core/record/merge';
import { ORDER, pathOfThing, WHEREABOUTS, type Place } from '@core/record/place';
import type { Field, Fields } from '@core/record/field';
import { isPlainObject } from '@core/record/same';

/** What was changed in both windows, as a maker reads it. */
export interface ClashWords {
  /** What it is called: "Trade name", "Glycerin 99, note". */
  what: string;
  mine: string;
  theirs: string;
}

/** What a noun says of its things: what one is called, and what a value means there. */
export interface NounWords {
  fields: Fields;
  /** What a thing of a list is called; `value` is one side's of it. */
  nameOf?(place: Place, value: unknown): string;
  /** What a field is called, where its description does not say it; null leaves it to that. */
  labelOf?(place: Place): string | null;
  /** A value in words, where its field does not say it; null leaves it to the field. */
  tell?(place: Place, value: unknown): string | null;
}

const EMPTY = 'nothing';

function wordsOfField(field: Field | undefined, value: unknown, region: Region): string | null {
  if (!field || value === null || value === undefined) return null;
  const { shape, tell } = field;
  if (tell) return tell(value, region) || null;
  if (shape.kind === 'share' && typeof value === 'number') return formatPercent(value, region);
  if (shape.kind === 'word') return shape.names?.[String(value)] ?? String(value);
  if ((shape.kind === 'number' || shape.kind === 'whole') && typeof value === 'number')
    return [formatNumber(value, region, { min: 0, max: shape.digits }), shape.unit].filter(Boolean).join(' ');
  return null;
}

/** Any value, where nobody says more of it. */
function plainly(value: unknown, region: Region): string {
  if (value === null || value === undefined || value === '') return EMPTY;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return formatNumber(value, region, { min: 0, max: 6 });
  if (Array.isArray(value))
    return value.length === 0 ? EMPTY : value.map((one) => plainly(one, region)).join(', ');
  if (isPlainObject(value))
    return Object.values(value)
      .filter((one) => typeof one === 'string' || typeof one === 'number')
      .map((one) => plainly(one, region))
      .join(', ');
  return String(value);
}

/** The description of a field: of the record's own, of a part of one, or of the rows of a list. */
function describedAt(fields: Fields, { thing, field }: Place): Field | undefined {
  let here: Fields | undefined = fields;
  for (const list of pathOfThing(thing).split('/').filter(Boolean)) {
    const shape: Field['shape'] | undefined = here?.[list]?.shape;
    here = shape?.kind === 'rows' ? shape.row : undefined;
  }
  const [first, second] = field;
  const found = first === undefined ? undefined : here?.[first];
  if (second !== undefined && found?.shape.kind === 'group') return found.shape.fields[second] ?? found;
  return found;
}

/** A clash in words: what it is of, and what each window has. */
export function clashWords(clash: Clash, noun: NounWords, region: Region): ClashWords {
  const { place, base, mine, theirs } = clash;
  const field = describedAt(noun.fields, place);
  const last = place.field.at(-1);
  const thing = place.thing && (noun.nameOf?.(place, mine ?? theirs ?? base) ?? 'a row');
  if (last === ORDER)
    return { what: `${field?.label ?? 'The list'}, order`, mine: 'as here', theirs: 'as there' };
  if (last === WHEREABOUTS)
    return { what: `${thing}, place`, mine: 'where it is here', theirs: 'where it is there' };
  const said = (value: unknown): string => {
    if (place.field.length === 0) return value === undefined ? 'removed' : 'kept, and changed';
    return noun.tell?.(place, value) ?? wordsOfField(field, value, region) ?? plainly(value, region);
  };
  const label = noun.labelOf?.(place) ?? field?.label ?? place.field.join(' ');
  const what = thing ? [thing, label.toLowerCase()].filter(Boolean).join(', ') : label;
  return { what, mine: said(mine), theirs: said(theirs) };
}
