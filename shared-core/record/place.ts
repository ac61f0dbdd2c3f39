import { isPlainObject, type PlainObject } from './same';

/**
 * Where in a record something stands: a thing of one of its lists, wherever that thing is moved to, and a field of it.
 * `thing` is '' for the record itself, else the list's path and the thing's id ("phases/lines#…"); an empty `field`
 * is the whole of it.
 */
export interface Place {
  readonly thing: string;
  readonly field: readonly string[];
}

/** The last step of a place that means the order of a list, not what is in it. */
export const ORDER = '#order';
/** The last step of a place that means in which list a thing stands. */
export const WHEREABOUTS = '#whereabouts';

/** What a noun says of its states, beyond what can be seen of them. */
export interface Shape {
  /** The field that tells the things of a list apart, by the list's path; `id` where nothing is said. */
  readonly keys?: Readonly<Record<string, string>>;
  /** Fields with parts that are one fact, such as a figure with its source, by their path ("figures.hlb"). */
  readonly whole?: (path: string) => boolean;
}

export const RECORD: Place = { thing: '', field: [] };

export function keyField(shape: Shape, listPath: string): string {
  return shape.keys?.[listPath] ?? 'id';
}

/** The path of the lists that a thing stands in; '' for the record. */
export function pathOfThing(thing: string): string {
  const mark = thing.indexOf('#');
  return mark < 0 ? '' : thing.slice(0, mark);
}

/** The path of a list that is a field of what stands at a path. */
export function listPath(path: string, field: string): string {
  return path === '' ? field : `${path}/${field}`;
}

/** Whether a place is, or lies within, another; `at` is a place with those that it stands in, innermost first. */
export function covers(held: Place, at: readonly Place[]): boolean {
  return at.some(
    (place) => place.thing === held.thing && held.field.every((step, index) => place.field[index] === step),
  );
}

/** A place as a text, the same for the same place. */
export function placeKey(place: Place): string {
  return JSON.stringify([place.thing, ...place.field]);
}

/** The next larger place: a field's object, its thing, the part of the record; null beyond the record's parts. */
export function widened({ thing, field }: Place): Place | null {
  if (field.length > 1 || (field.length === 1 && thing !== '')) return { thing, field: field.slice(0, -1) };
  if (thing === '') return null;
  return { thing: '', field: [pathOfThing(thing).split('/')[0] ?? ''] };
}

function hasKey(value: unknown, key: string): value is PlainObject {
  return isPlainObject(value) && typeof value[key] === 'string' && value[key] !== '';
}

/** Whether a list holds things that can be told apart, and not mere values. An empty list may be either. */
export function areThings(list: readonly unknown[], key: string): list is PlainObject[] {
  return list.every((item) => hasKey(item, key));
}

/** The path of a field, as a shape names it: "figures.hlb", "phases/lines/note". */
export function fieldPath({ thing, field }: Place): string {
  return [pathOfThing(thing), field.join('.')].filter((part) => part !== '').join('/');
}

/** Whether a field is one fact, although its value has parts. */
export function isWhole(shape: Shape, place: Place): boolean {
  return shape.whole?.(fieldPath(place)) ?? false;
}

/** The place that a path by index means, such as "phases.0.lines.2.ppm", as the service names what is at fault. */
export function placeOfPath(state: unknown, path: readonly string[], shape: Shape = {}): Place {
  let place: Place = RECORD;
  let here = state;
  for (let at = 0; at < path.length; at += 1) {
    const step = path[at] ?? '';
    const list = listPath(pathOfThing(place.thing), step);
    here = isPlainObject(here) ? here[step] : undefined;
    const key = keyField(shape, list);
    const next: unknown = Array.isArray(here) ? here[Number(path[at + 1])] : undefined;
    if (place.field.length === 0 && Array.isArray(here) && areThings(here, key) && hasKey(next, key)) {
      place = { thing: `${list}#${String(next[key])}`, field: [] };
      here = next;
      at += 1;
    } else {
      place = { thing: place.thing, field: [...place.field, step] };
      // Beyond a list of values an index says nothing that lasts; one fact is at fault as a whole.
      if (Array.isArray(here) || isWhole(shape, place)) return place;
    }
  }
  return place;
}

function thingWithin(
  value: unknown,
  lists: readonly string[],
  path: string,
  id: string,
  shape: Shape,
): unknown {
  const [field, ...deeper] = lists;
  if (field === undefined || !isPlainObject(value)) return undefined;
  const list = value[field];
  if (!Array.isArray(list)) return undefined;
  const here = listPath(path, field);
  if (deeper.length === 0)
    return list.find((item) => isPlainObject(item) && item[keyField(shape, here)] === id);
  for (const item of list) {
    const found = thingWithin(item, deeper, here, id, shape);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What stands at a place of a state; undefined where nothing does. An order or whereabouts is what it is of. */
export function valueAt(state: unknown, { thing, field }: Place, shape: Shape = {}): unknown {
  const path = pathOfThing(thing);
  let here =
    thing === '' ? state : thingWithin(state, path.split('/'), '', thing.slice(path.length + 1), shape);
  for (const step of field) {
    if (step === ORDER) return here;
    if (step === WHEREABOUTS) return here;
    here = isPlainObject(here) ? here[step] : undefined;
  }
  return here;
}
