import type { FigureKind } from '../materials/figure';
import type { TermKey } from './glossary';

/** The word of the glossary that explains a figure of materials. */
export const FIGURE_TERMS: Readonly<Partial<Record<FigureKind, TermKey>>> = {
  hlb: 'hlb',
  requiredHlbOw: 'required-hlb',
  requiredHlbWo: 'required-hlb',
  eacn: 'eacn',
  cc: 'cc',
  oxyethylenePercent: 'ethoxylate',
  cloudPoint: 'cloud-point',
  meltingPoint: 'drop-point',
  phAsSupplied: 'ph',
  workingPh: 'ph',
  acidValue: 'acid-value',
  saponificationValue: 'saponification-value',
  pKa: 'pka',
  molarMass: 'molar-mass',
  activePercent: 'active-matter',
};
