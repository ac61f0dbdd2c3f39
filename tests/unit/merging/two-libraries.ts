import { insertBatch } from '@db/batches/batches';
import { insertOutcome } from '@db/batches/outcomes';
import { fillFromDocument } from '@db/exchange/fill';
import { readDocument } from '@db/exchange/read-document';
import { readFormula, writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import { createMeta } from '@db/library/file/meta';
import { Engine } from '@db/library/sql/engine';
import { materials as shelf, readMaterials } from '@db/materials/materials';
import { Meeting } from '@db/merging/meeting';
import type { Merged } from '@db/merging/apply';
import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import { beginHistory, keepBefore, type Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import { RECORD_KINDS } from '@db/repositories';
import { demoLibrary } from '@core/demo/demo-library';
import type { LibraryDocument } from '@core/exchange/document';
import { FORMULA_FIELDS } from '@core/formulas/fields';
import type { FormulaContent } from '@core/formulas/formula';
import { blankMaterial } from '@core/materials/material';
import type { Decisions } from '@core/merging/choice';
import { blankContent } from '@core/record/field';

/* Libraries as databases in memory, to be merged with each other. */

let made = 0;
export const newId = (): string => {
  made += 1;
  return `0195c7a0-0000-7000-8000-${String(made).padStart(12, '0')}`;
};
const NO_DECISIONS: Decisions = { rules: {}, records: {}, fields: {} };
export const AT = '2026-05-01T10:00:00.000Z';
let minutes = 0;
/** Each later than the one before, by more than a sitting lasts. */
const later = (): string => {
  minutes += 5 * 60;
  return new Date(Date.parse(AT) + minutes * 60_000).toISOString();
};

export function drained<T>(steps: Generator<void, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

export async function emptyLibrary(): Promise<Engine> {
  const engine = await Engine.open();
  const id = newId();
  createMeta(engine, { id, format: 1, sequence: 0, chain: 'a'.repeat(32), revision: 1, createdAt: AT });
  migrate(engine, migrations, new Date(AT));
  return engine;
}

/** The demonstration library. */
export async function demo(): Promise<Engine> {
  const engine = await emptyLibrary();
  const { materials, formulas, versions, batches, outcomes } = demoLibrary();
  engine.control('BEGIN');
  for (const one of materials) shelf.insert(engine, one);
  for (const one of formulas) writeFormula(engine, one);
  for (const one of versions) insertVersion(engine, one);
  for (const one of batches) insertBatch(engine, one);
  for (const [id, outcome] of outcomes) insertOutcome(engine, id, outcome);
  engine.control('COMMIT');
  return engine;
}

export const copyOf = (engine: Engine): Promise<Engine> => Engine.open(engine.exportBytes());

const repositoryOf = (kind: string) =>
  RECORD_KINDS.find(({ repository }) => repository.noun.kind === kind)!.repository;

const doingOf = (by: string): Doing => ({ by, at: later(), why: '', library: by });

/** Adds a record as the service does. */
export function add(engine: Engine, kind: string, content: object, id = newId()): string {
  const doing = doingOf('someone');
  const record = { ...content, id, revision: 1, createdAt: doing.at, updatedAt: doing.at } as Kept;
  repositoryOf(kind).insert(engine, record);
  beginHistory(engine, kind, id, doing);
  return id;
}

/** Changes a record as the service does. */
export function edit(engine: Engine, kind: string, id: string, change: object, by = 'someone'): void {
  const repository = repositoryOf(kind);
  const before = repository.read(engine, id)!;
  const doing = doingOf(by);
  keepBefore(engine, repository.noun, before, doing);
  const after = { ...before, ...change, revision: before.revision + 1, updatedAt: doing.at };
  repository.update(engine, before, after);
}

export const read = <T>(engine: Engine, kind: string, id: string): T =>
  repositoryOf(kind).read(engine, id) as T;

export function documentOf(engine: Engine, name = 'North Bench'): LibraryDocument {
  const { id } = engine.get<{ id: string }>('SELECT id FROM library_meta')!;
  return drained(readDocument(engine, { id, name, writtenAt: AT }));
}

export const meet = (ours: Engine, theirs: LibraryDocument, trusted = false): Meeting =>
  drained(Meeting.begin(ours, theirs, trusted));

/** Merges a document into a library. */
export function mergeInto(ours: Engine, theirs: LibraryDocument, decisions: Partial<Decisions> = {}): Merged {
  const doing = { by: 'me', at: later(), why: `merged from ${theirs.library.name}`, library: 'ours' };
  ours.control('BEGIN');
  const merged = drained(meet(ours, theirs).apply({ ...NO_DECISIONS, ...decisions }, doing));
  ours.control('COMMIT');
  return merged;
}

export async function libraryFrom(document: LibraryDocument): Promise<Engine> {
  const engine = await emptyLibrary();
  engine.control('BEGIN');
  drained(fillFromDocument(engine, document));
  engine.control('COMMIT');
  return engine;
}

/** What a library says, apart from who and when: the state of every record. */
export function statesOf(engine: Engine): Record<string, string> {
  return Object.fromEntries(
    documentOf(engine).records.map(({ kind, id, state }) => [`${kind} ${id}`, state]),
  );
}

export const wax = (name: string) => ({ ...blankMaterial(name, 'Cetyl Alcohol') });

/** A formula of one phase: the first material is q.s., each other a tenth. */
export function formulaOf(
  name: string,
  code: string,
  materialIds: string[],
): FormulaContent & { archived: boolean } {
  const content = { ...blankContent(FORMULA_FIELDS), name, code } as unknown as FormulaContent;
  const lines = materialIds.map((materialId, at) => ({
    id: newId(),
    materialId,
    ppm: at === 0 ? 0 : 100_000,
    toHundred: at === 0,
    note: '',
  }));
  return { ...content, archived: false, phases: [{ id: newId(), title: '', temperatureC: null, lines }] };
}

/** Records a formula as it is. Returns the version's id. */
export function record(engine: Engine, formulaId: string, number: number, part: object = {}): string {
  const {
    id: _id,
    revision: _n,
    createdAt: _c,
    updatedAt: _u,
    archived: _a,
    ...content
  } = readFormula(engine, formulaId)!;
  const ids = content.phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId));
  const materials = Object.fromEntries(readMaterials(engine, ids));
  const version = { id: newId(), formulaId, number, recordedAt: later(), recordedBy: 'Ada', reason: '' };
  insertVersion(engine, { ...version, content, materials, ...part });
  return version.id;
}

/** Plans a batch of a version, of one material. Returns its id. */
export function plan(engine: Engine, versionId: string, number: string, materialId: string): string {
  const made = {
    id: newId(),
    number,
    versionId,
    createdAt: later(),
    overagePpm: 0,
    readabilityMg: 10,
    note: '',
  };
  const lines = [{ lineId: newId(), materialId, targetMg: 1_000_000 }];
  insertBatch(engine, { ...made, size: { by: 'mass', massMg: 1_000_000 }, totalMg: 1_000_000, lines });
  return made.id;
}

/** A library of one formula of two materials, recorded once, of which one batch is planned. */
export async function smallLibrary(): Promise<
  { engine: Engine } & Record<'water' | 'oil' | 'formula' | 'version' | 'batch', string>
> {
  const engine = await emptyLibrary();
  const [water, oil] = [
    add(engine, 'material', wax('Ford Water')),
    add(engine, 'material', wax('Alder Oil')),
  ];
  const formula = add(engine, 'formula', formulaOf('Balm', 'F-001', [water, oil]));
  const version = record(engine, formula, 1);
  return { engine, water, oil, formula, version, batch: plan(engine, version, 'B-001', water) };
}
