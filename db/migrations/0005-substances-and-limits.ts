/** Substances with their names, what law says of them, and what a formula becomes. */
export const substancesAndLimitsSchema = `
CREATE TABLE substance (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 300),
  us_name TEXT NOT NULL,
  colour_index TEXT NOT NULL,
  cas TEXT NOT NULL,
  formula TEXT NOT NULL,
  molar_mass REAL,
  allergen_list TEXT,
  allergen_label TEXT NOT NULL,
  pod REAL,
  pod_kind TEXT NOT NULL,
  oral_bioavailability REAL,
  dermal_absorption REAL,
  absorbed_per_area REAL,
  safety_source TEXT NOT NULL,
  notes TEXT NOT NULL
) STRICT;

CREATE TABLE substance_synonym (
  substance_id TEXT NOT NULL REFERENCES substance (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  PRIMARY KEY (substance_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE substance_membership (
  substance_id TEXT NOT NULL REFERENCES substance (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  PRIMARY KEY (substance_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE substance_equivalent (
  substance_id TEXT NOT NULL REFERENCES substance (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  counted_as TEXT NOT NULL,
  per_mole REAL NOT NULL CHECK (per_mole > 0),
  PRIMARY KEY (substance_id, position)
) STRICT, WITHOUT ROWID;

-- Named apart from the word of the query language.
CREATE TABLE legal_limit (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  subject TEXT NOT NULL CHECK (length(subject) BETWEEN 1 AND 300),
  subject_kind TEXT NOT NULL,
  purpose TEXT,
  nano_form TEXT NOT NULL,
  rule TEXT NOT NULL,
  percent REAL CHECK (percent BETWEEN 0 AND 100),
  min_percent REAL CHECK (min_percent BETWEEN 0 AND 100),
  expressed_as TEXT NOT NULL,
  counting TEXT NOT NULL,
  ph_low REAL,
  ph_high REAL,
  condition TEXT NOT NULL,
  use TEXT,
  hands TEXT,
  label_phrase TEXT NOT NULL,
  phrase_above REAL,
  standing TEXT NOT NULL,
  source TEXT NOT NULL,
  as_of TEXT NOT NULL,
  holds_from TEXT NOT NULL,
  from_on_shelf TEXT NOT NULL,
  holds_until TEXT NOT NULL,
  checked TEXT NOT NULL,
  notes TEXT NOT NULL
) STRICT;

CREATE TABLE legal_limit_word (
  legal_limit_id TEXT NOT NULL REFERENCES legal_limit (id) ON DELETE CASCADE,
  list TEXT NOT NULL CHECK (list IN ('region', 'kind', 'not for', 'not for users')),
  position INTEGER NOT NULL,
  word TEXT NOT NULL,
  PRIMARY KEY (legal_limit_id, list, position)
) STRICT, WITHOUT ROWID;

ALTER TABLE formula ADD COLUMN market TEXT NOT NULL
  DEFAULT '{"kind":null,"dispenser":null,"sites":[],"users":[],"regions":[]}' CHECK (json_valid(market));
`;
