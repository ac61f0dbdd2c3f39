import { climateOutlook, type ClimateOutlook } from '../climate/climate';
import { chargeConflicts, type ChargeConflict } from '../conflicts/charge-conflicts';
import { offeredHlb, type OfferedHlb } from '../offered-hlb';
import { requiredHlb, type RequiredHlb } from '../required-hlb';
import type { Worked } from '../../working/working';
import { isOil } from '../systems/oil-phase';
import { benchCautions, usualLevelOf } from './bench-cautions';
import { demandType, type BenchType } from './bench-state';
import { dosesOf, emulsifierLine, oilLine, type MaterialLine } from './lines';
import { outcome, type Outcome } from './outcome';
import { pairRatio, type PairRatio } from './pair-ratio';
import { refuseBeyondWhole, refuseOverfull, sharesOf, totalPercent } from './shares';
import { targetOf, verdictOn, type Target, type Verdict } from './target';

export interface BenchInput {
  emulsionType: BenchType;
  oils: readonly MaterialLine[];
  emulsifiers: readonly MaterialLine[];
  /** The other lines of the formula, which charges must get on with. */
  rest: readonly MaterialLine[];
  /** Set by hand; null takes the required HLB. */
  targetHlb: number | null;
}

/** All that the bench says of an oil phase and the emulsifiers chosen for it. */
export interface BenchReading {
  required: Outcome<RequiredHlb>;
  target: Target | null;
  offered: Outcome<OfferedHlb>;
  verdict: Verdict | null;
  pair: Outcome<PairRatio> | null;
  /** All emulsifiers, % of the formula. */
  totalPercent: number;
  /** Each one's share of the emulsifiers, 0 to 100 %, in their order. */
  shares: number[];
  /** Pairs in which an emulsifier of the bench takes part. */
  conflicts: ChargeConflict[];
  /** Those that form an insoluble salt: the system is refused. */
  blocking: ChargeConflict[];
  climate: ClimateOutlook;
  /** What this much oil usually takes of this kind of system, with its working; null without oils or emulsifiers. */
  usualLevel: Worked | null;
  /** What must be said beside the figures: a target that HLB serves badly, a thin level, assumed ranges, salt, volume. */
  cautions: string[];
}

/** Whether a conflict forbids using the system: an insoluble salt is no emulsifier. */
export function forbids(conflict: ChargeConflict): boolean {
  return conflict.severity === 'forms a salt';
}

function conflictsOf({ oils, emulsifiers, rest }: BenchInput): ChargeConflict[] {
  const own = new Set(emulsifiers.map((line) => line.material.id));
  const all = dosesOf([...emulsifiers, ...oils, ...rest]);
  return chargeConflicts(all).filter(
    ({ first, second }) => own.has(first.materialId) || own.has(second.materialId),
  );
}

const levelsOf = (lines: readonly MaterialLine[]): number[] => lines.map((line) => line.percent);

function offeredOf({ oils, emulsifiers }: BenchInput): OfferedHlb {
  refuseOverfull(levelsOf(emulsifiers));
  refuseBeyondWhole('Oils and emulsifiers together come', levelsOf([...oils, ...emulsifiers]), 'emulsifiers');
  return offeredHlb(emulsifiers.map(emulsifierLine));
}

function requiredOf(oils: readonly MaterialLine[], type: 'o/w' | 'w/o'): RequiredHlb {
  refuseBeyondWhole('The oils come', levelsOf(oils), 'oils');
  return requiredHlb(
    oils.map((oil) => oilLine(oil, type)),
    type,
  );
}

/** A fatty alcohol put on the bench for body has to be emulsified: it is counted among the oils, as the checks do. */
function sides({ oils, emulsifiers }: BenchInput): { oils: MaterialLine[]; emulsifiers: MaterialLine[] } {
  return {
    oils: [...oils, ...emulsifiers.filter((line) => isOil(line.material))],
    emulsifiers: emulsifiers.filter((line) => !isOil(line.material)),
  };
}

/** Reads the bench: pure and quick, so that every drag of a share can have its answer. */
export function readBench(input: BenchInput): BenchReading {
  const { emulsionType, rest, targetHlb } = input;
  const levels = levelsOf(input.emulsifiers);
  const { oils, emulsifiers } = sides(input);
  const required = outcome(() => requiredOf(oils, demandType(emulsionType)));
  const offered = outcome(() => offeredOf({ ...input, oils, emulsifiers }));
  const target = targetOf(targetHlb, required);
  const conflicts = conflictsOf(input);
  const overfull = totalPercent(levelsOf([...oils, ...emulsifiers])) > 100;
  return {
    required,
    target,
    offered,
    verdict: offered.ok ? verdictOn(target, offered.value, emulsionType) : null,
    // Levels that do not fit have no ratio to set.
    pair: overfull ? null : pairRatio(emulsifiers, target),
    totalPercent: totalPercent(levels),
    shares: sharesOf(levels),
    conflicts,
    blocking: conflicts.filter(forbids),
    climate: climateOutlook(dosesOf([...emulsifiers, ...oils, ...rest])),
    usualLevel: overfull ? null : usualLevelOf(emulsifiers, oils, emulsionType),
    cautions: overfull ? [] : benchCautions({ emulsionType, oils, emulsifiers, rest, target }),
  };
}
