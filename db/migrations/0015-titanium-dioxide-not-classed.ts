/**
 * Titanium dioxide as the examples gave it loses its class as a powder breathed in, which was annulled
 * (shared-core/substances/classes). What a maker has changed since stays as it is.
 */
export const titaniumDioxideNotClassedSchema = `
UPDATE substance SET cmr_class = NULL
WHERE name IN ('Titanium Dioxide', 'CI 77891') AND cmr_class = '2, as a powder breathed in' AND revision = 1;
`;
