import { areThings, keyField, listPath, type Shape } from './place';
import { isPlainObject, type PlainObject } from './same';

/** Something with an identity of its own within a record, taken out of the list that it stands in. */
export interface Thing {
  /** "phases/lines#…"; '' for the record itself. */
  readonly key: string;
  readonly path: string;
  readonly id: string;
  /** The key of what it stands in, and the field there that is its list. */
  readonly owner: string;
  readonly list: string;
  /** As it stands in the state, its lists included. */
  readonly value: PlainObject;
}

/** A state with its things side by side: moving one to another list changes nothing else. */
export interface Spread {
  readonly things: ReadonlyMap<string, Thing>;
  /** Keys in their order, by list. */
  readonly orders: ReadonlyMap<string, readonly string[]>;
}

/** Names one list of one thing. */
export function orderKey(owner: string, list: string): string {
  return `${owner}>${list}`;
}

/** The lists of things in some states: those whose items can be told apart in each of them. */
export function listsOfThings(states: readonly unknown[], shape: Shape): ReadonlySet<string> {
  const good = new Set<string>();
  const bad = new Set<string>();
  function look(value: PlainObject, path: string, seen: Set<string>): void {
    for (const [field, list] of Object.entries(value)) {
      const here = listPath(path, field);
      if (!Array.isArray(list)) {
        if (list !== undefined) bad.add(here);
        continue;
      }
      const key = keyField(shape, here);
      const distinct =
        areThings(list, key) && list.every((item) => !seen.has(`${here}#${String(item[key])}`));
      if (!distinct) {
        bad.add(here);
        continue;
      }
      for (const item of list) seen.add(`${here}#${String(item[key])}`);
      if (list.length > 0 && new Set(list.map((item) => item[key])).size === list.length) good.add(here);
      else if (list.length > 0) bad.add(here);
      for (const item of list) look(item, here, seen);
    }
  }
  for (const state of states) if (isPlainObject(state)) look(state, '', new Set());
  return new Set([...good].filter((path) => !bad.has(path)));
}

/** Takes the things of a state out of their lists. */
export function spread(state: PlainObject, lists: ReadonlySet<string>, shape: Shape): Spread {
  const things = new Map<string, Thing>();
  const orders = new Map<string, string[]>();
  function take(thing: Thing): void {
    things.set(thing.key, thing);
    for (const [field, list] of Object.entries(thing.value)) {
      const path = listPath(thing.path, field);
      if (!lists.has(path) || !Array.isArray(list)) continue;
      const named = (list as PlainObject[]).map((value) => ({
        value,
        id: String(value[keyField(shape, path)]),
      }));
      orders.set(
        orderKey(thing.key, field),
        named.map(({ id }) => `${path}#${id}`),
      );
      for (const { value, id } of named)
        take({ key: `${path}#${id}`, path, id, owner: thing.key, list: field, value });
    }
  }
  take({ key: '', path: '', id: '', owner: '', list: '', value: state });
  return { things, orders };
}
