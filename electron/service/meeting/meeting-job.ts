import { readDocumentText, type LibraryDocument } from '@core/exchange/document';
import type { Region } from '@core/locale/numbers';
import { RELATIONS, type Relation } from '@core/merging/ancestry';
import type { Choice, Decisions } from '@core/merging/choice';
import { Problem } from '@core/problems/problem';
import { fillFromDocument } from '@db/exchange/fill';
import { readDocument } from '@db/exchange/read-document';
import { openBytes } from '@db/library/file/library-bytes';
import type { Engine } from '@db/library/sql/engine';
import { SqlError } from '@db/library/sql/sql-error';
import type { Merged } from '@db/merging/apply';
import { Meeting, type MetField } from '@db/merging/meeting';
import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import { isZip, readPack, type ReadPack } from '@db/packs/read-pack';
import { attachmentsInUse } from '@db/record/attachments-in-use';
import type { Doing } from '@db/record/history';
import { inPieces } from '../exports/in-pieces';

/** The other library: as the bytes of its file, or as a file that was saved of one. */
export interface Other {
  kind: 'library' | 'file';
  bytes: Uint8Array;
  name: string;
}

export type MeetingJob =
  | { kind: 'begin'; meeting: string; ours: Uint8Array; other: Other; at: string }
  | { kind: 'rows'; meeting: string; decisions: Decisions; ask: RowsAsked }
  | { kind: 'fields'; meeting: string; key: string; region: Region }
  | { kind: 'apply'; meeting: string; decisions: Decisions; doing: Doing }
  | { kind: 'files'; meeting: string; decisions: Decisions | null }
  | { kind: 'attachment'; meeting: string; sha: string }
  | { kind: 'beside'; meeting: string; empty: Uint8Array }
  | { kind: 'end'; meeting: string };

export interface RowsAsked {
  relation: Relation | null;
  offset: number;
  limit: number;
}

/** What was met, before anything is decided. */
export interface Met {
  name: string;
  title: string;
  by: string;
  madeAt: string;
  /** Of the other, by what its records are called. */
  holds: Record<string, number>;
  withheld: boolean;
  relations: Record<Relation, number>;
  /** Attached files that the other names, does not bring along, and that are not here. */
  missingFiles: number;
}

export interface MetRow {
  key: string;
  noun: string;
  title: string;
  relation: Relation;
  choice: Choice;
  follows: string | null;
  refused: string | null;
}

export interface MetRows {
  total: number;
  rows: MetRow[];
  /** How many records would be added, and how many changed. */
  adds: number;
  changes: number;
  refused: number;
}

export interface Applied {
  bytes: Uint8Array;
  merged: Merged;
}

export type MeetingAnswer = Met | MetRows | MetField[] | string[] | Applied | Uint8Array | null;

interface Held {
  ours: Engine;
  meeting: Meeting;
  pack: ReadPack | null;
  /** Not a library with its files beside it. */
  isFile: boolean;
}

const held = new Map<string, Held>();

async function otherDocument({ kind, bytes, name }: Other, at: string) {
  if (kind === 'file') {
    if (isZip(bytes)) {
      const pack = readPack(bytes);
      return { document: pack.document, pack, trusted: false };
    }
    return { document: readDocumentText(new TextDecoder().decode(bytes)), pack: null, trusted: false };
  }
  const { engine, meta } = await openBytes(bytes, migrations.length);
  try {
    migrate(engine, migrations, new Date(at));
    const document = await inPieces(readDocument(engine, { id: meta.id, name, writtenAt: at }));
    return { document, pack: null, trusted: true };
  } finally {
    engine.close();
  }
}

function count<K extends string>(all: readonly K[]): Partial<Record<K, number>> {
  const counts: Partial<Record<K, number>> = {};
  for (const one of all) counts[one] = (counts[one] ?? 0) + 1;
  return counts;
}

/** How many attached files a pack or document names that neither it nor the library here holds. */
function missingFrom(theirs: LibraryDocument, pack: ReadPack | null, ours: Engine): number {
  const here = new Set(attachmentsInUse(ours).map(({ sha256 }) => sha256));
  return theirs.attachments.filter(({ sha256 }) => !here.has(sha256) && !pack?.attachment(sha256)).length;
}

function metOf({ ours, meeting, pack, isFile }: Held): Met {
  const { theirs, entries } = meeting;
  const relations = count(entries.map(({ relation }) => relation));
  const events = { version: theirs.versions.length, batch: theirs.batches.length };
  return {
    name: theirs.library.name,
    title: pack?.manifest.title ?? theirs.library.name,
    by: pack?.manifest.by ?? '',
    madeAt: theirs.writtenAt,
    holds: { ...count(entries.filter((one) => one.theirs).map(({ noun }) => noun.name)), ...events },
    withheld: Object.keys(theirs.withheld).length > 0,
    relations: Object.fromEntries(RELATIONS.map((one) => [one, relations[one] ?? 0])) as Met['relations'],
    missingFiles: isFile ? missingFrom(theirs, pack, ours) : 0,
  };
}

