/** Keys, pressed together, and what they do. */
export interface KeyHelp {
  keys: readonly string[];
  does: string;
}

interface KeyGroup {
  title: string;
  /** The routes on which they work; everywhere when left out. */
  routes?: readonly string[];
  keys: readonly KeyHelp[];
}

const LISTS = [
  ...['materials', 'material', 'formulas', 'batches'],
  ...['substances', 'substance', 'limits', 'limit'],
];

/** The keys that work, screen by screen. */
const GROUPS: readonly KeyGroup[] = [
  {
    title: 'In the formula',
    routes: ['formula'],
    keys: [
      { keys: ['Enter'], does: 'To the next share; at the end of a phase, to a new line' },
      { keys: ['↑', '↓'], does: 'To the share above or below' },
      { keys: ['Alt', '↑ ↓'], does: 'Move the line up or down, also into the next phase' },
      { keys: ['Ctrl', 'Z'], does: 'Undo' },
      { keys: ['Ctrl', 'Shift', 'Z'], does: 'Redo' },
      { keys: ['Ctrl', 'V'], does: 'In “Add a material”: paste lines from a spreadsheet' },
    ],
  },
  {
    title: 'In the list',
    routes: LISTS,
    keys: [
      { keys: ['/'], does: 'To the search' },
      { keys: ['↓'], does: 'From the search into the list' },
      { keys: ['↑', '↓'], does: 'From row to row; Page Up, Page Down, Home and End go further' },
      { keys: ['→'], does: 'Into what the row holds, ← back' },
      { keys: ['Enter'], does: 'Open' },
      { keys: ['Space'], does: 'Tick, for what is done with several' },
    ],
  },
  {
    title: 'On this screen',
    routes: ['material', 'substance', 'limit'],
    keys: [
      { keys: ['E'], does: 'Edit what is open; Esc goes back to reading' },
      { keys: ['Ctrl', 'Z'], does: 'Undo' },
      { keys: ['Ctrl', 'Shift', 'Z'], does: 'Redo' },
    ],
  },
  {
    title: 'On this screen',
    routes: ['settings'],
    keys: [
      { keys: ['Ctrl', 'Z'], does: 'Undo' },
      { keys: ['Ctrl', 'Shift', 'Z'], does: 'Redo' },
    ],
  },
  {
    title: 'Everywhere',
    keys: [
      { keys: ['Ctrl', 'K'], does: 'Find anything, and do anything' },
      {
        keys: ['Alt', '1 … 6'],
        does: 'To Today, Raw materials, Emulsion bench, Formulas, Batches, Calculators',
      },
      { keys: ['Esc'], does: 'Leave what is open' },
      { keys: ['?'], does: 'Show these keys' },
    ],
  },
];

/** The groups of keys that work on a screen, its own first. */
export function keysOn(route: string): KeyGroup[] {
  return GROUPS.filter(({ routes }) => !routes || routes.includes(route));
}
