import { assumedUseCaution } from '../usage-range';
import { targetCautions } from './oil-phase';
import type { MemberFacts } from './system';
import { WATER_IN_OIL_SALT } from './water-in-oil-salt';
import type { Wish } from './wish';

/** Said when no non-ionic of the library lies as high, or as low, as what is required. */
function outOfReach({ required, emulsionType }: Wish, members: readonly MemberFacts[]): string[] {
  const described = members.filter((member) => member.described && member.hlb !== null);
  const target = required.value;
  if (target === null || described.length === 0 || emulsionType === 'w/o') return [];
  const by = (better: (hlb: number, than: number) => boolean): MemberFacts =>
    described.reduce((best, one) => (better(one.hlb ?? 0, best.hlb ?? 0) ? one : best));
  const lowest = by((hlb, than) => hlb < than);
  const highest = by((hlb, than) => hlb > than);
  const nearest = target > (highest.hlb ?? 40) ? highest : target < (lowest.hlb ?? 0) ? lowest : undefined;
  if (!nearest) return [];
  const name = nearest.material.tradeName;
  return [
    `No non-ionic of the library reaches HLB ${target.toFixed(1)}: the nearest is ${name} with ${nearest.hlb?.toFixed(1)}. What is proposed rests on emulsifiers that a mean HLB does not describe.`,
  ];
}

/** What must be said beside a ranking. @param assumed names of those proposed whose highest use is not recorded */
export function rankingCautions(
  wish: Wish,
  members: readonly MemberFacts[],
  assumed: readonly string[],
): string[] {
  const { required, oils } = wish;
  const cautions = [
    ...outOfReach(wish, members),
    ...targetCautions(required.value, wish.emulsionType),
    ...(wish.emulsionType === 'w/o' ? [WATER_IN_OIL_SALT] : []),
    'Ranked by rules and figures, not by trial: make a series of ±1 HLB in steps of 0.5 of the first ones.',
    ...assumedUseCaution(assumed),
  ];
  if (required.value === null) {
    cautions.push(
      'None of the oils has a required HLB: non-ionic pairs, whose ratio follows from it, are left out.',
    );
  } else if (required.unknown.length > 0) {
    const share = Math.round(required.covered * 100);
    cautions.push(
      `${required.unknown.length} of ${oils.length} oils have no required HLB (${required.unknown.join(', ')}); ${share} % of the oil phase is covered.`,
    );
  }
  return cautions;
}
