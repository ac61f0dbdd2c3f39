/** The keys that work, and what each does. */
export const KEYS: readonly (readonly [key: string, does: string])[] = [
  ['F1', 'Opens this page'],
  ['Ctrl+K', 'Finds any material, formula, batch, place, command or word'],
  ['Ctrl+P', 'Opens the sheet of what is on the screen, ready to print'],
  ['Ctrl+Z', 'Undoes the last change'],
  ['Ctrl+Shift+Z', 'Redoes it'],
  ['Alt+1 to Alt+6', 'Go to Today, Raw materials, Emulsion bench, Formulas, Batches, Calculators'],
  ['Enter', 'In a formula: goes to the next share'],
  ['Alt+↑, Alt+↓', 'In a formula: move the line'],
  ['Esc', 'Closes what is open'],
];
