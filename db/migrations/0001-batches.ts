export const batchesSchema = `
CREATE TABLE batch (
  id TEXT PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  version_id TEXT NOT NULL REFERENCES formula_version (id) ON DELETE RESTRICT,
  created_at TEXT NOT NULL,
  size TEXT NOT NULL CHECK (json_valid(size)),
  overage_ppm INTEGER NOT NULL CHECK (overage_ppm BETWEEN 0 AND 500000),
  readability_mg INTEGER NOT NULL CHECK (readability_mg > 0),
  total_mg INTEGER NOT NULL CHECK (total_mg > 0),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX batch_version ON batch (version_id);

CREATE TABLE batch_line (
  batch_id TEXT NOT NULL REFERENCES batch (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  line_id TEXT NOT NULL,
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE RESTRICT,
  target_mg INTEGER NOT NULL CHECK (target_mg >= 0),
  PRIMARY KEY (batch_id, position)
) STRICT, WITHOUT ROWID;
CREATE INDEX batch_line_material ON batch_line (material_id);

-- Trial emulsions around a computed ratio, with what came of them.
CREATE TABLE trial_series (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  title TEXT NOT NULL CHECK (length(title) > 0),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;
`;
