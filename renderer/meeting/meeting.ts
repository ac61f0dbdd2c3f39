import { RELATIONS, type Relation } from '@core/merging/ancestry';
import type { Choice, Decisions, FieldSides } from '@core/merging/choice';
import { onScopeDispose, shallowReactive } from 'vue';
import { useLibrary } from '../library/store';
import { answer, problemOf, service, type InferResponseType, type ProblemDetails } from '../service/client';

export type Met = InferResponseType<typeof service.meetings.library.$post, 201>;
export type MetRows = InferResponseType<(typeof service.meetings)[':id']['rows']['$post'], 200>;
export type MetRow = MetRows['rows'][number];
export type Done = InferResponseType<(typeof service.meetings)[':id']['apply']['$post'], 200>;

export const ROWS_AT_ONCE = 100;
/** Of a backup nothing is taken by itself. */
const LEAVE_ALL: Decisions['rules'] = Object.fromEntries(RELATIONS.map((relation) => [relation, 'leave']));

/** Our library and another one that has met it: looked at, decided, merged, and taken back. */
export class MeetingWithOther {
  met: Met | null = null;
  decisions: Decisions = { rules: {}, records: {}, fields: {} };
  /** Of which records the rows are; null for all that differ. */
  relation: Relation | null = null;
  offset = 0;
  rows: MetRows | null = null;
  busy: '' | 'comparing' | 'merging' | 'making a library' = '';
  problem: ProblemDetails | null = null;
  done: (Done & { back: boolean }) | null = null;
  private stopped = new AbortController();

  constructor(private readonly library: ReturnType<typeof useLibrary>) {}

  get isBackup(): boolean {
    return this.met?.kind === 'backup';
  }

  private async work(busy: MeetingWithOther['busy'], work: () => Promise<void>): Promise<void> {
    this.problem = null;
    this.busy = busy;
    try {
      await work();
    } catch (error) {
      if (!this.stopped.signal.aborted) this.problem = problemOf(error);
    } finally {
      this.busy = '';
    }
  }

  private begin(ask: (signal: AbortSignal) => Promise<Met>): Promise<void> {
    this.drop();
    this.done = null;
    const { signal } = this.stopped;
    return this.work('comparing', async () => {
      const met = await ask(signal);
      this.decisions = { rules: met.kind === 'backup' ? LEAVE_ALL : {}, records: {}, fields: {} };
      this.relation = null;
      this.met = met;
      await this.show(0);
    });
  }

  withLibrary(token: string): Promise<void> {
    return this.begin((signal) =>
      answer(service.meetings.library.$post({ json: { token } }, { init: { signal } })),
    );
  }

  withBackup(name: string): Promise<void> {
    return this.begin((signal) =>
      answer(service.meetings.backup.$post({ json: { name } }, { init: { signal } })),
    );
  }

  withFile(file: File): Promise<void> {
    return this.begin((signal) =>
      answer<Met>(
        fetch(`/api/meetings/file?name=${encodeURIComponent(file.name.slice(0, 200))}`, {
          method: 'POST',
          headers: { 'Content-Type': 'application/octet-stream' },
          body: file,
          signal,
        }),
      ),
    );
  }

  async show(offset: number, relation = this.relation): Promise<void> {
    const { met } = this;
    if (!met) return;
    this.relation = relation;
    this.offset = offset;
    const json = { ...this.decisions, decisions: this.decisions, relation, offset, limit: ROWS_AT_ONCE };
    const rows = await answer(service.meetings[':id'].rows.$post({ param: { id: met.id }, json }));
    if (this.met === met) this.rows = rows;
  }

  private decide(decisions: Decisions): Promise<void> {
    this.decisions = decisions;
    return this.work('', () => this.show(this.offset));
  }

  rule(relation: Relation, choice: Choice): Promise<void> {
    const { rules } = this.decisions;
    return this.decide({ ...this.decisions, rules: { ...rules, [relation]: choice } });
  }

  choose(key: string, choice: Choice): Promise<void> {
    const { records } = this.decisions;
    return this.decide({ ...this.decisions, records: { ...records, [key]: choice } });
  }

  /** Which side a field keeps that both changed. */
  chooseField(key: string, field: string, side: FieldSides[string]): Promise<void> {
    const { fields } = this.decisions;
    const decided = { ...fields, [key]: { ...fields[key], [field]: side } };
    return this.decide({ ...this.decisions, fields: decided });
  }

  async merge(): Promise<void> {
    const { met } = this;
    if (!met) return;
    await this.work('merging', async () => {
      const done = await answer(
        service.meetings[':id'].apply.$post({ param: { id: met.id }, json: this.decisions }),
      );
      this.done = { ...done, back: false };
      this.met = null;
      this.rows = null;
      await this.library.load();
    });
  }

  async takeBack(): Promise<void> {
    await this.work('merging', async () => {
      await answer(service.meetings['take-back'].$post());
      if (this.done) this.done = { ...this.done, written: false, back: true };
      await this.library.load();
    });
  }

  /** Makes a library of its own of the other, and opens it. */
  async beside(name: string): Promise<boolean> {
    const { met } = this;
    if (!met) return false;
    await this.work('making a library', async () => {
      await answer(service.meetings[':id'].beside.$post({ param: { id: met.id }, json: { name } }));
      this.met = null;
      await this.library.load();
    });
    return this.problem === null;
  }

  /** Gives up what was compared; nothing of it was written. */
  drop(): void {
    this.stopped.abort();
    this.stopped = new AbortController();
    const { met } = this;
    if (met) void service.meetings[':id'].$delete({ param: { id: met.id } }).catch(() => undefined);
    this.met = null;
    this.rows = null;
    this.problem = null;
  }
}

export function useMeeting(): MeetingWithOther {
  const meeting = shallowReactive(new MeetingWithOther(useLibrary()));
  onScopeDispose(() => meeting.drop());
  return meeting;
}