async function begin({ meeting: id, ours, other, at }: Extract<MeetingJob, { kind: 'begin' }>): Promise<Met> {
  const { document, pack, trusted } = await otherDocument(other, at);
  const { engine } = await openBytes(ours, migrations.length, { known: true, given: true });
  try {
    const meeting = await inPieces(Meeting.begin(engine, document, trusted));
    const one = { ours: engine, meeting, pack, isFile: other.kind === 'file' };
    // One at a time: each holds two libraries.
    for (const before of held.keys()) end(before);
    held.set(id, one);
    return metOf(one);
  } catch (error) {
    engine.close();
    throw error;
  }
}

function end(id: string): null {
  held.get(id)?.ours.close();
  held.delete(id);
  return null;
}

function heldOf(id: string): Held {
  const one = held.get(id);
  if (one) return one;
  throw new Problem({
    code: 'not-found',
    title: 'What was compared is no longer held here.',
    advice: 'Choose it once more. Nothing was changed.',
  });
}

function rowsOf({ meeting }: Held, decisions: Decisions, { relation, offset, limit }: RowsAsked): MetRows {
  const plan = [...meeting.plan(decisions).values()];
  const shown = plan.filter(({ entry }) =>
    relation === null
      ? entry.relation !== 'same' && entry.relation !== 'only here'
      : entry.relation === relation,
  );
  return {
    total: shown.length,
    rows: shown.slice(offset, offset + limit).map(({ entry, choice, follows, refused }) => ({
      ...{ key: entry.key, noun: entry.noun.name, title: entry.title, relation: entry.relation },
      ...{ choice, follows, refused },
    })),
    adds: plan.filter(({ entry, content }) => content && !entry.ours).length,
    changes: plan.filter(({ entry, content }) => content && entry.ours && content !== entry.ours.content)
      .length,
    refused: plan.filter(({ refused }) => refused !== null).length,
  };
}

async function apply(
  { ours, meeting }: Held,
  { meeting: id, decisions, doing }: Extract<MeetingJob, { kind: 'apply' }>,
): Promise<Applied> {
  try {
    ours.control('BEGIN');
    const merged = await inPieces(meeting.apply(decisions, doing));
    ours.control('COMMIT');
    return { bytes: ours.exportBytes(), merged };
  } finally {
    // It is no more what was compared, whether or not this came to its end.
    end(id);
  }
}

async function beside({ meeting }: Held, empty: Uint8Array): Promise<Uint8Array> {
  const { engine } = await openBytes(empty, migrations.length, { known: true, given: true });
  try {
    engine.control('BEGIN');
    await inPieces(fillFromDocument(engine, meeting.theirs));
    engine.control('COMMIT');
    return engine.exportBytes();
  } finally {
    engine.close();
  }
}

/** The attached files that what would be taken shows; of everything, where nothing is to be decided. */
function filesOf({ meeting }: Held, decisions: Decisions | null): string[] {
  if (!decisions) return meeting.theirs.attachments.map(({ sha256 }) => sha256);
  const plan = meeting.plan(decisions);
  const ofRecords = [...plan.values()].flatMap(({ content }) => (content ? meeting.shownFiles(content) : []));
  return [...new Set([...ofRecords, ...meeting.filesOfBatches(plan)])];
}

/** What a database refuses of a file that was written by hand: it names something that it does not hold. */
function doesNotFit(error: unknown): unknown {
  if (!(error instanceof SqlError)) return error;
  return new Problem(
    {
      code: 'invalid-input',
      title: 'What this file holds does not fit together: a record names another that is not in it.',
      advice: 'Ask for it to be saved and sent again. Nothing was changed.',
    },
    { cause: error },
  );
}

/** Does a part of the work of merging, in this thread. @throws Problem */
export async function performMeeting(job: MeetingJob): Promise<MeetingAnswer> {
  try {
    return await perform(job);
  } catch (error) {
    throw doesNotFit(error);
  }
}

async function perform(job: MeetingJob): Promise<MeetingAnswer> {
  if (job.kind === 'begin') return begin(job);
  if (job.kind === 'end') return end(job.meeting);
  const one = heldOf(job.meeting);
  switch (job.kind) {
    case 'rows':
      return rowsOf(one, job.decisions, job.ask);
    case 'fields':
      return one.meeting.fields(job.key, job.region) ?? [];
    case 'apply':
      return apply(one, job);
    case 'files':
      return filesOf(one, job.decisions);
    case 'attachment':
      return one.pack?.attachment(job.sha) ?? null;
    case 'beside':
      return beside(one, job.empty);
  }
}
