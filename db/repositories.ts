import { formula } from '@core/formulas/formula';
import type { FormulaRecord } from '@core/formulas/noun';
import { withComputedShare } from '@core/formulas/noun';
import { formulaRecords, unvalidatedFormulas } from './formulas/drafts';
import type { Reader } from './database';
import { limitRecords, limits } from './limits/limits';
import { materialRecords, materials } from './materials/materials';
import type { Kept, RecordTable } from './record/record-table';
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
  /** Some of them, as they are now; one that is gone is missing. Not validated yet. */
  unvalidated(db: Reader, ids: readonly string[]): Iterable<Kept>;
  /** Validates one: another tool may have written to the file. Throws a ZodError. */
  validated(one: Kept): Kept;
  /** What the states of one that was read, and validated so, say of it, from what it holds beside what every record has. */
  contentOf(held: object): object;
}

/** Some of the records of a kind, as they are now; one that is gone is missing. */
export const readSome = (
  { unvalidated, validated }: Pick<RecordKinds, 'unvalidated' | 'validated'>,
  db: Reader,
  ids: readonly string[],
): Kept[] => [...unvalidated(db, ids)].map(validated);

const asRead = (held: object): object => held;

/** A kind with a table of its own, in which its records stand as their states say them. */
const inTable = <R extends Kept>(
  repository: AnyRepository,
  records: RecordTable<R>,
): Omit<RecordKinds, 'table'> => ({
  repository,
  unvalidated: (db, ids) => records.unvalidated(records.readRows(db, ids)),
  validated: (one) => records.parse(one),
  contentOf: asRead,
});

/** A kind of which there are few: read one by one, and validated so. */
const oneByOne = (repository: AnyRepository): Omit<RecordKinds, 'table'> => ({
  repository,
  unvalidated: (db, ids) => ids.flatMap((id) => repository.read(db, id) ?? []),
  validated: (one) => one,
  contentOf: (held) => repository.noun.read(held),
});

/** Every such noun; what others use comes before them. */
export const RECORD_KINDS: readonly RecordKinds[] = [
  { ...inTable(substanceRecords, substances), table: 'substance' },
  { ...inTable(limitRecords, limits), table: 'legal_limit' },
  { ...inTable(materialRecords, materials), table: 'material' },
  {
    repository: formulaRecords,
    table: 'formula',
    unvalidated: (db, ids) => unvalidatedFormulas(db, ids) as Kept[],
    validated: (one) => formula.parse(one),
    contentOf: (held) => withComputedShare(held as FormulaRecord),
  },
  { ...oneByOne(seriesRecords), table: 'trial_series' },
  { ...oneByOne(searchRecords), table: 'saved_search' },
];
