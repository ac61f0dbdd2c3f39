import type { FormulaEntry } from '@core/formulas/list';
import { rowOf } from '@core/lists/description';
import type { Found } from '@core/lists/found';
import { createListIndex, NEARNESS, type ListIndex, type Match } from '@core/lists/list-index';
import type { ListPage, ListQuery } from '@core/lists/query';
import type { MaterialEntry } from '@core/materials/list';
import { otherNames } from '@core/materials/synonyms';
import type { Reader } from '@db/database';
import { NOUN_LISTS, NOUNS, type Noun, type Nouns } from './nouns';

type Indexes = { [N in Noun]: ListIndex<Nouns[N]['entry']> };

/**
 * The lists of an open library, held ready for searching. Each is filled when it is first asked for. Whoever changes a
 * record says so with `changed`: the record is read anew before its list answers next, so that saving waits for nothing.
 */
export class LibraryLists {
  private readonly indexes: Partial<Indexes> = {};
  private readonly stale = new Map<Noun, Set<string>>();

  private filling: NodeJS.Immediate | undefined;

  constructor(private readonly db: Reader) {}

  /** Fills the lists one by one whenever the process has nothing else to do, so that no first search waits. */
  fillInTurn(): void {
    const next = NOUNS.find((noun) => !this.indexes[noun]);
    if (!next) return;
    this.filling = setImmediate(() => {
      this.index(next);
      this.fillInTurn();
    });
  }

  /** Before the library is closed: nothing is read from it any more. */
  stop(): void {
    clearImmediate(this.filling);
  }

  /** Says that a record came, changed or went. */
  changed(noun: Noun, id: string): void {
    const ids = this.stale.get(noun) ?? new Set<string>();
    this.stale.set(noun, ids.add(id));
  }

  /** How many records a noun has. */
  count(noun: Noun): number {
    return this.index(noun).size;
  }

  /** Everything of a noun, as its list shows it. */
  rows<N extends Noun>(noun: N): Nouns[N]['row'][] {
    return [...this.index(noun).entries()].map((entry) => this.row(noun, entry));
  }

  /** One page of a noun's list. */
  page<N extends Noun>(noun: N, query: ListQuery): ListPage<Nouns[N]['row']> {
    const { rows, ...page } = this.index(noun).search(query);
    return { ...page, rows: rows.map((entry) => this.row(noun, entry)) };
  }

  /** The records of some nouns that a text means, nearest first; equally near ones in the order of the nouns. */
  find(text: string, nouns: readonly Noun[], limit: number): Found[] {
    const found = NOUNS.filter((noun) => nouns.includes(noun)).flatMap((noun) =>
      this.index(noun)
        .best(text, limit)
        .map((match): Found => this.found(noun, match)),
    );
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

  /** A noun's list, with everything in it that changed meanwhile. */
  private index<N extends Noun>(noun: N): Indexes[N] {
    const known = this.indexes[noun] as Indexes[N] | undefined;
    if (!known) return this.fill(noun);
    if (noun === 'formulas') this.index('materials');
    if (noun === 'batches') this.index('formulas');
    const ids = [...(this.stale.get(noun) ?? [])];
    this.stale.delete(noun);
    if (ids.length > 0) this.readAnew(noun, known, ids);
    return known;
  }

  private fill<N extends Noun>(noun: N): Indexes[N] {
    this.stale.delete(noun);
    const { description, read } = NOUN_LISTS[noun];
    const entries = this.completed(noun, read(this.db));
    const index = createListIndex(description, entries, otherNames) as unknown as Indexes[N];
    this.indexes[noun] = index;
    return index;
  }

  private readAnew<N extends Noun>(noun: N, index: Indexes[N], ids: readonly string[]): void {
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
      ingredientOf(before as MaterialEntry) !== ingredientOf(after as MaterialEntry)
    )
      for (const { id, materialIds } of this.indexes.formulas?.entries() ?? [])
        if (materialIds.includes(after.id)) this.changed('formulas', id);
    if (noun === 'formulas' && nameOf(before as FormulaEntry) !== nameOf(after as FormulaEntry))
      for (const { id, formulaId } of this.indexes.batches?.entries() ?? [])
        if (formulaId === after.id) this.changed('batches', id);
  }

  /** Entries with what another list knows: formulas with the names of their materials. */
  private completed<N extends Noun>(noun: N, entries: Nouns[N]['entry'][]): Nouns[N]['entry'][] {
    if (noun !== 'formulas') return entries;
    const materials = this.index('materials');
    return (entries as FormulaEntry[]).map((entry) => ({
      ...entry,
      ingredients: entry.materialIds.flatMap((id) => {
        const material = materials.get(id);
        return material ? [ingredientOf(material)] : [];
      }),
    }));
  }
}

const ingredientOf = ({ tradeName, inci }: MaterialEntry): string => `${tradeName}\n${inci}`;
const nameOf = ({ name, code }: FormulaEntry): string => `${name}\n${code}`;
