import { saltPpm } from '../emulsions/conflicts/salt-load';
import { bringsWater, isEmulsifier, isWaterName } from '../emulsions/conflicts/recognise';
import { isOil } from '../emulsions/systems/oil-phase';
import { dosedLines, type FindMaterial } from '../limits/in-formula';
import type { Dosed } from '../limits/contents';
import type { Material } from '../materials/material';
import { percentFromPpm, WHOLE_PPM } from '../quantities/share';
import { endsOf } from '../substances/names';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';
import type { FormulaContent } from './formula';

/** What a formula is made up of, each with its working, % of the formula. */
export interface CompositionFigures {
  oilPhase: Worked;
  solids: { low: Worked; high: Worked };
  electrolyte: { low: Worked; high: Worked };
}

const BY_SHARES: Source = {
  text: 'sum of shares; what counts: common practice, no source',
  basis: 'common-practice',
};

/** Names of substances that leave when a product dries besides water: alcohols and silicones that boil low. */
const VOLATILE =
  /^(alcohol( denat\.?)?|ethanol|isopropyl alcohol|cyclopentasiloxane|cyclotetrasiloxane|cyclohexasiloxane|disiloxane|isododecane|isohexadecane|acetone|ethyl acetate|butyl acetate)$/i;

interface Part {
  name: string;
  percent: number;
}

function summed(parts: readonly Part[], says: string, cautions: readonly string[] = []): Worked {
  const counted = parts.filter(({ percent }) => percent > 0);
  const result = counted.reduce((sum, { percent }) => sum + percent, 0);
  const step: WorkingStep = {
    says: counted.length > 0 ? `${says}: ${counted.map(({ name }) => name).join(', ')}` : says,
    shows: counted.map(({ percent }) => show(percent)).join(' + '),
    result,
    unit: '%',
  };
  return { value: result, unit: '%', steps: [step], sources: [BY_SHARES], cautions: [...cautions] };
}

/** Whether a line belongs to the oil phase: an oil, or an emulsifier or other material whose usual phase is oil. */
function inOilPhase(material: Material): boolean {
  return isOil(material) || (material.phaseOfUse === 'oil' && !bringsWater(material));
}

const leaves = (name: string): boolean => isWaterName(name) || VOLATILE.test(name);

function volatileShare({ composition }: Material, end: 'least' | 'most'): number {
  const sum = composition.reduce((total, part) => total + endsOf(part, leaves)[end], 0);
  return Math.min(sum, WHOLE_PPM) / WHOLE_PPM;
}

const partsOf = (lines: readonly Dosed[], share: (line: Dosed) => number): Part[] =>
  lines.map((line) => ({ name: line.material.tradeName, percent: percentFromPpm(line.ppm) * share(line) }));

function solidsOf(lines: readonly Dosed[]): CompositionFigures['solids'] {
  const said = 'What is left once water and what boils low have evaporated';
  const caution = [
    'By the names in the compositions. Perfumes and humectants leave or keep some too: weigh a dried sample.',
  ];
  const at = (end: 'least' | 'most'): Worked =>
    summed(
      partsOf(lines, ({ material }) => 1 - volatileShare(material, end === 'least' ? 'most' : 'least')),
      said,
      caution,
    );
  return { low: at('least'), high: at('most') };
}

/** Oil phase, solids and electrolyte of a formula, from its lines and their materials' compositions. */
export function compositionFigures(
  content: Pick<FormulaContent, 'phases'>,
  find: FindMaterial,
): CompositionFigures {
  const lines = dosedLines(content, find).filter(({ ppm }) => ppm > 0);
  const oils = lines.filter(({ material }) => inOilPhase(material));
  const emulsifiers = oils.filter(({ material }) => isEmulsifier(material));
  const salts = (end: 'least' | 'most'): Worked =>
    summed(
      lines.map((line) => ({ name: line.material.tradeName, percent: percentFromPpm(saltPpm(line, end)) })),
      'Salts of the compositions',
    );
  return {
    oilPhase: summed(
      partsOf(oils, () => 1),
      'Oils, waxes and what else is used in the oil phase',
      emulsifiers.length > 0
        ? [
            `Emulsifiers of the oil phase are counted: ${emulsifiers.map(({ material }) => material.tradeName).join(', ')}.`,
          ]
        : [],
    ),
    solids: solidsOf(lines),
    electrolyte: { low: salts('least'), high: salts('most') },
  };
}
