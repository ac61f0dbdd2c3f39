import { beginsWords } from './begins-words';
import type { Finding } from './finding';

/** A place or a command, and the everyday words by which one looks for it. */
interface Known extends Finding {
  words: string;
}

const bench = (tool: string) => ({ path: '/bench', query: { tool } });

const KNOWN: Known[] = [
  place('Today', '/', 'Alt+1', 'home start first screen dashboard'),
  place('Raw materials', '/materials', 'Alt+2', 'ingredients shelf emulsifiers list filter'),
  place('Emulsion bench', '/bench', 'Alt+3', 'emulsifier system required hlb choose'),
  place('Formulas', '/formulas', 'Alt+4', 'recipes versions products'),
  place('Batches', '/batches', 'Alt+5', 'production lots weighing'),
  place('Calculators', '/calculators', 'Alt+6', 'calculate compute figures'),
  command(
    'Add a raw material',
    { path: '/materials', query: { do: 'add' } },
    'new ingredient create material',
  ),
  command(
    'Take in a table of raw materials',
    { path: '/take-in' },
    'import csv xlsx spreadsheet load read file',
  ),
  command(
    'Take in a table of formulas',
    { path: '/take-in', query: { about: 'formulas' } },
    'import csv xlsx spreadsheet recipes load read file',
  ),
  command(
    'Read a supplier’s data sheet',
    { path: '/data-sheet' },
    'import pdf tds sds specification new raw material',
  ),
  command(
    'Start a formula',
    { path: '/formulas', query: { do: 'start' } },
    'new formula create write recipe',
  ),
  command(
    'Plan a batch',
    { path: '/batches', query: { plan: 'new' } },
    'new batch make scale up production weigh',
  ),
  command(
    'Compare and merge libraries',
    { path: '/library/meet' },
    'import pack sync colleague combine json',
  ),
  command('Find look-alikes', { path: '/library/look-alikes' }, 'duplicates twins same material join'),
  command('Back up now', { path: '/library', query: { do: 'back-up' } }, 'backup save copy safety'),
  tool('Optimise a blend', 'optimise', 'optimize cheapest best lowest cost solver'),
  tool('Plan trials', 'trials', 'new trial series experiment ladder test'),
  tool('HLB of a structure or blend', 'hlb', 'smiles structure molecule griffin davies calculate calculator'),
  tool('HLD', 'hld', 'salinity temperature surfactant deviation eacn cc calculate calculator'),
  calculator('Neutralise an acid', 'neutralise', 'neutralize ph base acid carbomer calculate calculator'),
  calculator(
    'Preservative acids',
    'preserve',
    'preservation undissociated benzoate sorbate ph calculate calculator',
  ),
  calculator(
    'Separation and ageing',
    'screening',
    'stability centrifuge creaming suspension viscosity calculate calculator',
  ),
  calculator(
    'Stability trends',
    'trends',
    'shelf life statistics regression confidence arrhenius activation energy extrapolation calculate calculator',
  ),
  calculator(
    'Balance',
    'weighing',
    'minimum weight readability repeatability scale error calculate calculator',
  ),
  calculator(
    'Net contents',
    'net-contents',
    'prepackages fill weight tolerable error t1 t2 average label sample calculate calculator',
  ),
  calculator(
    'Solubility',
    'solubility',
    'hansen parameters distance dissolve van krevelen fedors groups solvent calculate calculator',
  ),
  calculator(
    'Microbiology',
    'microbiology',
    'challenge test preservation efficacy log reduction count limit cfu calculate calculator',
  ),
  calculator('pH and buffers', 'solutions', 'acid salt ionic strength water activity calculate calculator'),
  tool('Phase inversion', 'phase-inversion', 'pit inversion temperature salt calculate calculator'),
  tool('Viscosity of oils', 'viscosity', 'rheology mixture thickness glycerin calculate calculator'),
  tool(
    'Density and filling',
    'density',
    'specific gravity pycnometer volume fill dilution calculate calculator',
  ),
  place('Substances', '/substances', undefined, 'inci ci cas names synonyms allergens groups law'),
  place(
    'Limits of law',
    '/limits',
    undefined,
    'legal regulation annex maximum restricted prohibited cosmetics',
  ),
  command('Add a substance', { path: '/substances', query: { do: 'add' } }, 'new inci substance create'),
  command('Add a limit of law', { path: '/limits', query: { do: 'add' } }, 'new legal limit create'),
  command(
    'Take in a table of limits',
    { path: '/take-in', query: { about: 'limits' } },
    'csv spreadsheet legal limits read in',
  ),
  place('Compare formulas side by side', '/formulas/compare', undefined, 'comparison difference'),
  place('Compare materials side by side', '/compare', undefined, 'comparison difference'),
  place('Saved searches', '/materials', undefined, 'kept searches filters'),
  place(
    'Versions of formulas',
    { path: '/formulas', query: { status: 'recorded' } },
    undefined,
    'recorded history',
  ),
  place(
    'Archived materials',
    { path: '/materials', query: { status: 'archived' } },
    undefined,
    'archive old put away',
  ),
  place(
    'Archived formulas',
    { path: '/formulas', query: { status: 'archived' } },
    undefined,
    'archive old put away',
  ),
  place('Print sheets of materials', '/materials', undefined, 'printing pdf specification pick'),
  place('Print sheets of formulas', '/formulas', undefined, 'printing pdf formula sheet pick'),
  place('Print a batch record', '/batches', undefined, 'printing pdf weighing sheet'),
  place(
    'Settings',
    '/settings',
    undefined,
    'dark light theme appearance language region currency paper name prefix balance preferences options',
  ),
  place('Using Stillroom', '/help', 'F1', 'help manual keys keyboard shortcuts how to learn'),
  place(
    'Glossary',
    { path: '/help', query: { tool: 'glossary' } },
    undefined,
    'words terms meaning dictionary help class teach hand-out printing',
  ),
  place(
    'Where published figures differ',
    { path: '/help', query: { tool: 'figures' } },
    undefined,
    'trust sources disagree spread help',
  ),
  place('Library and backups', '/library', undefined, 'backup restore folder file open other copy move'),
];

