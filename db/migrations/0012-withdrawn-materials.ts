/** The day from which a material is not to be used any more, and why. */
export const withdrawnMaterialsSchema = `
ALTER TABLE material ADD COLUMN withdrawn_on TEXT NOT NULL DEFAULT '';
ALTER TABLE material ADD COLUMN withdrawn_why TEXT NOT NULL DEFAULT '';
`;
