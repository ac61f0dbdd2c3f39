import {
  refuseCircular,
  tradeNameKey,
  wholeComposition,
  type Composed,
  type FindByTradeName,
} from '@core/materials/nested';
import type { Material } from '@core/materials/material';
import type { Reader } from '../database';
import type { RecordTable } from '../record/record-table';

/** Names looked up at once. */
const AT_ONCE = 400;
/** Blends within blends: as deep as they are looked into. */
const DEEPEST = 12;

/** SQLite ignores the case of A to Z only. */
const NOT_PLAIN = /[^ -~]/;
const plain = (names: readonly string[]): string[] => names.filter((name) => !NOT_PLAIN.test(name));

/** The ids of materials by the trade names asked for, case and accents ignored where a name asked for has other letters than A to Z. */
function idsByTradeName(db: Reader, names: readonly string[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  const add = (rows: readonly { id: string; name: string }[]): void => {
    for (const { id, name } of rows) {
      const key = tradeNameKey(name);
      found.set(key, [...(found.get(key) ?? []), id]);
    }
  };
  const known = plain(names);
  for (let at = 0; at < known.length; at += AT_ONCE) {
    const some = known.slice(at, at + AT_ONCE);
    const marks = some.map(() => '?').join(', ');
    add(
      db.all(
        `SELECT id, trade_name AS name FROM material WHERE trade_name COLLATE NOCASE IN (${marks})`,
        ...some,
      ),
    );
  }
  if (known.length < names.length) {
    const wanted = new Set(names.map(tradeNameKey));
    const others = db.all<{ id: string; name: string }>(
      "SELECT id, trade_name AS name FROM material WHERE trade_name GLOB '*[^ -~]*'",
    );
    add(others.filter(({ name }) => wanted.has(tradeNameKey(name))));
  }
  return found;
}

/** Whether a substance of the library goes by a name: then a part of that name is the substance. */
function isSubstance(db: Reader, name: string): boolean {
  if (db.get('SELECT 1 AS found FROM substance WHERE name COLLATE NOCASE = ? LIMIT 1', name)) return true;
  if (!NOT_PLAIN.test(name)) return false;
  const others = db.all<{ name: string }>("SELECT name FROM substance WHERE name GLOB '*[^ -~]*'");
  return others.some((one) => tradeNameKey(one.name) === tradeNameKey(name));
}

/** Finds the materials that these name, and those that they name in turn; a name that several share means none. */
export function materialsWithin(
  db: Reader,
  table: RecordTable<Material>,
  of: Iterable<Composed>,
): FindByTradeName {
  const known = new Map<string, Material | null>();
  let wanted: readonly Composed[] = [...of];
  for (let depth = 0; depth < DEEPEST && wanted.length > 0; depth++) {
    const names = [
      ...new Set(wanted.flatMap(({ composition }) => composition.map(({ inci }) => inci.trim()))),
    ];
    const fresh = names.filter((name) => !known.has(tradeNameKey(name)));
    const ids = idsByTradeName(db, fresh);
    const single = fresh.flatMap((name): [string, string][] => {
      const key = tradeNameKey(name);
      const [only, ...others] = ids.get(key) ?? [];
      known.set(key, null);
      return only !== undefined && others.length === 0 && !isSubstance(db, name) ? [[key, only]] : [];
    });
    const read = table.readMany(
      db,
      single.map(([, id]) => id),
    );
    for (const [key, id] of single) known.set(key, read.get(id) ?? null);
    wanted = [...read.values()];
  }
  return (name) => known.get(tradeNameKey(name)) ?? undefined;
}

/** Materials with what the materials within them hold. */
export function wholeMaterials(
  db: Reader,
  table: RecordTable<Material>,
  read: ReadonlyMap<string, Material>,
): Map<string, Material> {
  const find = materialsWithin(db, table, read.values());
  return new Map(
    [...read].map(([id, one]) => {
      const composition = wholeComposition(one, find);
      return [id, composition === one.composition ? one : { ...one, composition }];
    }),
  );
}

/** A material, and the state that it is in. */
export interface AtRevision {
  id: string;
  revision: number;
}

/** A material that holds another one, by its trade name. */
export type Holder = AtRevision & { name: string };
const HOLDERS = `SELECT DISTINCT m.id AS id, m.revision AS revision, m.trade_name AS name
  FROM material_inci i JOIN material m ON m.id = i.material_id`;

/** The materials whose compositions name one of these. */
export function holdersOf(db: Reader, names: readonly string[]): Holder[] {
  const found = new Map<string, Holder>();
  for (let at = 0; at < names.length; at += AT_ONCE) {
    const some = names.slice(at, at + AT_ONCE);
    const marks = some.map(() => '?').join(', ');
    for (const one of db.all<Holder>(`${HOLDERS} WHERE i.inci COLLATE NOCASE IN (${marks})`, ...some))
      found.set(one.id, one);
  }
  if (plain(names).length < names.length) {
    const wanted = new Set(names.map(tradeNameKey));
    const others = db.all<Holder & { inci: string }>(
      `${HOLDERS.replace('AS name', 'AS name, i.inci')} WHERE i.inci GLOB '*[^ -~]*'`,
    );
    for (const { inci, ...one } of others) if (wanted.has(tradeNameKey(inci))) found.set(one.id, one);
  }
  return [...found.values()];
}

/** The materials whose compositions name one of these, or name a material that does. */
export function materialsHolding(db: Reader, tradeNames: readonly string[]): AtRevision[] {
  const found = new Map<string, number>();
  let wanted = [...new Set(tradeNames.map((name) => name.trim()))];
  for (let depth = 0; depth < DEEPEST && wanted.length > 0; depth++) {
    const fresh = holdersOf(db, wanted).filter(({ id }) => !found.has(id));
    for (const { id, revision } of fresh) found.set(id, revision);
    wanted = [...new Set(fresh.map(({ name }) => name.trim()))];
  }
  return [...found].map(([id, revision]) => ({ id, revision }));
}

/**
 * Refuses a composition by which a material would come to hold itself.
 * @throws Problem invalid-input
 */
export function refuseCircularMaterial(db: Reader, table: RecordTable<Material>, one: Composed): void {
  const find = materialsWithin(db, table, [one]);
  const own = tradeNameKey(one.tradeName);
  // Its own name means it as it is about to be, not as it was.
  refuseCircular(one, (name) => (tradeNameKey(name) === own ? one : find(name)));
}
