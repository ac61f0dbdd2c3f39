/** Findings that a formula's maker lets stand, each with the reason. */
export const acceptedFindingsSchema = `
ALTER TABLE formula ADD COLUMN accepted TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(accepted));
`;
