import { weave } from './order';
import { isWhole, listPath, ORDER, WHEREABOUTS, type Place, type Shape } from './place';
import { isPlainObject, same, type PlainObject } from './same';
import { listsOfThings, orderKey, spread, type Spread, type Thing } from './things';

export type Side = 'mine' | 'theirs';
export interface Values {
  base: unknown;
  mine: unknown;
  theirs: unknown;
}
/**
 * Chooses the side whose value stands at a place where the two differ.
 * @param at the place and those that it stands in, innermost first
 * @param who changed it
 */
export type Decide = (at: readonly Place[], values: Values, who: Side | 'both') => Side;

interface Home {
  owner: string;
  list: string;
}
interface Kept {
  thing: Thing;
  own: PlainObject;
  home: Home;
}

const listOf = ({ owner, list }: Home): string => orderKey(owner, list);
const other = (side: Side): Side => (side === 'mine' ? 'theirs' : 'mine');

/** Who changed a value, when the two sides differ. */
function changer({ base, mine, theirs }: Values): Side | 'both' {
  if (same(mine, base)) return 'theirs';
  return same(theirs, base) ? 'mine' : 'both';
}

/** Puts two states together over the one that both began with; `decide` is asked wherever they differ. */
class Combining {
  private readonly lists: ReadonlySet<string>;
  private readonly base: Spread;
  private readonly mine: Spread;
  private readonly theirs: Spread;
  private readonly kept = new Map<string, Kept>();

  constructor(
    base: PlainObject,
    mine: PlainObject,
    theirs: PlainObject,
    private readonly shape: Shape,
    private readonly decide: Decide,
  ) {
    this.lists = listsOfThings([base, mine, theirs], shape);
    this.base = spread(base, this.lists, shape);
    this.mine = spread(mine, this.lists, shape);
    this.theirs = spread(theirs, this.lists, shape);
  }

  result(): PlainObject {
    const depth = (key: string) => (key === '' ? 0 : (key.split('#')[0] ?? '').split('/').length);
    const keys = [...new Set([...this.mine.things.keys(), ...this.theirs.things.keys()])];
    // What something stands in is settled before it.
    for (const key of keys.sort((a, b) => depth(a) - depth(b))) this.settle(key);
    return this.built('');
  }

  private settle(key: string): void {
    const mine = this.mine.things.get(key);
    const theirs = this.theirs.things.get(key);
    const kept = mine && theirs ? this.ofBoth(key, mine, theirs) : this.ofOne(key, mine, theirs);
    if (!kept) return;
    if (key === '' || this.kept.has(kept.home.owner)) this.kept.set(key, kept);
    else if (mine && theirs) this.tellHomeless(key, mine, theirs);
  }

  /** Each side removed what the other keeps it in: it cannot stay, and must not go without a word. */
  private tellHomeless(key: string, mine: Thing, theirs: Thing): void {
    const values = { base: this.base.things.get(key)?.value, mine: mine.value, theirs: theirs.value };
    this.decide(this.at(mine, this.mine, []), values, 'both');
  }

  /** The place of a thing's field, with all that the thing stands in. */
  private at(thing: Thing, in_: Spread, field: readonly string[]): Place[] {
    const places: Place[] = [{ thing: thing.key, field }];
    for (let here: Thing | undefined = thing; here && here.key !== ''; here = in_.things.get(here.owner))
      places.push({ thing: here.owner, field: [here.list] });
    return places;
  }

  private ofBoth(key: string, mine: Thing, theirs: Thing): Kept {
    const base = this.base.things.get(key);
    const values = { base: base?.value ?? {}, mine: mine.value, theirs: theirs.value };
    const own = this.ownFields(mine, values);
    const first = this.homeOf(mine, theirs, base);
    const [preferred, fallback] = first === 'mine' ? [mine, theirs] : [theirs, mine];
    const home = key === '' || this.kept.has(preferred.owner) ? preferred : fallback;
    return { thing: mine, own, home };
  }

  private homeOf(mine: Thing, theirs: Thing, base: Thing | undefined): Side {
    if (listOf(mine) === listOf(theirs)) return 'mine';
    const values = { base: base && listOf(base), mine: listOf(mine), theirs: listOf(theirs) };
    const owners = { base: base?.owner, mine: mine.owner, theirs: theirs.owner };
    return this.decide(this.at(mine, this.mine, [WHEREABOUTS]), owners, changer(values));
  }

