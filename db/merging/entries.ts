import type { ExchangedRecord, LibraryDocument } from '@core/exchange/document';
import {
  ancestryOf,
  type Ancestry,
  type Orders,
  type Relation,
  type TheirChain,
} from '@core/merging/ancestry';
import { recordKey } from '@core/merging/choice';
import { withWithheld } from '@core/merging/join';
import { twinKey } from '@core/merging/twins';
import { blankContent } from '@core/record/field';
import { keptText, type Noun } from '@core/record/noun';
import { same } from '@core/record/same';
import { WITHHELD_OF_MATERIALS } from '@core/packs/pack';
import type { Reader } from '../database';
import { strippedState } from '../packs/stripped';
import { contentOfExchanged, kindsOf } from '../exchange/fill';
import { pastOf, readRecords } from '../exchange/read-document';
import { readHistory } from '../record/history';
import { readState, stateOf, type StateRow } from '../record/state';
import type { AnyRepository } from '../repositories';

/** A record in two libraries. */
export interface Entry {
  key: string;
  repository: AnyRepository;
  noun: Noun<object>;
  /** Its identifier here. */
  id: string;
  title: string;
  relation: Relation;
  /** The last common state; null where none is known. */
  base: string | null;
  /** As it is here now; null where it is not. */
  ours: ExchangedRecord | null;
  /** As it is there, what is withheld filled from ours; null where it is not. */
  theirs: TheirRecord | null;
}

export interface TheirRecord {
  record: ExchangedRecord;
  content: object;
  /** As it is shown: without what is withheld. */
  shownContent: object;
  /** The hash of the state that is shown of it; its own unless something is withheld. */
  shown: string;
}

export interface EntriesParts {
  ours: Reader;
  theirs: LibraryDocument;
  /** It was read from a library here and now: nobody can have written into it. */
  trusted: boolean;
}

/** What is known of ours beside the present. */
interface OurSide {
  records: Map<string, ExchangedRecord>;
  byTwinKey: Map<string, ExchangedRecord | null>;
  past: Map<string, string[]>;
}

function* readOurs({ ours: db, theirs: there, trusted }: EntriesParts): Generator<void, OurSide> {
  // What of ours is one of theirs is no twin of another.
  const theirs = new Set(there.records.map(({ kind, id }) => recordKey(kind, id)));
  const validated = new Map(trusted ? there.records.map(({ state, content }) => [state, content]) : []);
  const records = new Map<string, ExchangedRecord>();
  const byTwinKey = new Map<string, ExchangedRecord | null>();
  for (const record of yield* readRecords(db, validated)) {
    const own = recordKey(record.kind, record.id);
    records.set(own, record);
    const twin = theirs.has(own) ? null : twinKey(record.kind, record.content);
    if (twin === null) continue;
    const key = `${record.kind} ${twin}`;
    byTwinKey.set(key, byTwinKey.has(key) ? null : record);
  }
  return { records, byTwinKey, past: pastOf(db) };
}

/** The states that a record has been in on either side, in order; rarely asked for. */
function ordersOf({ ours: db, theirs }: EntriesParts, ours: ExchangedRecord, there: ExchangedRecord): Orders {
  const left = readHistory(db, ours.kind, ours.id).map(({ hash }) => hash);
  const history = theirs.history.find(({ kind, record }) => kind === there.kind && record === there.id);
  const leftThere = history?.entries.map(({ state }) => state) ?? [];
  return { ours: [...left, ours.state], theirs: [...leftThere, there.state] };
}

/** How a material stands to one that went out without its suppliers; null where that tells no more. */
function metWithoutWithheld(db: Reader, ours: ExchangedRecord, theirs: TheirChain): Ancestry | null {
  const { kind, id, format } = ours;
  if (kind !== 'material') return null;
  const present = { kind, record: id, format, hash: ours.state };
  const { fields } = kindsOf(kind).repository.noun;
  const kept = JSON.parse(keptText(fields, ours.content)) as Record<string, unknown>;
  const own = strippedState({ ...present, content: kept }).hash;
  const rows = db.all<StateRow>('SELECT * FROM state WHERE record = ? ORDER BY id', id);
  const wholeOf = new Map<string, string>();
  const past = rows.flatMap(({ content, ...row }) => {
    const shown = strippedState({ ...row, content: JSON.parse(content) as Record<string, unknown> }).hash;
    wholeOf.set(shown, row.hash);
    return [row.hash, shown];
  });
  const found = ancestryOf({ past, present: [ours.state, own] }, theirs);
  if (found.relation === 'both changed' && found.base === null) return null;
  return { ...found, base: found.base && (wholeOf.get(found.base) ?? found.base) };
}

