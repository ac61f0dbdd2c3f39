import type { Region } from '../locale/numbers';
import type { FigureKind } from '../materials/figure';
import type { Material } from '../materials/material';
import { bestUse } from '../materials/best-use';
import { figureWords, inciWords, usageWords } from '../materials/words';
import { capital, joined, yesNo } from '../locale/words';

/** One property of several materials, side by side. */
export interface ComparisonRow {
  label: string;
  /** One for each material; empty where it is not recorded. */
  values: string[];
  /** Told apart by what is recorded; `open` when nothing differs but not all is recorded. */
  outcome: 'differ' | 'alike' | 'open';
}

type Read = (material: Material, region: Region) => string;

const figure =
  (kind: FigureKind): Read =>
  (material, region) =>
    figureWords(kind, material.figures[kind], region);

const BODY = { none: 'None', some: 'Some', strong: 'Strong' } as const;

const PROPERTIES: [label: string, read: Read][] = [
  ['INCI', (one) => inciWords(one, 8)],
  // Usage has a row of its own.
  ['Best use', (one, region) => bestUse({ ...one, usage: null }, region)],
  ['Charge', (one) => capital(one.charge ?? '')],
  ['Architecture', (one) => capital(one.architecture ?? '')],
  ['Emulsion type', (one) => (one.emulsionType === 'both' ? 'o/w and w/o' : (one.emulsionType ?? ''))],
  ['HLB', figure('hlb')],
  ['Required HLB, o/w', figure('requiredHlbOw')],
  ['Required HLB, w/o', figure('requiredHlbWo')],
  ['Form', (one) => capital(one.form ?? '')],
  ['Consistency when cold', (one) => capital(one.consistency ?? '')],
  ['Appearance', (one) => one.appearance],
  ['Melting or drop point', figure('meltingPoint')],
  ['Body', (one) => (one.body ? BODY[one.body] : '')],
  ['Tolerance to electrolyte', (one) => capital(one.electrolyteTolerance ?? '')],
  ['Needs neutralising', (one) => (one.needsNeutralising ? 'Yes' : '')],
  ['Works at pH', figure('workingPh')],
  ['Cold-processable', (one) => yesNo(one.coldProcessable)],
  ['Usage', (one, region) => usageWords(one.usage, region)],
  ['Origin', (one) => capital(one.origin ?? '')],
  ['Handle with care', (one) => capital(joined(one.hazards))],
];

function outcomeOf(values: readonly string[]): ComparisonRow['outcome'] {
  const recorded = values.filter((value) => value !== '');
  if (new Set(recorded).size > 1) return 'differ';
  return recorded.length === values.length ? 'alike' : 'open';
}

/** The properties of materials side by side, without those recorded of none. */
export function comparisonRows(materials: readonly Material[], region: Region): ComparisonRow[] {
  return PROPERTIES.map(([label, read]) => {
    const values = materials.map((one) => read(one, region));
    return { label, values, outcome: outcomeOf(values) };
  }).filter((row) => row.values.some((value) => value !== ''));
}