  private ofOne(key: string, mine: Thing | undefined, theirs: Thing | undefined): Kept | null {
    const thing = mine ?? theirs;
    if (!thing) return null;
    const side: Side = mine ? 'mine' : 'theirs';
    const base = this.base.things.get(key);
    const own = this.withoutLists(thing);
    const kept = { thing, own, home: thing };
    // It came and went with what it stands in, which was asked about as a whole.
    if (base && base.owner === thing.owner && this.isOneSided(thing.owner)) return kept;
    const values = { base: base?.value, mine: mine?.value, theirs: theirs?.value };
    const touched = base && (!same(base.value, thing.value) || listOf(base) !== listOf(thing));
    const who = base ? (touched ? 'both' : other(side)) : side;
    const in_ = side === 'mine' ? this.mine : this.theirs;
    return this.decide(this.at(thing, in_, []), values, who) === side ? kept : null;
  }

  private isOneSided(key: string): boolean {
    return this.base.things.has(key) && this.mine.things.has(key) !== this.theirs.things.has(key);
  }

  private withoutLists({ path, value }: Thing): PlainObject {
    return Object.fromEntries(
      Object.entries(value).filter(([field]) => !this.lists.has(listPath(path, field))),
    );
  }

  private ownFields(thing: Thing, values: Values): PlainObject {
    const merged = this.byKey(thing, [], values, (field) => this.lists.has(listPath(thing.path, field)));
    return merged as PlainObject;
  }

  private byKey(
    thing: Thing,
    field: readonly string[],
    { base, mine, theirs }: Values,
    skip: (key: string) => boolean = () => false,
  ): unknown {
    const [b, m, t] = [base, mine, theirs].map((value) => (isPlainObject(value) ? value : {}));
    const merged: Record<string, unknown> = {};
    for (const key of new Set([...Object.keys(m ?? {}), ...Object.keys(t ?? {})])) {
      if (skip(key)) continue;
      const values = { base: b?.[key], mine: m?.[key], theirs: t?.[key] };
      const value = this.field(thing, [...field, key], values);
      if (value !== undefined) merged[key] = value;
    }
    return merged;
  }

  private field(thing: Thing, field: readonly string[], values: Values): unknown {
    const { base, mine, theirs } = values;
    if (same(mine, theirs)) return mine;
    const hasParts =
      isPlainObject(mine) && isPlainObject(theirs) && (base === undefined || isPlainObject(base));
    if (hasParts && !isWhole(this.shape, { thing: thing.key, field }))
      return this.byKey(thing, field, values);
    return values[this.decide(this.at(thing, this.mine, field), values, changer(values))];
  }

  /** The keys of a list of what was kept, in the order that both sides agree on, or that is chosen. */
  private order(owner: string, list: string): string[] {
    const name = orderKey(owner, list);
    const here = (key: string) => {
      const kept = this.kept.get(key);
      return kept !== undefined && listOf(kept.home) === name;
    };
    const [base, mine, theirs] = [this.base, this.mine, this.theirs].map((side) =>
      (side.orders.get(name) ?? []).filter(here),
    ) as [string[], string[], string[]];
    const both = new Set(mine.filter((key) => theirs.includes(key)));
    const orders: Values = {
      base: base.filter((key) => both.has(key)),
      mine: mine.filter((key) => both.has(key)),
      theirs: theirs.filter((key) => both.has(key)),
    };
    const thing = this.mine.things.get(owner) ?? this.theirs.things.get(owner);
    const differ = thing && !same(orders.mine, orders.theirs);
    const at = differ ? this.at(thing, this.mine, [list, ORDER]) : [];
    const side = differ ? this.decide(at, orders, changer(orders)) : 'mine';
    return weave(orders[side] as string[], mine, theirs);
  }

  private built(key: string): PlainObject {
    const kept = this.kept.get(key);
    const [mine, theirs] = [this.mine.things.get(key)?.value, this.theirs.things.get(key)?.value];
    const path = kept?.thing.path ?? '';
    const whole: Record<string, unknown> = {};
    // The keys as they stood, so that a state reads and compares as before.
    for (const field of new Set([...Object.keys(mine ?? {}), ...Object.keys(theirs ?? {})])) {
      if (this.lists.has(listPath(path, field)))
        whole[field] = this.order(key, field).map((item) => this.built(item));
      else if (kept?.own[field] !== undefined) whole[field] = kept.own[field];
    }
    // The very object that stood before, where nothing changed in it.
    if (mine && same(whole, mine)) return mine;
    return theirs && same(whole, theirs) ? theirs : whole;
  }
}

/** Puts two states together over the one that both began with; `decide` is asked wherever they differ. */
export function combined<T extends object>(base: T, mine: T, theirs: T, shape: Shape, decide: Decide): T {
  const states = [base, mine, theirs] as unknown as [PlainObject, PlainObject, PlainObject];
  return new Combining(...states, shape, decide).result() as T;
}
