import type { TakingIn } from '@core/imports/content-of';
import type { Outcome, Planned } from '@core/imports/plan-row';
import type { KeyTarget } from '@core/imports/read-rows';
import type { TableRow } from '@core/imports/row';
import type { Region } from '@core/locale/numbers';
import type { Reader, Writer } from '@db/database';
import type { Kept } from '@db/record/record-table';
import type { Repository } from '@db/record/repository';

export interface ImportParts {
  key: KeyTarget;
  /** The file's name, as the history and the figures' source tell it. */
  file: string;
  region: Region;
  taking: TakingIn;
}

/** How the rows of one kind of table become records, and what is held before they do. */
export interface Taker<R extends Kept & C, C extends object> {
  repository: Repository<R, C>;
  /** What would become of some rows, against the library as it is; what was planned before is known to it. */
  plan(db: Reader, rows: readonly TableRow[]): Planned<R, C>[] | Promise<Planned<R, C>[]>;
  /** The name of a record that came into the library since, which a row would make anew. */
  cameSince(db: Reader, planned: readonly Planned<R, C>[]): string | null;
  /** What a new one gets only when it is written, such as a number. */
  complete?(tx: Writer, content: C): C;
  /** Throws where what is written cannot stand beside the rest; called once all stand. */
  refuseTogether?(tx: Reader, all: readonly R[]): void;
  /** Throws where one that was added is used by now. */
  refuseUsed?(tx: Reader, added: R): void;
}

/** What taking in has written, so that it can be taken back as one. */
export interface Written<R> {
  added: string[];
  /** Each with what it was before, and its revision since. */
  changed: { before: R; revision: number }[];
}

/** A table on its way into the library: planned a piece at a time, written as one, taken back as one. */
export class TableImport<C extends object = object, R extends Kept & C = Kept & C> {
  readonly planned: Planned<R, C>[] = [];
  /** What of it stands in the library. */
  written: Written<R> | null = null;

  constructor(
    readonly file: string,
    readonly taker: Taker<R, C>,
  ) {}

  /** Plans some more rows; nothing is written. */
  async plan(db: Reader, rows: readonly TableRow[]): Promise<Outcome[]> {
    const planned = await this.taker.plan(db, rows);
    this.planned.push(...planned);
    return planned.map(({ outcome }) => outcome);
  }
}
