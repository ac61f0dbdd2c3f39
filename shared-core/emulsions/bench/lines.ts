import { figureValue, type Figure } from '../../materials/figure';
import type { Material } from '../../materials/material';
import { percentFromPpm, ppmFromPercent } from '../../quantities/share';
import type { Source } from '../../working/working';
import type { Dose } from '../conflicts/charge-bearers';
import { isEmulsifier } from '../conflicts/recognise';
import type { EmulsifierLine } from '../offered-hlb';
import type { OilLine } from '../required-hlb';

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
  return {
    name: material.tradeName,
    mass: percent,
    hlb: figureValue(material.figures.hlb),
    charge: material.charge,
    architecture: material.architecture ?? 'classic',
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

/** An oil-phase line to emulsify: has a required HLB, or is an emollient or oil-phase material, and no emulsifier. */
export function isOil(material: Material): boolean {
  if (isEmulsifier(material)) return false;
  const { requiredHlbOw, requiredHlbWo } = material.figures;
  if (requiredHlbOw || requiredHlbWo) return true;
  return material.functions.includes('emollient') && material.phaseOfUse === 'oil';
}

/** The lowest and highest level of a material, % of the formula; 0 and 100 where its record does not say. */
export function usageOf(material: Material): { minPercent: number; maxPercent: number } {
  return {
    minPercent: percentFromPpm(material.usage?.minPpm ?? 0),
    maxPercent: percentFromPpm(material.usage?.maxPpm ?? 1_000_000),
  };
}
