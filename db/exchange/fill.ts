import type { ExchangedRecord, LibraryDocument } from '@core/exchange/document';
import { Problem } from '@core/problems/problem';
import { fillBlanks } from '@core/record/blanks';
import { liftState } from '@core/record/noun';
import { ZodError } from 'zod';
import type { Writer } from '../database';
import { insertIssue } from '../record/issues';
import type { Kept } from '../record/record-table';
import { todaysFormat } from './content';
import { RECORD_KINDS, type RecordKinds } from '../repositories';
import { writeSettings } from '../settings/settings';
import { writeBatch, writeState, writeVersion } from './write-events';

const BY_KIND = new Map(RECORD_KINDS.map((kinds) => [kinds.repository.noun.kind, kinds]));
const AT_ONCE = 50;

/** How a kind of record is read and written. @throws Problem library-newer for a kind that is not known here */
export function kindsOf(kind: string): RecordKinds {
  const known = BY_KIND.get(kind);
  if (known) return known;
  throw new Problem({
    code: 'library-newer',
    title: `This file holds records that this version of Stillroom does not know (${kind}).`,
    advice: 'Open it with a later version. Nothing was changed.',
  });
}

const PLACE = new Map(RECORD_KINDS.map(({ repository }, at) => [repository.noun.kind, at]));

/** Sorts records of several kinds, so that what others use comes before them: a document may hold them in any order. */
export function usedFirst(one: string, other: string): number {
  return (PLACE.get(one) ?? 0) - (PLACE.get(other) ?? 0);
}

/** What a document's record holds, in today's format. @throws Problem library-newer, library-damaged */
export function contentOfExchanged({ kind, id, format, content }: ExchangedRecord): object {
  const { noun } = kindsOf(kind).repository;
  if (format !== todaysFormat(noun)) return liftState(noun, format, JSON.stringify(content));
  try {
    return noun.read(fillBlanks(noun.fields, content));
  } catch (cause) {
    const [issue] = cause instanceof ZodError ? cause.issues : [];
    throw new Problem(
      {
        code: 'invalid-input',
        title: `A ${noun.name} in this file does not keep to its form.`,
        advice: `${issue ? `In the record ${id}, ${issue.path.join('.')}: ${issue.message} ` : ''}Compare the file with the description that comes with it, put it right, and choose it again. Nothing was changed.`,
        facts: { kind, id },
      },
      { cause },
    );
  }
}

/** Fills an empty library with what a document holds, some of it at each step. */
export function* fillFromDocument(tx: Writer, document: LibraryDocument): Generator<void, void> {
  if (document.settings) writeSettings(tx, document.settings, document.writtenAt);
  let count = 0;
  for (const record of document.records.toSorted((a, b) => usedFirst(a.kind, b.kind))) {
    const { id, revision, createdAt, updatedAt } = record;
    const content = contentOfExchanged(record);
    const made = { ...content, id, revision, createdAt, updatedAt } as Kept;
    kindsOf(record.kind).repository.insert(tx, made);
    if ((count += 1) % AT_ONCE === 0) yield;
  }
  const ids = new Map<string, number>();
  for (const state of document.states) {
    ids.set(state.hash, writeState(tx, state));
    if ((count += 1) % AT_ONCE === 0) yield;
  }
  for (const { kind, record, entries, sitting } of document.history) {
    writeHistory(tx, { kind, record, entries, sitting }, ids);
    if ((count += 1) % AT_ONCE === 0) yield;
  }
  for (const version of document.versions) {
    writeVersion(tx, version);
    yield;
  }
  for (const batch of document.batches) {
    writeBatch(tx, batch);
    if ((count += 1) % AT_ONCE === 0) yield;
  }
  for (const { state, ...issue } of document.issues) {
    const id = ids.get(state);
    if (id !== undefined) insertIssue(tx, issue, id);
  }
  for (const { name, last } of document.numbers)
    tx.run('INSERT INTO sequence (name, last) VALUES (?, ?)', name, last);
}

function writeHistory(
  tx: Writer,
  { kind, record, entries, sitting }: LibraryDocument['history'][number],
  ids: ReadonlyMap<string, number>,
): void {
  let n = 0;
  for (const { state, at, by, library, why } of entries) {
    const id = ids.get(state);
    // One that was withheld leaves no mark: what is known of the record begins later.
    if (id === undefined) continue;
    n += 1;
    tx.run(
      'INSERT INTO history (kind, record, n, state, at, by, library, why) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
      ...[kind, record, n, id, at, by, library, why],
    );
  }
  if (sitting)
    tx.run(
      'INSERT INTO sitting (kind, record, by, began, why, library) VALUES (?, ?, ?, ?, ?, ?)',
      ...[kind, record, sitting.by, sitting.began, sitting.why, sitting.library],
    );
}
