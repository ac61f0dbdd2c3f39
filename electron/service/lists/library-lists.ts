import { setTimeout } from 'node:timers/promises';
import { costOfShares } from '@core/costing/cost-of-shares';
import type { FormulaEntry } from '@core/formulas/list';
import { rowOf } from '@core/lists/description';
import { isOfAll, orderOfAll, type OrderOfAll } from '@core/lists/first-page';
import type { Found } from '@core/lists/found';
import { NEARNESS, type ListIndex, type Match } from '@core/lists/list-index';
import type { ListPage, ListQuery, QuickPage } from '@core/lists/query';
import type { MaterialEntry } from '@core/materials/list';
import type { Reader } from '@db/database';
import { batchesOf } from '@db/batches/batches';
import { formulasWith } from '@db/formulas/list';
import { countAll, readGlances } from '@db/record/glance';
import { noLibrary } from '../library/no-library';
import { fillList } from './filling';
import { NOUN_LISTS, NOUNS, type Noun, type Nouns } from './nouns';

type Indexes = { [N in Noun]: ListIndex<Nouns[N]['entry']> };
type Index<N extends Noun> = ListIndex<Nouns[N]['entry']>;

/** Whose list tells what a noun's own takes over: filled first, so that no change of it goes by unseen. */
const NEEDS: Partial<Record<Noun, Noun>> = { formulas: 'materials', batches: 'formulas' };
/** The first screen comes first. */
const FILL_AFTER_MS = 1_000;

/**
 * The lists of an open library, held ready for searching, and filled piece by piece once it is open. Whoever changes a
 * record says so with `changed`: the record is read anew before its list answers next, so that saving waits for nothing.
 */
export class LibraryLists {
  private readonly indexes: Partial<Indexes> = {};
  private readonly filling = new Map<Noun, Promise<void>>();
  private readonly stale = new Map<Noun, Set<string>>();
  /** The whole list in an order, by noun and order, for as long as its index is not there and nothing changes. */
  private readonly orders = new Map<string, OrderOfAll>();
  private over = false;

  constructor(private readonly db: Reader) {}

  /** Fills the lists one after another, so that no first search waits. What fails is met by whoever asks. */
  async fillInTurn(): Promise<void> {
    await setTimeout(FILL_AFTER_MS, undefined, { ref: false });
    for (const noun of NOUNS) await this.filled(noun).catch(() => undefined);
  }

  /** Before the library is closed: nothing is read from it any more. */
  stop(): void {
    this.over = true;
  }

  /** Says that a record came, changed or went. */
  changed(noun: Noun, id: string): void {
    const ids = this.stale.get(noun) ?? new Set<string>();
    this.stale.set(noun, ids.add(id));
    this.orders.clear();
  }

  /** Everything of a noun, as its list shows it. */
  async rows<N extends Noun>(noun: N): Promise<Nouns[N]['row'][]> {
    return [...(await this.index(noun)).entries()].map((entry) => this.row(noun, entry));
  }

  /** One page of a noun's list, with what every word of every filter would leave. */
  async page<N extends Noun>(noun: N, query: ListQuery): Promise<ListPage<Nouns[N]['row']>> {
    const { rows, ...page } = (await this.index(noun)).search(query);
    return { ...page, rows: rows.map((entry) => this.row(noun, entry)) };
  }

  /** The records that a query finds, all of them, in its order. */
  async ids<N extends Noun>(noun: N, query: ListQuery): Promise<string[]> {
    const index = await this.index(noun);
    return index.search({ ...query, offset: 0, limit: Infinity }).rows.map(({ id }) => id);
  }

  /** One page as soon as it can be had: of the whole list it need not wait for that to be filled. */
  async quickPage<N extends Noun>(noun: N, query: ListQuery): Promise<QuickPage<Nouns[N]['row']>> {
    const order = !this.indexes[noun] && isOfAll(query) ? this.order(noun, query) : undefined;
    if (!order) return this.page(noun, query);
    const { offset, limit } = query;
    const wanted = order.page(offset, limit);
    const read = NOUN_LISTS[noun].read(this.db, wanted);
    const entries = new Map(this.withMaterials(noun, read).map((entry) => [entry.id, entry]));
    const rows = wanted.flatMap((id) => (entries.has(id) ? [this.row(noun, entries.get(id)!)] : []));
    const held = countAll(this.db, NOUN_LISTS[noun].table);
    return { total: order.total, offset, rows, counts: null, corrections: [], instead: [], held };
  }

  /** The records of some nouns that a text means, nearest first; equally near ones in the order of the nouns. */
  async find(text: string, nouns: readonly Noun[], limit: number): Promise<Found[]> {
    const asked = NOUNS.filter((noun) => nouns.includes(noun));
    const found: Found[] = [];
    for (const noun of asked)
      for (const match of (await this.index(noun)).best(text, limit)) found.push(this.found(noun, match));
    const place = ({ near, putAside }: Found): number =>
      NEARNESS.indexOf(near) + (putAside ? NEARNESS.length : 0);
    return found.sort((a, b) => place(a) - place(b)).slice(0, limit);
  }

