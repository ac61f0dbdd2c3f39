import { oneStep } from '../../working/one-step';
import { show } from '../../working/show';
import { COMMON_PRACTICE, type Worked } from '../../working/working';
import { isClassicNonIonic, type PairingFacts } from './character';

/** Kinds of system that take emulsifier at levels of their own. */
export type SystemKind = 'non-ionic o/w' | 'ionic o/w' | 'cationic o/w' | 'polymeric o/w' | 'w/o';

/** How much emulsifier goes with how much oil. */
interface OilRelation {
  /** Parts of emulsifier that 100 parts of oil phase usually take. */
  usual: number;
  /** Below this the film is likely to be too thin; zero where something else than the oil sets the level. */
  least: number;
  /** Above this it is likely to be more than the oil needs; null where something else sets the level. */
  most: number | null;
  /** The least worth weighing into a formula of little oil, % of the formula. */
  floorPercent: number;
}

/** One part of emulsifier to five of oil, less where charges help, far less for polymers. Common practice, no source. */
export const OIL_RELATIONS: Readonly<Record<SystemKind, OilRelation>> = {
  'non-ionic o/w': { usual: 20, least: 8, most: 60, floorPercent: 1 },
  'ionic o/w': { usual: 15, least: 5, most: 60, floorPercent: 1 },
  // What the hair is to feel of the cationic sets its level, not the oil.
  'cationic o/w': { usual: 25, least: 0, most: null, floorPercent: 2 },
  'polymeric o/w': { usual: 3, least: 0.5, most: null, floorPercent: 0.2 },
  'w/o': { usual: 20, least: 8, most: 60, floorPercent: 2.5 },
};

/** The kind that a set of emulsifiers makes for a type of emulsion. */
export function systemKind(
  members: readonly Pick<PairingFacts, 'charge' | 'architecture'>[],
  type: 'o/w' | 'w/o' | 'cationic o/w',
): SystemKind {
  if (type === 'w/o') return 'w/o';
  const classic = members.filter((member) => (member.architecture ?? 'classic') === 'classic');
  if (members.length > 0 && classic.length === 0) return 'polymeric o/w';
  if (classic.some((member) => member.charge === 'cationic')) return 'cationic o/w';
  const ionic = classic.some((member) => !isClassicNonIonic(member) && member.charge !== null);
  return ionic ? 'ionic o/w' : 'non-ionic o/w';
}

/** The level that an oil phase usually takes, % of the formula. @param oilPercent oil phase, % of the formula */
export function usualLevel(kind: SystemKind, oilPercent: number): number {
  const { usual, floorPercent } = OIL_RELATIONS[kind];
  return Math.max(floorPercent, (usual * oilPercent) / 100);
}

/** The usual level with its working. */
export function usualLevelWorked(kind: SystemKind, oilPercent: number): Worked {
  const { usual, floorPercent } = OIL_RELATIONS[kind];
  const step = {
    says: `emulsifier that this much oil usually takes: ${show(usual)} parts to 100 of oil phase (${kind}), ${show(floorPercent)} % of the formula at least`,
    shows: `max(${show(floorPercent)}; ${show(oilPercent)} × ${show(usual)} / 100)`,
    result: usualLevel(kind, oilPercent),
    unit: '% of the formula',
  };
  return oneStep(step, [COMMON_PRACTICE], ['A start for a series of levels, not a measure of stability.']);
}

/** How a level stands to the oil: parts to 100 of oil, and whether that is too little or much; null without oil. */
export function levelAgainstOil(
  kind: SystemKind,
  levelPercent: number,
  oilPercent: number,
): { parts: number; verdict: 'too little' | 'enough' | 'much' } | null {
  if (!(oilPercent > 0)) return null;
  const { least, most } = OIL_RELATIONS[kind];
  const parts = (100 * levelPercent) / oilPercent;
  if (parts < least - 1e-9) return { parts, verdict: 'too little' };
  return { parts, verdict: most !== null && parts > most + 1e-9 ? 'much' : 'enough' };
}
