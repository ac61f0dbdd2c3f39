/** A supplier can be on record before a pack's size or price is known. */
export const offersWithoutPriceSchema = `
CREATE TABLE material_offer_next (
  material_id TEXT NOT NULL REFERENCES material (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  supplier TEXT NOT NULL,
  item_code TEXT NOT NULL,
  pack_mg INTEGER CHECK (pack_mg > 0),
  price_minor INTEGER CHECK (price_minor IS NULL OR (price_minor >= 0 AND pack_mg IS NOT NULL)),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  date TEXT NOT NULL,
  PRIMARY KEY (material_id, position)
) STRICT, WITHOUT ROWID;
INSERT INTO material_offer_next SELECT * FROM material_offer;
DROP TABLE material_offer;
ALTER TABLE material_offer_next RENAME TO material_offer;
`;
