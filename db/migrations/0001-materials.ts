/** Words are written out, not imported: a migration that has shipped never changes, while the vocabulary may grow. */
export const materialsSchema = `
CREATE TABLE setting (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;

CREATE TABLE material (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  code TEXT NOT NULL,
  trade_name TEXT NOT NULL CHECK (length(trade_name) BETWEEN 1 AND 200),
  status TEXT NOT NULL CHECK (status IN ('in use', 'on trial', 'archived')),
  phase_of_use TEXT CHECK (phase_of_use IN ('oil', 'water', 'cool-down', 'any')),
  usage_min_ppm INTEGER CHECK (usage_min_ppm BETWEEN 0 AND 1000000),
  usage_typical_ppm INTEGER CHECK (usage_typical_ppm BETWEEN 0 AND 1000000),
  usage_max_ppm INTEGER CHECK (usage_max_ppm BETWEEN 0 AND 1000000),
  usage_provenance TEXT CHECK (usage_provenance IN ('supplier', 'published', 'measured', 'computed', 'estimated')),
  usage_source TEXT,
  form TEXT CHECK (form IN ('pellets', 'flakes', 'beads', 'powder', 'granules', 'paste', 'liquid', 'viscous liquid', 'block')),
  consistency TEXT CHECK (consistency IN ('waxy', 'oily', 'watery', 'resinous')),
  appearance TEXT NOT NULL,
  charge TEXT CHECK (charge IN ('anionic', 'cationic', 'non-ionic', 'amphoteric')),
  architecture TEXT CHECK (architecture IN ('classic', 'polymeric', 'particulate')),
  emulsion_type TEXT CHECK (emulsion_type IN ('o/w', 'w/o', 'both')),
  body TEXT CHECK (body IN ('none', 'some', 'strong')),
  electrolyte_tolerance TEXT CHECK (electrolyte_tolerance IN ('low', 'moderate', 'high')),
  needs_neutralising INTEGER NOT NULL CHECK (needs_neutralising IN (0, 1)),
  cold_processable INTEGER CHECK (cold_processable IN (0, 1)),
  origin TEXT CHECK (origin IN ('natural', 'naturally derived', 'mineral', 'synthetic')),
  certified_organic INTEGER NOT NULL CHECK (certified_organic IN (0, 1)),
  storage_min_c REAL,
  storage_max_c REAL,
  shelf_life_months INTEGER CHECK (shelf_life_months >= 0),
  after_opening_months INTEGER CHECK (after_opening_months >= 0),
  handling TEXT NOT NULL,
  limit_ppm INTEGER CHECK (limit_ppm BETWEEN 0 AND 1000000),
  limit_note TEXT,
  limit_source TEXT CHECK ((limit_ppm IS NULL) = (limit_source IS NULL)),
  photo TEXT,
  notes TEXT NOT NULL
) STRICT;

CREATE TABLE material_inci (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  inci TEXT NOT NULL,
  low_ppm INTEGER NOT NULL CHECK (low_ppm BETWEEN 0 AND 1000000),
  high_ppm INTEGER NOT NULL CHECK (high_ppm BETWEEN low_ppm AND 1000000),
  PRIMARY KEY (material_id, position)
) STRICT, WITHOUT ROWID;

-- The lists of words: functions, what it dissolves in, what to keep it from, hazards.
CREATE TABLE material_word (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  list TEXT NOT NULL CHECK (list IN ('function', 'soluble in', 'keep from', 'hazard')),
  position INTEGER NOT NULL,
  word TEXT NOT NULL,
  PRIMARY KEY (material_id, list, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE material_figure (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  kind TEXT NOT NULL,
  low REAL,
  value REAL,
  high REAL,
  provenance TEXT NOT NULL CHECK (provenance IN ('supplier', 'published', 'measured', 'computed', 'estimated')),
  source TEXT NOT NULL,
  PRIMARY KEY (material_id, kind),
  CHECK (low IS NOT NULL OR value IS NOT NULL OR high IS NOT NULL)
) STRICT, WITHOUT ROWID;

CREATE TABLE material_allergen (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  inci TEXT NOT NULL,
  ppm INTEGER NOT NULL CHECK (ppm BETWEEN 0 AND 1000000),
  PRIMARY KEY (material_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE material_offer (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  supplier TEXT NOT NULL,
  item_code TEXT NOT NULL,
  pack_mg INTEGER NOT NULL CHECK (pack_mg > 0),
  price_minor INTEGER NOT NULL CHECK (price_minor >= 0),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  date TEXT NOT NULL,
  PRIMARY KEY (material_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE material_document (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  title TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  media_type TEXT NOT NULL,
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  PRIMARY KEY (material_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE saved_search (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL CHECK (length(name) > 0),
  query TEXT NOT NULL,
  created_at TEXT NOT NULL
) STRICT;
`;
