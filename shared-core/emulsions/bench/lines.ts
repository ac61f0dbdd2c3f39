import type { Figure } from '../../materials/figure';
import type { Material } from '../../materials/material';
import { ppmFromPercent } from '../../quantities/share';
import type { Source } from '../../working/working';
import type { Dose } from '../conflicts/charge-bearers';
import type { EmulsifierLine } from '../offered-hlb';
import type { OilLine } from '../required-hlb';
import { hlbOf, hlbSpread, workingArchitecture, workingCharge } from '../systems/character';

/** A raw material at its level, % of the formula. */
export interface MaterialLine {
  material: Material;
  percent: number;
}

/** Where a material's figure comes from, as its record says. */
export function figureSource(figure: Figure): Source {
  return { text: figure.source || `${figure.provenance}, as entered`, basis: 'library' };
}

/** An oil with its required HLB for the type of emulsion, as its record has it. */
export function oilLine({ material, percent }: MaterialLine, type: 'o/w' | 'w/o'): OilLine {
  const figure = material.figures[type === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'];
  return {
    name: material.tradeName,
    mass: percent,
    value: figure?.value ?? null,
    low: figure?.low ?? null,
    high: figure?.high ?? null,
    source: figure ? figureSource(figure) : null,
  };
}

/** An emulsifier as the mean of offered HLB takes it. */
export function emulsifierLine({ material, percent }: MaterialLine): EmulsifierLine {
  const spread = hlbSpread(material);
  return {
    name: material.tradeName,
    mass: percent,
    hlb: hlbOf(material),
    hlbLow: spread?.low ?? null,
    hlbHigh: spread?.high ?? null,
    onlyRange: material.figures.hlb !== undefined && material.figures.hlb.value === null,
    charge: workingCharge(material),
    architecture: workingArchitecture(material) ?? 'classic',
  };
}

/** Lines as the charge rules take them; `lineId` is the material's id. */
export function dosesOf(lines: readonly MaterialLine[]): Dose[] {
  return lines.map(({ material, percent }) => ({
    lineId: material.id,
    material,
    ppm: ppmFromPercent(percent),
  }));
}
