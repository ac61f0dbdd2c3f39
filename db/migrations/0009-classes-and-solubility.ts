/** What a substance is classed as, and its Hansen parameters. */
export const classesAndSolubilitySchema = `
ALTER TABLE substance ADD COLUMN cmr_class TEXT;
ALTER TABLE substance ADD COLUMN hansen_d REAL;
ALTER TABLE substance ADD COLUMN hansen_p REAL;
ALTER TABLE substance ADD COLUMN hansen_h REAL;
ALTER TABLE substance ADD COLUMN hansen_radius REAL;
ALTER TABLE substance ADD COLUMN hansen_source TEXT NOT NULL DEFAULT '';
`;