  private found<N extends Noun>(kind: N, { entry, near, putAside }: Match<Nouns[N]['entry']>): Found {
    return { kind, row: this.row(kind, entry), near, putAside } as Found;
  }

  private row<N extends Noun>(noun: N, entry: Nouns[N]['entry']): Nouns[N]['row'] {
    return rowOf(NOUN_LISTS[noun].description, entry);
  }

  /** The whole list in an order, as far as that can be told at a glance. */
  private order(noun: Noun, query: ListQuery): OrderOfAll | undefined {
    const { description, table } = NOUN_LISTS[noun];
    const name = `${noun} ${query.sortBy} ${query.descending}`;
    const known = this.orders.get(name);
    if (known) return known;
    const glances = readGlances(this.db, table, [description.name, query.sortBy]);
    const order = glances && orderOfAll(description, glances, query);
    if (order) this.orders.set(name, order);
    return order;
  }

  /** A noun's list, with everything in it that changed meanwhile. */
  private async index<N extends Noun>(noun: N): Promise<Index<N>> {
    await this.filled(noun);
    return this.upToDate(noun);
  }

  private upToDate<N extends Noun>(noun: N): Index<N> {
    const needed = NEEDS[noun];
    if (needed) this.upToDate(needed);
    const index = this.indexes[noun] as Index<N>;
    const ids = [...(this.stale.get(noun) ?? [])];
    this.stale.delete(noun);
    if (ids.length > 0) this.readAnew(noun, index, ids);
    return index;
  }

  /** Settles once a noun's list is there. Rejects with what the database says. */
  private filled(noun: Noun): Promise<void> {
    const known = this.filling.get(noun);
    if (known) return known;
    const filling = this.fill(noun);
    this.filling.set(noun, filling);
    // Whoever asks next tries again.
    filling.catch(() => this.filling.delete(noun));
    return filling;
  }

  private async fill<N extends Noun>(noun: N): Promise<void> {
    const needed = NEEDS[noun];
    if (needed) await this.filled(needed);
    const index = await fillList({
      db: this.db,
      noun,
      complete: (entries) => this.completed(noun, entries),
      isOver: () => this.over,
    });
    if (index) (this.indexes as Record<Noun, unknown>)[noun] = index;
    else throw noLibrary();
  }

  private readAnew<N extends Noun>(noun: N, index: Index<N>, ids: readonly string[]): void {
    const entries = this.completed(noun, NOUN_LISTS[noun].read(this.db, ids));
    const left = new Set(ids);
    for (const entry of entries) {
      const before = index.get(entry.id);
      index.put(entry as never);
      left.delete(entry.id);
      if (before) this.follow(noun, before, entry);
    }
    for (const id of left) index.remove(id);
  }

  /** What another noun's list tells of a record changes with the record. */
  private follow<N extends Noun>(noun: N, before: Nouns[N]['entry'], after: Nouns[N]['entry']): void {
    if (
      noun === 'materials' &&
      toldByFormulas(before as MaterialEntry) !== toldByFormulas(after as MaterialEntry)
    )
      for (const id of formulasWith(this.db, after.id)) this.changed('formulas', id);
    if (noun === 'formulas' && nameOf(before as FormulaEntry) !== nameOf(after as FormulaEntry))
      for (const id of batchesOf(this.db, after.id)) this.changed('batches', id);
  }

  /** Entries with what another list knows: formulas with the names and prices of their materials. */
  private completed<N extends Noun>(noun: N, entries: Nouns[N]['entry'][]): Nouns[N]['entry'][] {
    if (noun !== 'formulas') return entries;
    const materials = this.upToDate('materials');
    return (entries as FormulaEntry[]).map((entry) => withMaterials(entry, (id) => materials.get(id)));
  }

  /** The same of a few, for which the materials' list need not be there. */
  private withMaterials<N extends Noun>(noun: N, entries: Nouns[N]['entry'][]): Nouns[N]['entry'][] {
    if (noun !== 'formulas') return entries;
    const formulas = entries as FormulaEntry[];
    const ids = [...new Set(formulas.flatMap(({ materialIds }) => materialIds))];
    const read = NOUN_LISTS.materials.read(this.db, ids);
    const materials = new Map(read.map((material) => [material.id, material]));
    return formulas.map((entry) => withMaterials(entry, (id) => materials.get(id)));
  }
}

function withMaterials(
  entry: FormulaEntry,
  materialOf: (id: string) => MaterialEntry | undefined,
): FormulaEntry {
  const materials = entry.materialIds.map(materialOf);
  return {
    ...entry,
    ...costOfShares(entry.ppms.map((ppm, at) => ({ ppm, price: materials[at] }))),
    ingredients: materials.flatMap((material) => (material ? [ingredientOf(material)] : [])),
  };
}

const ingredientOf = ({ tradeName, inci }: MaterialEntry): string => `${tradeName}\n${inci}`;
const toldByFormulas = (material: MaterialEntry): string =>
  `${ingredientOf(material)}\n${material.pricePerKg} ${material.currency}`;
const nameOf = ({ name, code }: FormulaEntry): string => `${name}\n${code}`;
