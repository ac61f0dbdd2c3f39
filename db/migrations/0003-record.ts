import { canonicalText } from '@core/record/canonical';
import type { Writer } from '../database';
import { putKept } from '../record/state';

/** The record: states kept once under their hash, the history of what points at them, numbers never given twice. */
export const recordSchema = `
CREATE TABLE state (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64),
  kind TEXT NOT NULL,
  record TEXT NOT NULL,
  format INTEGER NOT NULL CHECK (format >= 1),
  content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;
CREATE INDEX state_record ON state (record);
CREATE TRIGGER state_never_changes BEFORE UPDATE ON state
BEGIN SELECT RAISE(ABORT, 'a kept state never changes'); END;
CREATE TRIGGER state_never_goes BEFORE DELETE ON state
BEGIN SELECT RAISE(ABORT, 'a kept state is never deleted'); END;

-- The states that a record has left, in order.
CREATE TABLE history (
  kind TEXT NOT NULL,
  record TEXT NOT NULL,
  n INTEGER NOT NULL CHECK (n >= 1),
  state INTEGER NOT NULL REFERENCES state (id) ON DELETE RESTRICT,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  library TEXT NOT NULL,
  why TEXT NOT NULL,
  PRIMARY KEY (kind, record, n)
) STRICT, WITHOUT ROWID;

-- Who works on a record, or worked on it last: their edits in a row are one step of its history.
CREATE TABLE sitting (
  kind TEXT NOT NULL,
  record TEXT NOT NULL,
  by TEXT NOT NULL,
  began TEXT NOT NULL,
  why TEXT NOT NULL,
  library TEXT NOT NULL,
  PRIMARY KEY (kind, record)
) STRICT, WITHOUT ROWID;

-- The last running number drawn of each kind.
CREATE TABLE sequence (
  name TEXT PRIMARY KEY,
  last INTEGER NOT NULL CHECK (last >= 0)
) STRICT, WITHOUT ROWID;

ALTER TABLE setting ADD COLUMN updated_at TEXT NOT NULL DEFAULT '';

DROP TRIGGER formula_version_never_changes;
DROP TRIGGER formula_version_never_goes;
DROP TRIGGER formula_version_material_never_changes;
DROP TRIGGER formula_version_material_never_goes;

CREATE TABLE formula_version_next (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  formula_id TEXT NOT NULL REFERENCES formula (id) ON DELETE RESTRICT,
  number INTEGER NOT NULL CHECK (number >= 1),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL,
  reason TEXT NOT NULL,
  state INTEGER NOT NULL REFERENCES state (id) ON DELETE RESTRICT,
  UNIQUE (formula_id, number)
) STRICT;

-- The states of its materials at the moment when a version was recorded.
CREATE TABLE formula_version_state (
  version INTEGER NOT NULL REFERENCES formula_version (seq) ON DELETE RESTRICT,
  state INTEGER NOT NULL REFERENCES state (id) ON DELETE RESTRICT,
  revision INTEGER NOT NULL,
  PRIMARY KEY (version, state)
) STRICT, WITHOUT ROWID;
CREATE INDEX formula_version_state_state ON formula_version_state (state);
`;

/** After the versions of before have become states. */
export const recordSchemaEnd = `
DROP TABLE formula_version_material;
DROP TABLE formula_version;
ALTER TABLE formula_version_next RENAME TO formula_version;
CREATE TRIGGER formula_version_never_changes BEFORE UPDATE ON formula_version
BEGIN SELECT RAISE(ABORT, 'a recorded version never changes'); END;
CREATE TRIGGER formula_version_never_goes BEFORE DELETE ON formula_version
BEGIN SELECT RAISE(ABORT, 'a recorded version is never deleted'); END;
CREATE TRIGGER formula_version_state_never_changes BEFORE UPDATE ON formula_version_state
BEGIN SELECT RAISE(ABORT, 'a recorded version never changes'); END;
CREATE TRIGGER formula_version_state_never_goes BEFORE DELETE ON formula_version_state
BEGIN SELECT RAISE(ABORT, 'a recorded version is never deleted'); END;
-- What a recorded version was made of stays in the library.
CREATE TRIGGER material_of_a_version_stays BEFORE DELETE ON material
WHEN EXISTS (SELECT 1 FROM state s JOIN formula_version_state v ON v.state = s.id WHERE s.record = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FOREIGN KEY: a recorded version uses this material'); END;
`;