/** What was withheld once and is blank since: nobody has taken it away. */
function stillBlank({ fields }: Noun<object>, content: object): string[] {
  const held = content as Record<string, unknown>;
  return WITHHELD_OF_MATERIALS.filter((key) => same(held[key], fields[key]?.blank));
}

/** The record here that another library began by itself; only one of theirs is it. */
function twinOf(record: ExchangedRecord, content: object, our: OurSide, claimed: ReadonlySet<string>) {
  const key = twinKey(record.kind, content);
  const twin = key === null ? null : our.byTwinKey.get(`${record.kind} ${key}`);
  return twin && !claimed.has(recordKey(twin.kind, twin.id)) ? twin : null;
}

function entryOf(
  record: ExchangedRecord,
  our: OurSide,
  parts: EntriesParts,
  claimed: ReadonlySet<string>,
): Entry {
  const { theirs, trusted } = parts;
  const { repository } = kindsOf(record.kind);
  const { noun } = repository;
  const content = trusted ? record.content : contentOfExchanged(record);
  const own = our.records.get(recordKey(record.kind, record.id));
  const ours = own ?? twinOf(record, content, our, claimed);
  const id = ours?.id ?? record.id;
  const withheld = theirs.withheld[record.kind] ?? [];
  const shown = trusted && id === record.id ? record.state : stateOf(noun, id, noun.read(content)).hash;
  // Written into by hand: it came from the state that it names.
  const byHand = withheld.length === 0 && shown !== record.state && id === record.id;
  const chain: TheirChain = {
    past: byHand ? [...record.past, record.state] : record.past,
    present: withheld.length > 0 ? [record.state, shown] : [shown],
  };
  const orders = ours ? () => ordersOf(parts, ours, record) : undefined;
  const plain = ancestryOf({ past: our.past.get(id) ?? [], present: ours && [ours.state] }, chain, orders);
  const met =
    (ours && plain.relation === 'both changed' && metWithoutWithheld(parts.ours, ours, chain)) || null;
  const { relation, base } = met ?? plain;
  const held = ours?.content ?? blankContent(noun.fields);
  const missing = met ? stillBlank(noun, content) : withheld;
  const whole = missing.length > 0 ? withWithheld(content, held, missing) : content;
  const known = ours !== null && relation !== 'same' && stateOf(noun, id, whole).hash === ours.state;
  return {
    ...{ key: recordKey(record.kind, id), repository, noun, id, title: noun.titleOf(content), base },
    relation: known ? 'same' : relation,
    ours,
    theirs: { record, content: whole, shownContent: content, shown },
  };
}

/** How every record of two libraries stands, some at each step: theirs first, then what is only here. */
export function* readEntries(parts: EntriesParts): Generator<void, Entry[]> {
  const { records } = parts.theirs;
  const our = yield* readOurs(parts);
  const entries: Entry[] = [];
  const met = new Set<string>();
  for (const [at, record] of records.entries()) {
    const entry = entryOf(record, our, parts, met);
    if (met.has(entry.key)) continue;
    entries.push(entry);
    met.add(entry.key);
    if (at % 100 === 99) yield;
  }
  for (const [key, record] of our.records) {
    if (met.has(key)) continue;
    const { repository } = kindsOf(record.kind);
    const { noun } = repository;
    const title = noun.titleOf(record.content);
    const own = { key, repository, noun, id: record.id, title, ours: record };
    entries.push({ ...own, relation: 'only here', base: null, theirs: null });
  }
  return entries;
}

/** What the last common state of an entry says; null where none is known. */
export function baseOf(db: Reader, { base, noun, ours }: Entry): object | null {
  if (base !== null && base === ours?.state) return ours.content;
  const row =
    base === null
      ? undefined
      : db.get<StateRow>('SELECT id, hash, kind, record, format, content FROM state WHERE hash = ?', base);
  return row ? readState(noun, row) : null;
}
