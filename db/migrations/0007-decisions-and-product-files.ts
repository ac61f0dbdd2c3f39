/** Approvals and withdrawals of recorded versions, and what a product's file holds beyond its formula. */
export const decisionsAndProductFilesSchema = `
CREATE TABLE version_decision (
  seq INTEGER PRIMARY KEY,
  version_id TEXT NOT NULL REFERENCES formula_version (id) ON DELETE RESTRICT,
  decision TEXT NOT NULL CHECK (decision IN ('approved', 'withdrawn')),
  by TEXT NOT NULL CHECK (length(by) >= 1),
  on_day TEXT NOT NULL,
  reason TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT;
CREATE INDEX version_decision_version ON version_decision (version_id);
CREATE TRIGGER version_decision_never_changes BEFORE UPDATE ON version_decision
BEGIN SELECT RAISE(ABORT, 'a decision on a version never changes'); END;
CREATE TRIGGER version_decision_never_goes BEFORE DELETE ON version_decision
BEGIN SELECT RAISE(ABORT, 'a decision on a version is never deleted'); END;

ALTER TABLE formula ADD COLUMN claims TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(claims));
ALTER TABLE formula ADD COLUMN reports TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(reports));
ALTER TABLE formula ADD COLUMN statements TEXT NOT NULL DEFAULT '{"goodPractice":"","animalTesting":""}' CHECK (json_valid(statements));
`;
