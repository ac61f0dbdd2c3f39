/** The parts of a material's form and sheet, in their order. */
export const MATERIAL_SECTIONS = {
  identity: 'What it is',
  composition: 'Composition',
  behaviour: 'How it behaves',
  usage: 'Usage',
  storage: 'Storage',
  figures: 'Figures',
  supply: 'Suppliers and prices',
  safety: 'Safety and limits',
  documents: 'Documents and photo',
} as const;
