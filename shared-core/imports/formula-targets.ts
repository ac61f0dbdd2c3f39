import { PRODUCT_TYPES, USES } from '../formulas/formula';
import type { Target } from './target';

const line = (max: number) => ({ kind: 'line' as const, max });

/** What a column of a table of formulas can fill: of the formula itself, or of the line that its row is. */
export const FORMULA_TARGETS: readonly Target[] = [
  { key: 'formula.name', label: 'Formula', reading: line(200) },
  { key: 'formula.code', label: 'Code of the formula', reading: line(40) },
  {
    key: 'formula.productType',
    label: 'Product type',
    reading: { kind: 'word', words: PRODUCT_TYPES, empty: null },
  },
  { key: 'formula.use', label: 'Use', reading: { kind: 'word', words: USES, empty: null } },
  { key: 'formula.purpose', label: 'Purpose', reading: line(500) },
  { key: 'line.phase', label: 'Phase', reading: line(80) },
  { key: 'line.code', label: 'Code of the material', reading: line(40) },
  { key: 'line.material', label: 'Material', reading: line(200) },
  { key: 'line.inci', label: 'INCI name', reading: line(300) },
  { key: 'line.amount', label: 'Share', reading: { kind: 'amount' } },
  { key: 'line.note', label: 'Note on the line', reading: line(300) },
];

/** What columns of formulas are called in makers' spreadsheets. From memory; common practice, no source. */
export const FORMULA_HEADINGS: Readonly<Record<string, string>> = {
  'formula.name': `formula, formula name, formulation, product, product name, recipe, rezeptur, formel, rezept,
    produkt, formule, nom de la formule, formula nombre, nombre de la formula, formulacion, receta`,
  'formula.code': `formula code, formula no, formula number, code, rezeptur nr, rezepturnummer, code formule, codigo`,
  'formula.productType': `type, product type, produktart, type de produit, tipo de producto`,
  'formula.use': `use, anwendung, utilisation, uso`,
  'formula.purpose': `purpose, zweck, but, proposito`,
  'line.phase': `phase, phases, fase, ph`,
  'line.code': `material code, raw material code, item, item code, article, artikel nr, artikelnummer, rohstoff nr,
    code matiere, codigo materia`,
  'line.material': `material, raw material, ingredient, trade name, name, rohstoff, rohstoffe, handelsname, inhaltsstoff,
    bezeichnung, matiere premiere, ingredient commercial, nom commercial, materia prima, ingrediente, nombre comercial`,
  'line.inci': `inci, inci name, inci bezeichnung, nom inci, nombre inci`,
  'line.amount': `share, w w, amount, quantity, percent, per cent, concentration, dosage, anteil, menge, gehalt, gew,
    einwaage, pourcentage, quantite, teneur, porcentaje, cantidad, contenido`,
  'line.note': `note, notes, remark, remarks, function, bemerkung, funktion, remarque, fonction, nota, observaciones, funcion`,
};
