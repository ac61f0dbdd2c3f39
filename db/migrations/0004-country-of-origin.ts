/** Where a material comes from, as its supplier declares it. */
export const countryOfOriginSchema = `
ALTER TABLE material ADD COLUMN country_of_origin TEXT NOT NULL DEFAULT '';
`;
