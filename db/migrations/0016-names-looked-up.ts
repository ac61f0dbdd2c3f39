/** Names are looked up in whichever case: without these, each edit of a composition would read every material. */
export const namesLookedUpSchema = `
CREATE INDEX material_trade_name ON material (trade_name COLLATE NOCASE);
CREATE INDEX material_inci_inci ON material_inci (inci COLLATE NOCASE);
CREATE INDEX substance_name ON substance (name COLLATE NOCASE);
`;
