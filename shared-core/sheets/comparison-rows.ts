import type { Region } from '../locale/numbers';
import type { FigureKind } from '../materials/figure';
import type { Material } from '../materials/material';
import { bestUse, figureWords, inciWords, usageWords } from './material-words';
import { capital, joined, yesNo } from './words';

/** One property of several materials, side by side. */
export interface ComparisonRow {
  label: string;
  /** One for each material; empty where it is not recorded. */
  values: string[];
  /** True when the recorded values are not all the same. */
  differs: boolean;
}

type Read = (material: Material, region: Region) => string;

const figure =
  (kind: FigureKind): Read =>
  (material, region) =>
    figureWords(kind, material.figures[kind], region);

const BODY = { none: 'None', some: 'Some', strong: 'Strong' } as const;

const PROPERTIES: [label: string, read: Read][] = [
  ['INCI', inciWords],
  ['Best use', bestUse],
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

/** The properties of materials side by side, without those recorded of none. */
export function comparisonRows(materials: readonly Material[], region: Region): ComparisonRow[] {
  return PROPERTIES.map(([label, read]) => {
    const values = materials.map((one) => read(one, region));
    return { label, values, differs: new Set(values).size > 1 };
  }).filter((row) => row.values.some((value) => value !== ''));
}
