import type { LibraryDocument } from '@core/exchange/document';
import { cutTo, nameInLine, toldApart, type ToldApart } from '@core/merging/apart';
import { recordKey } from '@core/merging/choice';
import { same } from '@core/record/same';
import { insertDocumentEntry, readDocumentEntries } from '../batches/documents';
import { insertOutcome, readOutcomes } from '../batches/outcomes';
import type { Writer } from '../database';
import { writeBatch, writeState, writeVersion } from '../exchange/write-events';
import { insertDecision, readDecisions } from '../formulas/decisions';
import { insertIssue, nextIssue, readIssuesOf } from '../record/issues';
import { comesWith, type Planned } from './plan';
import type { VersionNumbers } from './version-numbers';

/** How many of what is only ever added were new. */
export interface EventCounts {
  versions: number;
  batches: number;
  /** Decisions on versions, and outcomes and documents of batches, that were here already. */
  decisions: number;
}

interface EventParts {
  tx: Writer;
  theirs: LibraryDocument;
  plan: ReadonlyMap<string, Planned>;
  numbers: ReadonlyMap<string, VersionNumbers>;
  states: ReadonlyMap<string, LibraryDocument['states'][number]>;
  apart: ToldApart[];
}

const LONGEST_NUMBER = 40;
const LONGEST_REASON = 500;
const AT_ONCE = 20;

const has = (tx: Writer, table: 'batch' | 'formula_version', id: string): boolean =>
  tx.get(`SELECT 1 AS found FROM ${table} WHERE id = ?`, id) !== undefined;

function takeVersion(parts: EventParts, version: LibraryDocument['versions'][number]): void {
  const { tx, theirs, numbers, states, apart } = parts;
  for (const hash of [version.formula, ...version.materials.map(({ state }) => state)]) {
    const state = states.get(hash);
    if (state) writeState(tx, state);
  }
  const number = numbers.get(version.formulaId)?.get(version.number) ?? version.number;
  const told = `version ${version.number} in ${nameInLine(theirs.library.name)}`;
  const reason =
    number === version.number ? version.reason : [version.reason, `(${told})`].filter(Boolean).join(' ');
  if (number !== version.number) apart.push({ was: told, is: `version ${number}` });
  writeVersion(tx, { ...version, number, reason: cutTo(reason, LONGEST_REASON) });
}

function takeBatch({ tx, theirs, apart }: EventParts, batch: LibraryDocument['batches'][number]): void {
  const taken = (number: string): boolean =>
    tx.get('SELECT 1 AS found FROM batch WHERE number = ?', number) !== undefined;
  const number = taken(batch.number)
    ? toldApart(batch.number, theirs.library.name, taken, LONGEST_NUMBER)
    : batch.number;
  if (number !== batch.number) apart.push({ was: batch.number, is: number });
  writeBatch(tx, { ...batch, number });
}

/**
 * Issues of what comes, or is here as it is there. One whose number was given here to another state bears the next one
 * that is free: two papers of one number must be told apart.
 */
function takeIssue(
  { tx, theirs, plan, states, apart }: EventParts,
  issue: LibraryDocument['issues'][number],
): void {
  const { kind, record, n } = issue;
  const planned = plan.get(recordKey(kind, record));
  const state = states.get(issue.state);
  if (!planned || !comesWith(planned) || !state) return;
  const here = readIssuesOf(tx, kind, record);
  // What a pack withholds gives the state another hash; it is the issue of that moment all the same.
  if (here.some((one) => one.at === issue.at || (one.n === n && one.state === issue.state))) return;
  const number = here.some((one) => one.n === n) ? nextIssue(tx, kind, record) : n;
  if (number !== n) {
    const told = `issue ${n} of “${planned.entry.title}” in ${nameInLine(theirs.library.name)}`;
    apart.push({ was: told, is: `issue ${number}` });
  }
  insertIssue(tx, { ...issue, n: number }, writeState(tx, state));
}

/** What was added there to something that is here already. @returns how many */
function addMissing<T>(here: readonly T[], there: readonly T[], insert: (one: T) => void): number {
  const missing = there.filter((one) => !here.some((known) => same(known, one)));
  for (const one of missing) insert(one);
  return missing.length;
}

/** Adds the versions, batches, decisions, outcomes, documents and issues that are not here yet, some at each step. */
export function* writeNewEvents(parts: EventParts): Generator<void, EventCounts> {
  const { tx, theirs, plan } = parts;
  const counts: EventCounts = { versions: 0, batches: 0, decisions: 0 };
  for (const [at, version] of theirs.versions.entries()) {
    const planned = plan.get(recordKey('formula', version.formulaId));
    if (has(tx, 'formula_version', version.id))
      counts.decisions += addMissing(readDecisions(tx, version.id), version.decisions, (one) =>
        insertDecision(tx, version.id, one),
      );
    else if (planned && comesWith(planned)) {
      takeVersion(parts, version);
      counts.versions += 1;
    }
    if (at % AT_ONCE === AT_ONCE - 1) yield;
  }
  for (const [at, batch] of theirs.batches.entries()) {
    if (has(tx, 'batch', batch.id)) {
      counts.decisions += addMissing(readOutcomes(tx, batch.id), batch.outcomes, (one) =>
        insertOutcome(tx, batch.id, one),
      );
      counts.decisions += addMissing(readDocumentEntries(tx, batch.id), batch.documents, (one) =>
        insertDocumentEntry(tx, batch.id, one),
      );
    } else if (has(tx, 'formula_version', batch.versionId)) {
      takeBatch(parts, batch);
      counts.batches += 1;
    }
    if (at % AT_ONCE === AT_ONCE - 1) yield;
  }
  for (const [at, issue] of theirs.issues.entries()) {
    takeIssue(parts, issue);
    if (at % AT_ONCE === AT_ONCE - 1) yield;
  }
  return counts;
}
