import { formulaRecords, readFormula } from './formulas/drafts';
import type { Reader } from './database';
import { limitRecords, limits } from './limits/limits';
import { materialRecords, materials } from './materials/materials';
import type { Kept } from './record/record-table';
import type { Repository } from './record/repository';
import { searchRecords } from './searches/searches';
import { substanceRecords, substances } from './substances/substances';
import { seriesRecords } from './trials/trials';

/** A repository without its types: what is done alike with the records of every noun. */
export type AnyRepository = Repository<Kept, object>;

/** The records of a noun that are deleted and brought back, merged, and sent from library to library. */
export interface RecordKinds {
  repository: AnyRepository;
  /** The table that lists them. */
  table: string;
  /** Some of them, as they are now; one that is gone is missing. */
  readSome(db: Reader, ids: readonly string[]): Iterable<Kept>;
  /** What is read of one is, apart from what every record has, what its states say: nothing is worked out of it. */
  asRead: boolean;
}

const oneByOne =
  (repository: AnyRepository): RecordKinds['readSome'] =>
  (db, ids) =>
    ids.flatMap((id) => repository.read(db, id) ?? []);

/** Every such noun; what others use comes before them. */
export const RECORD_KINDS: readonly RecordKinds[] = [
  {
    repository: substanceRecords,
    table: 'substance',
    readSome: (db, ids) => substances.readMany(db, ids).values(),
    asRead: true,
  },
  {
    repository: limitRecords,
    table: 'legal_limit',
    readSome: (db, ids) => limits.readMany(db, ids).values(),
    asRead: true,
  },
  {
    repository: materialRecords,
    table: 'material',
    readSome: (db, ids) => materials.readMany(db, ids).values(),
    asRead: true,
  },
  {
    repository: formulaRecords,
    table: 'formula',
    readSome: (db, ids) => ids.flatMap((id) => readFormula(db, id) ?? []),
    asRead: false,
  },
  { repository: seriesRecords, table: 'trial_series', readSome: oneByOne(seriesRecords), asRead: false },
  { repository: searchRecords, table: 'saved_search', readSome: oneByOne(searchRecords), asRead: false },
];
