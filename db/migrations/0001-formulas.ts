export const formulasSchema = `
CREATE TABLE formula (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  code TEXT NOT NULL,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  product_type TEXT NOT NULL,
  use TEXT NOT NULL CHECK (use IN ('leave-on', 'rinse-off')),
  purpose TEXT NOT NULL,
  target TEXT NOT NULL CHECK (json_valid(target)),
  notes TEXT NOT NULL
) STRICT;

CREATE TABLE formula_phase (
  id TEXT NOT NULL,
  formula_id TEXT NOT NULL REFERENCES formula (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  title TEXT NOT NULL,
  temperature_c REAL,
  PRIMARY KEY (formula_id, id),
  UNIQUE (formula_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE formula_line (
  id TEXT NOT NULL,
  formula_id TEXT NOT NULL,
  phase_id TEXT NOT NULL,
  position INTEGER NOT NULL,
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE RESTRICT,
  ppm INTEGER NOT NULL CHECK (ppm BETWEEN 0 AND 1000000),
  to_hundred INTEGER NOT NULL CHECK (to_hundred IN (0, 1)),
  note TEXT NOT NULL,
  PRIMARY KEY (formula_id, id),
  FOREIGN KEY (formula_id, phase_id) REFERENCES formula_phase (formula_id, id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX formula_line_material ON formula_line (material_id);
CREATE INDEX formula_line_phase ON formula_line (formula_id, phase_id);
-- Only one line of a formula is q.s. to 100 %.
CREATE UNIQUE INDEX formula_line_to_hundred ON formula_line (formula_id) WHERE to_hundred = 1;

CREATE TABLE formula_step (
  id TEXT NOT NULL,
  formula_id TEXT NOT NULL REFERENCES formula (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  phase_ids TEXT NOT NULL CHECK (json_valid(phase_ids)),
  instruction TEXT NOT NULL,
  temperature_c REAL,
  speed_rpm REAL,
  minutes REAL,
  look_for TEXT NOT NULL,
  caution TEXT NOT NULL,
  PRIMARY KEY (formula_id, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE formula_version (
  id TEXT PRIMARY KEY,
  formula_id TEXT NOT NULL REFERENCES formula (id) ON DELETE RESTRICT,
  number INTEGER NOT NULL CHECK (number >= 1),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL,
  reason TEXT NOT NULL,
  content TEXT NOT NULL CHECK (json_valid(content)),
  UNIQUE (formula_id, number)
) STRICT;

-- The materials of a version, as they were when it was recorded.
CREATE TABLE formula_version_material (
  version_id TEXT NOT NULL REFERENCES formula_version (id) ON DELETE RESTRICT,
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE RESTRICT,
  content TEXT NOT NULL CHECK (json_valid(content)),
  PRIMARY KEY (version_id, material_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX formula_version_material_material ON formula_version_material (material_id);

CREATE TRIGGER formula_version_never_changes BEFORE UPDATE ON formula_version
BEGIN SELECT RAISE(ABORT, 'a recorded version never changes'); END;
CREATE TRIGGER formula_version_never_goes BEFORE DELETE ON formula_version
BEGIN SELECT RAISE(ABORT, 'a recorded version is never deleted'); END;
CREATE TRIGGER formula_version_material_never_changes BEFORE UPDATE ON formula_version_material
BEGIN SELECT RAISE(ABORT, 'a recorded version never changes'); END;
CREATE TRIGGER formula_version_material_never_goes BEFORE DELETE ON formula_version_material
BEGIN SELECT RAISE(ABORT, 'a recorded version is never deleted'); END;
`;
