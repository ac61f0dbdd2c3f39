import { newestOffer } from '../costing/formula-cost';
import { formatPercent, type Region } from '../locale/numbers';
import type { Currency } from '../quantities/money';
import {
  bestUse,
  figureWords,
  inciWords,
  perKgWords,
  storageWords,
  usageWords,
} from '../sheets/material-words';
import { joined, yesNo } from '../sheets/words';
import { FIGURE_KINDS, FIGURE_NAMES } from './figure';
import type { Material } from './material';

/** One property of several materials side by side, in the materials' order; an empty cell is not known. */
export interface ComparisonRow {
  label: string;
  cells: string[];
  /** Whether what is known is not the same for all. */
  differs: boolean;
}

function price(m: Material, region: Region): string {
  const currencies = new Set(m.offers.map((offer) => offer.currency));
  return [...currencies]
    .map((currency: Currency) => newestOffer(m.offers, currency))
    .filter((offer) => offer !== null)
    .map((offer) => perKgWords(offer, region))
    .join(', ');
}

/** What is compared, in the order in which an emulsifier is chosen. */
const PROPERTIES: [label: string, words: (m: Material, region: Region) => string][] = [
  ['INCI', (m) => inciWords(m)],
  ['Best use', (m, region) => bestUse(m, region)],
  ['Charge', (m) => m.charge ?? ''],
  ['Architecture', (m) => m.architecture ?? ''],
  ['Emulsion it serves', (m) => m.emulsionType ?? ''],
  ['Form', (m) => m.form ?? ''],
  ['Consistency when cold', (m) => m.consistency ?? ''],
  ['Body it builds', (m) => m.body ?? ''],
  ['Usual phase', (m) => m.phaseOfUse ?? ''],
  ['Usage', (m, region) => usageWords(m.usage, region)],
  ['Tolerance to electrolyte', (m) => m.electrolyteTolerance ?? ''],
  ['Needs neutralising', (m) => yesNo(m.needsNeutralising)],
  ['Works cold', (m) => yesNo(m.coldProcessable)],
  ['Dissolves in', (m) => joined(m.solubleIn)],
  ['Origin', (m) => [m.origin, m.certifiedOrganic ? 'certified organic' : null].filter(Boolean).join(', ')],
  ['Storage', (m, region) => storageWords(m.storage, region)],
  ['Hazards', (m) => joined(m.hazards)],
  ['Legal limit recorded', (m, region) => (m.legalLimit ? formatPercent(m.legalLimit.ppm, region) : '')],
  ['Price per kg', price],
  ['Appearance', (m) => m.appearance],
];

/** After how many of the properties the figures stand. */
const FIGURES_FOLLOW = PROPERTIES.findIndex(([label]) => label === 'Usage');

/** The rows of a side-by-side comparison; a property that no material has is left out. */
export function comparisonRows(materials: readonly Material[], region: Region): ComparisonRow[] {
  const figures = FIGURE_NAMES.map((kind): (typeof PROPERTIES)[number] => [
    FIGURE_KINDS[kind].label,
    (m, shown) => figureWords(kind, m.figures[kind], shown),
  ]);
  return [...PROPERTIES.slice(0, FIGURES_FOLLOW), ...figures, ...PROPERTIES.slice(FIGURES_FOLLOW)]
    .map(([label, words]) => ({ label, cells: materials.map((m) => words(m, region)) }))
    .filter((row) => row.cells.some((cell) => cell !== ''))
    .map((row) => ({ ...row, differs: new Set(row.cells).size > 1 }));
}
