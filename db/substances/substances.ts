import type { SubstanceEntry } from '@core/substances/list';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import { SUBSTANCE } from '@core/substances/noun';
import { substance, type Substance, type SubstanceContent } from '@core/substances/substance';
import type { Reader } from '../database';
import type { GlanceTable } from '../record/glance';
import { RecordTable } from '../record/record-table';
import type { Repository } from '../record/repository';
import { among } from '../some-ids';

/** The substances of the library. */
export const substances = new RecordTable<Substance>('substance', SUBSTANCE_FIELDS, (read) =>
  substance.parse(read),
);

export const substanceRecords: Repository<Substance, SubstanceContent> = {
  noun: SUBSTANCE,
  read: (db, id) => substances.read(db, id),
  insert: (tx, added) => substances.insert(tx, added),
  update: (tx, before, after) => substances.update(tx, before, after),
  remove: (tx, id) => substances.remove(tx, id),
};

/** Every substance, by name. */
export function readSubstances(db: Reader): Substance[] {
  const ids = db.all<{ id: string }>('SELECT id FROM substance ORDER BY name COLLATE NOCASE, id');
  return [
    ...substances
      .readMany(
        db,
        ids.map(({ id }) => id),
      )
      .values(),
  ];
}

/** What of all substances can be read at a glance. */
export const SUBSTANCES_TABLE: GlanceTable = {
  from: 'substance',
  keys: {
    name: 'name',
    usName: 'us_name',
    colourIndex: 'colour_index',
    cas: 'cas',
    allergenList: 'allergen_list',
    cmrClass: 'cmr_class',
    formula: 'formula',
    updatedAt: 'updated_at',
  },
};

type Scalars = Omit<SubstanceEntry, 'synonyms' | 'groups'>;

/** Substances as their list knows them, all or some. */
export function readSubstanceEntries(db: Reader, ids?: readonly string[]): SubstanceEntry[] {
  const { where, values } = among('id', ids);
  const entries = db
    .all<Scalars>(
      `SELECT id, name, us_name AS usName, colour_index AS colourIndex, cas, allergen_list AS allergenList,
         allergen_label AS allergenLabel, cmr_class AS cmrClass, formula, notes, updated_at AS updatedAt FROM substance ${where}`,
      ...values,
    )
    .map((row): SubstanceEntry => ({ ...row, synonyms: [], groups: [] }));
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const names = (table: string, add: (entry: SubstanceEntry, name: string) => void): void => {
    const of = among('substance_id', ids);
    const rows = db.all<{ id: string; name: string }>(
      `SELECT substance_id AS id, name FROM ${table} ${of.where} ORDER BY substance_id, position`,
      ...of.values,
    );
    for (const { id, name } of rows) {
      const entry = byId.get(id);
      if (entry) add(entry, name);
    }
  };
  names('substance_synonym', (entry, name) => entry.synonyms.push(name));
  names('substance_membership', (entry, name) => entry.groups.push(name));
  return entries;
}
