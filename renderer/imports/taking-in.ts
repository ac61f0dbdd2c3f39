import { beginReading, type SheetReading } from '@core/imports/begin-reading';
import { columnFor } from '@core/imports/guess-columns';
import { plain } from '@core/imports/plain';
import type { ReadingWays } from '@core/imports/read-cell';
import type { KeyTarget } from '@core/imports/read-rows';
import { formulaSheets } from '@core/imports/formula-sheets';
import type { Subject } from '@core/imports/subjects';
import type { Sheet } from '@core/tables/table';
import { onScopeDispose, shallowReactive } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useSettings } from '../settings/store';
import { useSaving } from '../shell/saving';
import { readInWorker } from './read-in-worker';
import { letGo, planTable, type PlannedTable } from './plan-table';

/** Several choices in a row are looked at once. */
const PAUSE_MS = 300;

/** A table on its way into the library: chosen, understood, looked at, taken in, and taken back. */
export class TakingIn {
  /** What its rows are. */
  about: Subject = 'materials';
  /** Whether each sheet of the file is a formula by itself. */
  sheetEach = false;
  file = '';
  sheets: Sheet[] = [];
  sheetAt = 0;
  reading: SheetReading | null = null;
  /** By what its rows are to be known, where that was chosen. */
  keyChosen: KeyTarget | null = null;
  planned: PlannedTable | null = null;
  /** Whether the file is being read. */
  readingFile = false;
  /** How many of the rows are looked at; null while nothing is on its way. */
  progress: { done: number; of: number } | null = null;
  problem: ProblemDetails | null = null;
  taken: { added: number; changed: number; back: boolean } | null = null;
  private together: Sheet | null = null;
  private stop = new AbortController();
  private pause: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly settings: ReturnType<typeof useSettings>,
    private readonly saving: ReturnType<typeof useSaving>,
  ) {}

  /** The table that is read: a sheet of the file, or all of them as one where each is a formula. */
  get sheet(): Sheet | null {
    if (!this.sheetEach) return this.sheets[this.sheetAt] ?? null;
    return this.sheets.length === 0 ? null : this.together;
  }

  /** Says what the rows of the table are; it is understood anew. */
  takeFor(about: Subject, sheetEach: boolean): void {
    [this.about, this.sheetEach] = [about, sheetEach];
    if (this.sheets.length > 0) this.openSheet(this.sheetAt);
  }

  get key(): KeyTarget {
    return this.keyChosen ?? this.planned?.key ?? 'tradeName';
  }

  /** Gives up what is looked at; what is taken in stays. */
  drop(): void {
    this.stop.abort();
    clearTimeout(this.pause);
    if (this.planned && !this.taken) letGo(this.planned.id);
    this.planned = null;
    this.progress = null;
    this.readingFile = false;
  }

  async choose(chosen: File): Promise<void> {
    this.drop();
    this.taken = this.problem = this.reading = this.keyChosen = null;
    this.sheets = [];
    this.file = chosen.name;
    this.stop = new AbortController();
    const { signal } = this.stop;
    this.readingFile = true;
    try {
      this.sheets = await readInWorker(chosen, signal);
      this.readingFile = false;
      this.openSheet(
        Math.max(
          0,
          this.sheets.findIndex(({ hidden, rows }) => !hidden && rows.length > 0),
        ),
      );
    } catch (error) {
      if (!signal.aborted) [this.readingFile, this.problem] = [false, problemOf(error)];
    }
  }

  openSheet(at: number): void {
    this.sheetAt = at;
    if (this.sheetEach) {
      const words = this.settings.current.tableWords;
      const ways = beginReading(this.sheets[at] ?? this.sheets[0]!, words, undefined, 'formulas').ways;
      this.together = formulaSheets(this.sheets, this.file, ways);
    }
    this.headIn(undefined);
  }

  /** Takes a row of the sheet for its headings; finds them by itself when left out. */
  headIn(row: number | undefined): void {
    if (!this.sheet) return;
    this.keyChosen = null;
    this.reading = beginReading(this.sheet, this.settings.current.tableWords, row, this.about);
    void this.look();
  }

  /** Looks at every row anew, as it is understood now. Nothing is written. */
  async look(): Promise<void> {
    const { about, sheet, reading, file, keyChosen: key } = this;
    this.drop();
    this.taken = this.problem = null;
    if (!sheet || !reading) return;
    this.stop = new AbortController();
    const { signal } = this.stop;
    const told = (done: number, of: number): void => {
      if (!signal.aborted) this.progress = { done, of };
    };
    told(0, sheet.rows.length);
    try {
      const planned = await planTable({ about, file, sheet, reading, key }, signal, told);
      if (planned) [this.planned, this.progress] = [planned, null];
    } catch (error) {
      if (signal.aborted) return;
      [this.problem, this.progress] = [problemOf(error), null];
    }
  }

  private change(part: Partial<SheetReading>): void {
    if (!this.reading) return;
    this.reading = { ...this.reading, ...part };
    this.lookSoon();
  }

  private lookSoon(): void {
    clearTimeout(this.pause);
    this.pause = setTimeout(() => void this.look(), PAUSE_MS);
  }

  /** Says what a column fills; another one that filled it is left out. */
  fill(at: number, target: string | null): void {
    const columns = this.reading?.columns.map((one) => {
      if (one.at === at) return columnFor(one, target);
      return target !== null && one.target === target ? columnFor(one, null) : one;
    });
    if (columns) this.change({ columns });
  }

  readAs(ways: Partial<ReadingWays>): void {
    if (this.reading) this.change({ ways: { ...this.reading.ways, ...ways } });
  }

  knowBy(key: KeyTarget): void {
    this.keyChosen = key;
    this.lookSoon();
  }

  /** Says what a word of the table means, now and the next time; an empty word leaves it out. */
  async tell(target: string, written: string, word: string): Promise<void> {
    const now = this.settings.current.tableWords;
    const tableWords = { ...now, [target]: { ...now[target], [plain(written)]: word } };
    try {
      const change = answer(service.settings.$patch({ json: { tableWords } }));
      this.settings.take(await this.saving.track(change));
      this.readAs({ words: tableWords });
    } catch (error) {
      this.problem = problemOf(error);
    }
  }

  /** Writes all that can be taken in, or, `back`, takes all of it back; each as one change. */
  async write(back: boolean): Promise<void> {
    if (!this.planned) return;
    const param = { id: this.planned.id };
    const way = service.imports[':id'];
    this.problem = null;
    try {
      const request = back ? way['take-back'].$post({ param }) : way['take-in'].$post({ param });
      this.taken = { ...(await this.saving.track(answer(request))), back };
    } catch (error) {
      this.problem = problemOf(error);
    }
  }
}

/** A table on its way in, for as long as its screen is open. */
export function useTakingIn(about: Subject): TakingIn {
  const taking = shallowReactive(new TakingIn(useSettings(), useSaving()));
  taking.about = about;
  onScopeDispose(() => taking.drop());
  return taking;
}
