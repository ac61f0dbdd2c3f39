/** The CAS numbers of a material, as its supplier's data sheet gives them. */
export const casNumbersOfMaterialsSchema = `
ALTER TABLE material ADD COLUMN cas_numbers TEXT NOT NULL DEFAULT '';
`;
