/** The states of records that were issued on paper, each with the number of its issue. */
export const issuesSchema = `
CREATE TABLE issue (
  kind TEXT NOT NULL,
  record TEXT NOT NULL,
  n INTEGER NOT NULL CHECK (n >= 1),
  state INTEGER NOT NULL REFERENCES state (id) ON DELETE RESTRICT,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  PRIMARY KEY (kind, record, n)
) STRICT, WITHOUT ROWID;
CREATE INDEX issue_state ON issue (state);
CREATE TRIGGER issue_never_changes BEFORE UPDATE ON issue
BEGIN SELECT RAISE(ABORT, 'an issue never changes: what changed is another one'); END;
CREATE TRIGGER issue_never_goes BEFORE DELETE ON issue
BEGIN SELECT RAISE(ABORT, 'an issue is never deleted'); END;
`;