function place(says: string, to: Finding['to'], keys: string | undefined, words: string): Known {
  return { key: says, says, what: 'place', to, words, ...(keys ? { keys } : {}) };
}
function command(says: string, to: Finding['to'], words: string): Known {
  return { key: says, says, what: 'command', to, words };
}
function tool(says: string, key: string, words: string): Known {
  return { key: says, says, what: 'on the bench', to: bench(key), words };
}

function calculator(says: string, key: string, words: string): Known {
  return { key: says, says, what: 'calculator', to: { path: '/calculators', query: { tool: key } }, words };
}

/** What the finder offers before anything is typed: the places of the navigation, and what is begun most. */
export const FIRST_PLACES: readonly Finding[] = KNOWN.slice(0, 10).concat(
  KNOWN.filter(({ says }) => ['Settings', 'Using Stillroom', 'Library and backups'].includes(says)),
);

/** What can be done with the record that is open. */
export function commandsOf(route: string, id: string): Known[] {
  if (route !== 'formula') return [];
  const path = `/formulas/${id}`;
  return [
    command('Record a version of this formula', { path, query: { do: 'record' } }, 'freeze new version save'),
    command('Versions of this formula', { path: `${path}/versions` }, 'history approve withdraw compare'),
    command('Reformulate this formula', { path: `${path}/reformulate` }, 'cheaper without nearest'),
  ];
}

/**
 * The places and commands that typed words mean, those so called before those known by another name.
 *
 * @param here what can be done with the record that is open; it comes first
 */
export function placesFor(typed: string, here: readonly Known[] = []): Finding[] {
  const all = [...here, ...KNOWN];
  const called = all.filter(({ says }) => beginsWords(says, typed));
  const known = all.filter((one) => !called.includes(one) && beginsWords(`${one.says} ${one.words}`, typed));
  return [...called, ...known];
}
