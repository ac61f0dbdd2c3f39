import type { LibraryDocument } from '@core/exchange/document';
import type { Formula } from '@core/formulas/formula';
import { toldApart, type ToldApart } from '@core/merging/apart';
import type { Writer } from '../database';
import { appendState, beginHistory, keepLeft, type Doing } from '../record/history';
import { putState } from '../record/state';
import type { Kept } from '../record/record-table';
import { usedFirst } from '../exchange/fill';
import { writeState } from '../exchange/write-events';
import { writeNewEvents, type EventCounts } from './apply-events';
import type { Entry } from './entries';
import type { Planned } from './plan';
import { versionNumbers, withReportNumbers } from './version-numbers';

export interface Merged extends EventCounts {
  added: number;
  changed: number;
  apart: ToldApart[];
  /** How many stay as they are, but know their other state from now on. */
  entered: number;
}

interface ApplyParts {
  tx: Writer;
  theirs: LibraryDocument;
  plan: ReadonlyMap<string, Planned>;
  doing: Doing;
}

const LONGEST_CODE = 40;
const AT_ONCE = 50;

interface Work extends ApplyParts {
  states: ReadonlyMap<string, LibraryDocument['states'][number]>;
  histories: ReadonlyMap<string, LibraryDocument['history'][number]>;
  merged: Merged;
}

/** The states that a record has left there and never been in here, each as it was left. */
function takeHistory(
  { tx, states, histories, theirs }: Work,
  { noun, id, ours, theirs: there }: Entry,
): void {
  if (there?.record.id !== id) return;
  const known = new Set(
    tx.all<{ hash: string }>('SELECT hash FROM state WHERE record = ?', id).map(({ hash }) => hash),
  );
  if (ours) known.add(ours.state);
  for (const { state, ...left } of histories.get(`${noun.kind} ${id}`)?.entries ?? []) {
    const held = states.get(state);
    if (!held || known.has(state)) continue;
    appendState(tx, noun.kind, id, writeState(tx, held), {
      ...left,
      library: left.library || theirs.library.id,
    });
  }
}

/** Their present state enters the history, so that it is known when the two meet again. */
function takePresent({ tx, histories, theirs, doing }: Work, { noun, id, theirs: there }: Entry): void {
  if (!there) return;
  const sitting = histories.get(`${noun.kind} ${there.record.id}`)?.sitting;
  appendState(tx, noun.kind, id, putState(tx, noun, id, noun.read(there.shownContent)), {
    at: there.record.updatedAt,
    by: sitting?.by ?? '',
    library: theirs.library.id,
    why: doing.why,
  });
}

/** A code that another formula bears here is told apart. */
function withOwnCode({ tx, theirs, merged }: Work, id: string, content: object): object {
  const { code } = content as Formula;
  const taken = (one: string): boolean =>
    tx.get('SELECT 1 AS found FROM formula WHERE code = ? AND id <> ?', one, id) !== undefined;
  if (code === '' || !taken(code)) return content;
  const is = toldApart(code, theirs.library.name, taken, LONGEST_CODE);
  merged.apart.push({ was: code, is });
  return { ...content, code: is };
}

function add(work: Work, { entry }: Planned, held: object): void {
  const { tx, doing, merged } = work;
  const { repository, noun, id, theirs } = entry;
  if (!theirs) return;
  const { createdAt } = theirs.record;
  const record = { ...held, id, revision: 1, createdAt, updatedAt: doing.at } as Kept;
  repository.insert(tx, record);
  takeHistory(work, entry);
  takePresent(work, entry);
  beginHistory(tx, noun.kind, id, doing);
  merged.added += 1;
}

function change(work: Work, { entry }: Planned, held: object): void {
  const { tx, doing, merged } = work;
  const { repository, noun, id, ours } = entry;
  const before = repository.read(tx, id);
  if (!before || !ours) return;
  const isOther = held !== ours.content;
  if (isOther) keepLeft(tx, noun, before);
  takeHistory(work, entry);
  takePresent(work, entry);
  if (!isOther) {
    merged.entered += 1;
    return;
  }
  const { createdAt } = before;
  const after = { ...held, id, revision: before.revision + 1, createdAt, updatedAt: doing.at } as Kept;
  repository.update(tx, before, after);
  beginHistory(tx, noun.kind, id, doing);
  merged.changed += 1;
}

/**
 * Carries a plan out, some of it at each step: what a record was stays in its history, with all that it has been there.
 * To be called within one transaction.
 */
export function* applyMerge(parts: ApplyParts): Generator<void, Merged> {
  const merged: Merged = {
    added: 0,
    changed: 0,
    apart: [],
    entered: 0,
    versions: 0,
    batches: 0,
    decisions: 0,
  };
  const work: Work = {
    ...parts,
    states: new Map(parts.theirs.states.map((state) => [state.hash, state])),
    histories: new Map(parts.theirs.history.map((one) => [`${one.kind} ${one.record}`, one])),
    merged,
  };
  const numbers = versionNumbers(parts.tx, parts.theirs, parts.plan);
  let count = 0;
  const inOrder = [...parts.plan.values()].sort((a, b) => usedFirst(a.entry.noun.kind, b.entry.noun.kind));
  for (const planned of inOrder) {
    const { entry, content } = planned;
    if (!content) continue;
    const isFormula = entry.noun.kind === 'formula';
    const numbered = isFormula
      ? withReportNumbers(content, entry.ours?.content ?? null, numbers.get(entry.id))
      : content;
    const held = isFormula && !entry.ours ? withOwnCode(work, entry.id, numbered) : numbered;
    if (entry.ours) change(work, planned, held);
    else add(work, planned, held);
    if ((count += 1) % AT_ONCE === 0) yield;
  }
  Object.assign(
    merged,
    yield* writeNewEvents({ ...parts, numbers, apart: merged.apart, states: work.states }),
  );
  for (const { name, last } of parts.theirs.numbers)
    parts.tx.run(
      `INSERT INTO sequence (name, last) VALUES (?, ?)
       ON CONFLICT (name) DO UPDATE SET last = max(last, excluded.last)`,
      ...[name, last],
    );
  return merged;
}
