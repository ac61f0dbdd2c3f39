import type { Dosed } from '../limits/contents';
import { figureValue } from '../materials/figure';
import type { Material } from '../materials/material';
import { percentFromPpm } from '../quantities/share';
import { nameKey } from '../substances/names';
import type { SubstanceIndex } from '../substances/substance-index';
import type { Worked } from '../working/working';
import { naturalOriginContent } from './natural-origin';

/** What is known of the index of a line's material: its ends, and how it is known. */
export interface OriginOfLine {
  lineId: string;
  material: Material;
  percent: number;
  low: number;
  high: number;
  how: 'recorded' | 'water' | 'by its recorded origin' | 'not known';
  formulationWater: boolean;
}

/** The natural origin of a formula, with and without formulation water; two ends where an index is not known. */
export interface NaturalOrigin {
  lines: OriginOfLine[];
  withWater: { low: Worked; high: Worked } | null;
  withoutWater: { low: Worked; high: Worked } | null;
}

/** Of such words alone is the name of water: "Aqua/Water/Eau", "Purified Water". */
const WATER_WORDS =
  /^((purified|deioni[sz]ed|demineralised|distilled) )?(aqua|water|eau)( (aqua|water|eau))*$/;

/** Whether a material is water and nothing else; a juice or a flower water is not. */
export function isWater({ composition }: Material, index: SubstanceIndex | null): boolean {
  if (composition.length === 0) return false;
  return composition.every(({ inci }) => WATER_WORDS.test(nameKey(index?.find(inci)?.name ?? inci)));
}

function indexOf(
  material: Material,
  index: SubstanceIndex | null,
): Pick<OriginOfLine, 'low' | 'high' | 'how' | 'formulationWater'> {
  const figure = material.figures.naturalOriginIndex;
  const water = isWater(material, index);
  if (figure) {
    const value = figureValue(figure) ?? 0;
    return { low: figure.low ?? value, high: figure.high ?? value, how: 'recorded', formulationWater: water };
  }
  if (water) return { low: 1, high: 1, how: 'water', formulationWater: true };
  const known = { how: 'by its recorded origin', formulationWater: false } as const;
  switch (material.origin) {
    case 'natural':
    case 'mineral':
      return { low: 1, high: 1, ...known };
    case 'synthetic':
      return { low: 0, high: 0, ...known };
    case 'naturally derived':
      return { low: 0.5, high: 1, ...known };
    default:
      return { low: 0, high: 1, how: 'not known', formulationWater: false };
  }
}

function content(lines: readonly OriginOfLine[], withWater: boolean): NaturalOrigin['withWater'] {
  const left = lines.filter(({ formulationWater }) => withWater || !formulationWater);
  if (left.reduce((sum, { percent }) => sum + percent, 0) <= 0) return null;
  const at = (end: 'low' | 'high'): Worked =>
    naturalOriginContent(
      lines.map(({ percent, formulationWater, ...ends }) => ({
        percent,
        index: ends[end],
        formulationWater,
      })),
      withWater,
    );
  return { low: at('low'), high: at('high') };
}

/** Natural origin of a formula's lines by the indexes that their materials record. */
export function naturalOriginOf(lines: readonly Dosed[], index: SubstanceIndex | null): NaturalOrigin {
  const known = lines
    .filter(({ ppm }) => ppm > 0)
    .map(({ lineId, material, ppm }) => ({
      lineId,
      material,
      percent: percentFromPpm(ppm),
      ...indexOf(material, index),
    }));
  return { lines: known, withWater: content(known, true), withoutWater: content(known, false) };
}
