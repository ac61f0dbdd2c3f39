import type { Outcome } from '@core/imports/plan-row';
import type { KeyTarget } from '@core/imports/read-rows';
import type { TableRow } from '@core/imports/row';
import type { Subject } from '@core/imports/subjects';
import { Problem } from '@core/problems/problem';
import type { OpenLibrary } from '@db/library/open-library';
import { readSettings } from '@db/settings/settings';
import type { ServiceContext } from '../context';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';
import { performImport, type ImportAnswer, type ImportJob, type OnCopy } from './import-job';

/** The most that a table may hold. */
const MOST_IN_ALL = 100_000;
/** So often what is taken in is written anew because somebody changed the library meanwhile. */
const ATTEMPTS = 3;

/** How many records a table added and changed. */
export interface TakenIn {
  added: number;
  changed: number;
}

interface Known {
  libraryId: string;
  file: string;
  /** How many of its rows went to be planned. */
  rows: number;
  /** Pieces that came before the one in front of them, by the row at which they begin. */
  waiting: Map<number, () => void>;
}

function gone(): Problem {
  return new Problem({
    code: 'not-found',
    title: 'This table is no longer held here.',
    advice: 'Choose its file again. What was taken in stays taken in.',
  });
}

function tooLong(): Problem {
  return new Problem({
    code: 'too-large',
    title: `A table can hold ${MOST_IN_ALL.toLocaleString('en')} rows at most.`,
    advice: 'Split it into several files, and take them in one after another.',
  });
}

/**
 * Tables on their way in: planned and written on a copy of the library, in a thread, so that the window answers
 * meanwhile. A short one then enters the log as one change; of a long one the copy takes the library's place.
 */
export class Imports {
  private readonly tables = new Map<string, Known>();

  constructor(private readonly context: ServiceContext) {}

  private run<A extends ImportAnswer>(job: ImportJob): Promise<A> {
    const { importing } = this.context;
    // What was taken of the library is for the thread alone.
    const given = 'ours' in job ? [job.ours.buffer as ArrayBuffer] : [];
    return (importing?.run(job, undefined, given) ?? performImport(job)) as Promise<A>;
  }

  async begin(about: Subject, key: KeyTarget, file: string): Promise<string> {
    const { library } = this.context.session.current();
    const { languageRegion: region, currency } = readSettings(library);
    const today = this.context.now().toISOString().slice(0, 10);
    const taking = { source: `taken in from ${file}`, today, currency };
    const table = this.context.newId();
    const { bytes: ours } = await library.snapshot();
    await this.run({ kind: 'begin', table, ours, about, parts: { key, file, region, taking } });
    this.tables.set(table, { libraryId: library.id, file, rows: 0, waiting: new Map() });
    return table;
  }

  private table(id: string): Known {
    const known = this.tables.get(id);
    if (known && known.libraryId === this.context.session.current().library.id) return known;
    throw gone();
  }

  /**
   * What would become of some more rows; nothing is written.
   * @param at how many rows come before them: a page sends the next while these are looked at, and one may overtake
   */
  async plan(id: string, at: number, rows: TableRow[]): Promise<Outcome[]> {
    const known = this.table(id);
    if (at + rows.length > MOST_IN_ALL) throw tooLong();
    if (at > known.rows) await new Promise<void>((turn) => known.waiting.set(at, turn));
    if (at !== known.rows) throw gone();
    known.rows += rows.length;
    const planning = this.run<Outcome[]>({ kind: 'plan', table: id, rows });
    known.waiting.get(known.rows)?.();
    known.waiting.delete(known.rows);
    return planning;
  }

  /**
   * Writes all that was planned, or nothing, as one change.
   * @throws Problem conflict when a record was changed, or came, since it was planned; invalid-input for a circle
   */
  takeIn(id: string): Promise<TakenIn> {
    return this.write(id, 'take-in', `taken in from ${this.table(id).file}`);
  }

  /**
   * Takes back all that a table has written, as one change: what it added goes, what it changed is as before.
   * @throws Problem conflict when one of them was changed since, in-use when one is used by now
   */
  takeBack(id: string): Promise<TakenIn> {
    return this.write(id, 'take-back', 'taking in undone');
  }

  async end(id: string): Promise<void> {
    const known = this.tables.get(id);
    if (!known) return;
    this.tables.delete(id);
    known.rows = MOST_IN_ALL;
    for (const turn of known.waiting.values()) turn();
    await this.run({ kind: 'end', table: id });
  }

  private async write(id: string, kind: 'take-in' | 'take-back', why: string): Promise<TakenIn> {
    this.table(id);
    const { library } = this.context.session.current();
    for (let attempt = 1; ; attempt += 1) {
      const { bytes: ours, sequence } = await library.snapshot();
      const doing = doingNow(this.context, why);
      const made = await this.run<OnCopy>({ kind, table: id, ours, doing });
      try {
        await this.place(library, made, sequence);
      } catch (error) {
        const moved = library.sequence !== sequence && error instanceof Problem && error.code === 'conflict';
        if (moved && attempt < ATTEMPTS) continue;
        throw error;
      }
      await this.run({ kind: 'done', table: id });
      return { added: made.added, changed: made.changed };
    }
  }

  /**
   * Puts what was written on the copy into the library that it was made of, and tells of it.
   * @throws Problem conflict when more was changed, not-found when another library was opened meanwhile
   */
  private async place(library: OpenLibrary, made: OnCopy, from: number): Promise<void> {
    const { session } = this.context;
    // Another may stand at the very same change: what is written for one must never enter the other.
    if (session.current().library !== library) throw gone();
    if (!('statements' in made)) {
      await library.takeState(made.bytes, from, 'import');
      session.refreshLists();
      return;
    }
    library.transaction((tx) => {
      if (library.sequence !== from)
        throw new Problem({
          code: 'conflict',
          title: 'Something was changed in this library meanwhile.',
          advice: 'Take the table in once more. Nothing was changed by this.',
        });
      for (const [sql, ...values] of made.statements) tx.run(sql, ...values);
    });
    for (const one of made.now) tellChange(this.context, made.noun, one);
  }
}
