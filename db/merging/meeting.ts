import type { LibraryDocument } from '@core/exchange/document';
import { recordKey, type Decisions } from '@core/merging/choice';
import { joinStates } from '@core/merging/join';
import type { Region } from '@core/locale/numbers';
import { fieldWords } from '@core/record/words';
import { same } from '@core/record/same';
import type { Writer } from '../database';
import type { Doing } from '../record/history';
import { applyMerge, type Merged } from './apply';
import { baseOf, readEntries, type Entry } from './entries';
import { comesWith, planMerge, type Planned } from './plan';

/** A field in which a record differs, in words. */
export interface MetField {
  key: string;
  label: string;
  /** In the last common state; empty where none is known. */
  base: string;
  ours: string;
  theirs: string;
  /** Both sides changed it, each in its own way. */
  clash: boolean;
}

const IDENTIFIER = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

/** Two libraries that have met: how every record stands, what would become of it, and the merge itself. */
export class Meeting {
  private constructor(
    private readonly ours: Writer,
    readonly theirs: LibraryDocument,
    readonly entries: readonly Entry[],
  ) {}

  /** @param trusted theirs was read from a library here and now */
  static *begin(ours: Writer, theirs: LibraryDocument, trusted: boolean): Generator<void, Meeting> {
    return new Meeting(ours, theirs, yield* readEntries({ ours, theirs, trusted }));
  }

  plan(decisions: Decisions): Map<string, Planned> {
    const { ours, theirs, entries } = this;
    return planMerge({ ours, theirs, entries, decisions });
  }

  /** Carries the plan out in our database, which is to be thrown away where this fails. */
  *apply(decisions: Decisions, doing: Doing): Generator<void, Merged> {
    const { ours: tx, theirs } = this;
    return yield* applyMerge({ tx, theirs, plan: this.plan(decisions), doing });
  }

  /** The attached files that a record shows, by their hashes. */
  shownFiles(content: object): string[] {
    const known = new Set(this.theirs.attachments.map(({ sha256 }) => sha256));
    return [...new Set(JSON.stringify(content).match(/[0-9a-f]{64}/g) ?? [])].filter((sha) => known.has(sha));
  }

  /** The attached files of batches that would come, and of those that are here already, by their hashes. */
  filesOfBatches(plan: ReadonlyMap<string, Planned>): string[] {
    const versions = this.theirs.versions.filter(({ id, formulaId }) => {
      const planned = plan.get(recordKey('formula', formulaId));
      return (
        (planned !== undefined && comesWith(planned)) ||
        this.ours.get('SELECT 1 AS found FROM formula_version WHERE id = ?', id) !== undefined
      );
    });
    const known = new Set(versions.map(({ id }) => id));
    return this.shownFiles(this.theirs.batches.filter(({ versionId }) => known.has(versionId)));
  }

  /** The fields in which a record differs, in the order of its noun; undefined for a record that is not met. */
  fields(key: string, region: Region): MetField[] | undefined {
    const entry = this.entries.find((one) => one.key === key);
    if (!entry) return undefined;
    const { noun } = entry;
    const base = baseOf(this.ours, entry) as Record<string, unknown> | null;
    const [ours, theirs] = [entry.ours?.content, entry.theirs?.content] as (
      Record<string, unknown> | undefined
    )[];
    const clashes =
      ours && theirs && entry.relation === 'both changed'
        ? joinStates(noun, { base, ours, theirs }, 'ours').clashes
        : [];
    return Object.entries(noun.fields).flatMap(([key, field]) => {
      const blank = field.blank as unknown;
      const values = [base, ours, theirs].map((state) => (state ? (state[key] ?? blank) : blank));
      if (same(values[1], values[2])) return [];
      const [b, o, t] = values.map((value) => this.named(fieldWords(field, value, region)));
      return [
        { key, label: field.label, base: base ? b! : '', ours: o!, theirs: t!, clash: clashes.includes(key) },
      ];
    });
  }

  /** Words with the trade names of materials in the place of their identifiers; others say nothing. */
  private named(words: string): string {
    return words
      .replace(IDENTIFIER, (id) => this.titleOf(`material ${id}`))
      .replace(/ {2,}/g, ' ')
      .trim();
  }

  private titles: Map<string, string> | undefined;
  private titleOf(key: string): string {
    this.titles ??= new Map(this.entries.map((entry) => [entry.key, entry.title]));
    return this.titles.get(key) ?? '';
  }
}