interface OldVersion {
  id: string;
  formula_id: string;
  number: number;
  recorded_at: string;
  recorded_by: string;
  reason: string;
  content: string;
}

/** What stood beside a material's content when it was frozen whole. */
const BESIDE = new Set(['id', 'revision', 'createdAt', 'updatedAt']);
/** What was blank in the first format. A migration that has shipped never changes, so it is written out here. */
const BLANK = new Set(['null', '""', '[]', '{}']);
/** Blank too, under these keys. */
const OTHER_BLANKS: Record<string, unknown> = {
  needsNeutralising: false,
  certifiedOrganic: false,
  status: 'in use',
  productType: 'o/w emulsion',
  use: 'leave-on',
};
const BLANKS_OF_GROUPS = { provenance: 'supplier' };
const BLANKS_OF_ROWS: Record<string, unknown> = {
  toHundred: false,
  kind: 'other',
  ppm: 1_000_000,
  lowPpm: 1_000_000,
  highPpm: 1_000_000,
};
/** Parts that hold fields of their own: groups, of which the latter two are null when nothing is known, and lists. */
const GROUPS = new Set(['storage', 'target', 'usage', 'legalLimit']);
const NULL_GROUPS = new Set(['usage', 'legalLimit']);
const LISTS = new Set(['composition', 'allergens', 'offers', 'documents', 'phases', 'lines', 'steps']);

type Held = Record<string, unknown>;

function isObject(value: unknown): value is Held {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function keptPart(key: string, value: unknown): unknown {
  if (GROUPS.has(key) && isObject(value)) return withoutBlanks(value, BLANKS_OF_GROUPS);
  if (LISTS.has(key) && Array.isArray(value))
    return value.map((row: unknown) => (isObject(row) ? withoutBlanks(row, BLANKS_OF_ROWS) : row));
  return value;
}

function withoutBlanks(content: Held, others: Held): Held {
  const kept = Object.entries(content)
    .filter(([key, value]) => others[key] !== value && !BLANK.has(JSON.stringify(value)))
    .map(([key, value]) => [key, keptPart(key, value)] as const)
    // A list keeps its rows, though nothing is known of them; a group that came to nothing goes.
    .filter(([key, value]) => !GROUPS.has(key) || NULL_GROUPS.has(key) || !BLANK.has(JSON.stringify(value)));
  return Object.fromEntries(kept);
}

/** The canonical text of what was frozen, as the first format keeps it. Odd content stays as it is. */
function keptContent(text: string): { content: string; revision: number } {
  const frozen = JSON.parse(text) as Held;
  const own = Object.fromEntries(Object.entries(frozen).filter(([key]) => !BESIDE.has(key)));
  const revision = Number(frozen.revision);
  return {
    content: canonicalText(withoutBlanks(own, OTHER_BLANKS)),
    revision: Number.isSafeInteger(revision) ? revision : 1,
  };
}

/** Turns each version of before, with the materials it froze whole, into states and pointers to them. */
export function versionsToStates(tx: Writer): void {
  const versions = tx.all<OldVersion>(
    'SELECT * FROM formula_version ORDER BY recorded_at, formula_id, number',
  );
  versions.forEach((version, index) => {
    const seq = index + 1;
    const { content } = keptContent(version.content);
    const state = putKept(tx, { kind: 'formula', record: version.formula_id, format: 1, content });
    tx.run(
      `INSERT INTO formula_version_next (seq, id, formula_id, number, recorded_at, recorded_by, reason, state)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      ...[seq, version.id, version.formula_id, version.number, version.recorded_at],
      ...[version.recorded_by, version.reason, state],
    );
    const materials = tx.all<{ id: string; content: string }>(
      'SELECT material_id AS id, content FROM formula_version_material WHERE version_id = ? ORDER BY material_id',
      version.id,
    );
    for (const material of materials) {
      const frozen = keptContent(material.content);
      const kept = putKept(tx, { kind: 'material', record: material.id, format: 1, content: frozen.content });
      tx.run(
        'INSERT INTO formula_version_state (version, state, revision) VALUES (?, ?, ?)',
        ...[seq, kept, frozen.revision],
      );
    }
  });
}
