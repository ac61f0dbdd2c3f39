import type { Worked } from '../../working/working';
import { isElectrolyte } from '../conflicts/recognise';
import { CLOSE_PACKING, internalPhase } from '../internal-phase';
import { dispersesInWater, pairingFacts } from '../systems/character';
import { levelAgainstOil, systemKind, usualLevelWorked, type SystemKind } from '../systems/level';
import { targetCautions } from '../systems/oil-phase';
import { WATER_IN_OIL_SALT } from '../systems/water-in-oil-salt';
import { assumedUseCaution, usageRange } from '../usage-range';
import type { BenchType } from './bench-state';
import { dosesOf, type MaterialLine } from './lines';
import { totalPercent } from './shares';
import type { Target } from './target';

interface Bench {
  emulsionType: BenchType;
  oils: readonly MaterialLine[];
  emulsifiers: readonly MaterialLine[];
  rest: readonly MaterialLine[];
  target: Target | null;
}

const levelOf = (lines: readonly MaterialLine[]): number => totalPercent(lines.map((line) => line.percent));

function kindOf(emulsifiers: readonly MaterialLine[], type: BenchType): SystemKind {
  return systemKind(
    emulsifiers.map(({ material }) => pairingFacts(material)),
    type,
  );
}

/** The level that the oil phase usually takes of this kind of system; null without oils or emulsifiers. */
export function usualLevelOf(
  emulsifiers: readonly MaterialLine[],
  oils: readonly MaterialLine[],
  type: BenchType,
): Worked | null {
  const oilPercent = levelOf(oils);
  if (emulsifiers.length === 0 || oilPercent <= 0) return null;
  return usualLevelWorked(kindOf(emulsifiers, type), oilPercent);
}

function levelCautions({ emulsionType, oils, emulsifiers }: Bench): string[] {
  const kind = kindOf(emulsifiers, emulsionType);
  const found = levelAgainstOil(kind, levelOf(emulsifiers), levelOf(oils));
  if (found?.verdict !== 'too little') return [];
  return [
    `${found.parts.toFixed(1)} parts of emulsifier to 100 of oil phase is little for a ${kind} system: the drops are likely to merge.`,
  ];
}

function dispersingCautions({ emulsionType, emulsifiers }: Bench): string[] {
  if (emulsionType === 'w/o') return [];
  const none = emulsifiers.every(({ material }) => dispersesInWater(pairingFacts(material)) === false);
  return none
    ? [
        'None of the emulsifiers disperses in water (HLB 10 or more, or a charge), as an o/w emulsion needs of one at least.',
      ]
    : [];
}

function volumeCautions({ emulsionType, oils, emulsifiers, rest }: Bench): string[] {
  const doses = dosesOf([...oils, ...emulsifiers, ...rest]).filter((dose) => dose.ppm > 0);
  const missing = Math.max(0, 1_000_000 - doses.reduce((sum, dose) => sum + dose.ppm, 0));
  const phase = internalPhase(doses, emulsionType, missing);
  if (!phase || phase.worked.value <= 100 * CLOSE_PACKING) return [];
  return [
    `The internal phase (${phase.inner}) fills ${phase.worked.value.toFixed(0)} % of the volume, more than round drops can (${(100 * CLOSE_PACKING).toFixed(0)} %): it stiffens, and may invert when it is made too fast.`,
  ];
}

/** What the bench has to say beside its figures. A bench without emulsifiers speaks of its target alone. */
export function benchCautions(bench: Bench): string[] {
  const { emulsionType, emulsifiers, rest, target } = bench;
  const said = targetCautions(target?.value ?? null, emulsionType);
  if (emulsifiers.length === 0) return said;
  const assumed = emulsifiers.filter(({ material }) => usageRange(material).maxAssumed);
  const salted = rest.some((line) => line.percent >= 0.5 && isElectrolyte(line.material));
  return [
    ...said,
    ...dispersingCautions(bench),
    ...levelCautions(bench),
    ...volumeCautions(bench),
    ...(emulsionType === 'w/o' && !salted ? [WATER_IN_OIL_SALT] : []),
    ...assumedUseCaution(assumed.map((line) => line.material.tradeName)),
  ];
}
