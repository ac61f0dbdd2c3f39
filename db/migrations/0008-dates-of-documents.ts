/** The day that a material's document bears, and the last on which it holds. */
export const datesOfDocumentsSchema = `
ALTER TABLE material_document ADD COLUMN dated TEXT NOT NULL DEFAULT '';
ALTER TABLE material_document ADD COLUMN valid_until TEXT NOT NULL DEFAULT '';
`;
