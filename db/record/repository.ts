import type { Noun } from '@core/record/noun';
import type { Reader, Writer } from '../database';
import type { Kept } from './record-table';

/** How the records of a noun are read and written: its present, in tables of its own. */
export interface Repository<R extends Kept & C, C extends object> {
  noun: Noun<C>;
  /** The one with that id, or undefined. */
  read(db: Reader, id: string): R | undefined;
  /** Throws where a content that was once good cannot stand beside what the library holds now. */
  refuse?(db: Reader, content: C): void;
  insert(tx: Writer, added: R): void;
  /** Adds many at once, where that is quicker than one by one. */
  insertMany?(tx: Writer, added: readonly R[]): void;
  update(tx: Writer, before: R, after: R): void;
  /** Takes one away; the database refuses where something points at it. */
  remove(tx: Writer, id: string): void;
}
