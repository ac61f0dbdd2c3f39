import { offeredBand, type EmulsifierSystem, type MemberFacts, type SystemMember } from './system';
import { systemKind, usualLevel } from './level';
import { USUAL_FATTY_ALCOHOL, type Wish } from './wish';

/** The ionic's share of a mixed system, and the cationic's of a conditioner. Common practice, no source. */
export const IONIC_SHARE = 0.3;
export const CATIONIC_SHARE = 0.6;
/** Highest total level, as a multiple of what the oil usually takes. Common practice, no source. */
const MOST_OF_USUAL = 1.5;
/** A non-ionic alone carries o/w from this HLB on (Griffin: o/w 8 to 18). */
const LEAST_OW_HLB = 8;
/** A single non-ionic must lie this near to the required HLB; a pair computes its ratio instead. */
const SINGLE_WITHIN = 2.5;

/** Shares of non-ionics among themselves, so that their mean meets the target; null when out of reach. */
function nonIonicShares(members: readonly MemberFacts[], wish: Wish): number[] | null {
  const target = wish.required.value;
  const [first, second] = members;
  if (!first) return [];
  if (!second) {
    if (first.hlb === null || !first.described || wish.emulsionType === 'w/o') return [1];
    if (target === null) return first.hlb >= LEAST_OW_HLB ? [1] : null;
    return Math.abs(first.hlb - target) <= SINGLE_WITHIN ? [1] : null;
  }
  // Partners of a w/o emulsion lie close in HLB: where they do not straddle the target, halves (common practice).
  const halves = wish.emulsionType === 'w/o' ? [0.5, 0.5] : null;
  if (target === null || first.hlb === null || second.hlb === null || first.hlb === second.hlb) return halves;
  const share = (target - second.hlb) / (first.hlb - second.hlb);
  return share > 0 && share < 1 ? [share, 1 - share] : halves;
}

/** Beside an ionic a single non-ionic is not held to the required HLB, which the mean does not describe there. */
function shares(members: readonly MemberFacts[], wish: Wish): number[] | null {
  const ionic = members.filter((member) => member.charge !== 'non-ionic' || member.polymeric);
  const nonIonic = members.filter((member) => !ionic.includes(member));
  if (nonIonic.length === 0) return ionic.map(() => 1 / ionic.length);
  const among = ionic.length > 0 && nonIonic.length === 1 ? [1] : nonIonicShares(nonIonic, wish);
  if (!among) return null;
  if (ionic.length === 0) return among;
  const cationic = ionic.some((member) => member.charge === 'cationic');
  const charged = cationic ? CATIONIC_SHARE : IONIC_SHARE;
  return members.map((member) => {
    const place = nonIonic.indexOf(member);
    return place < 0 ? charged / ionic.length : (1 - charged) * (among[place] ?? 0);
  });
}

/**
 * The level at which every member stays within its usage range, as near to the usual one as it can be; null when there
 * is none, or only one far above the usual that nobody asked for.
 */
function levelFor(members: readonly MemberFacts[], parts: readonly number[], wish: Wish): number | null {
  const usual = usualLevel(systemKind(members, wish.emulsionType), wish.oilPercent);
  const from = members.map((member, i) => member.leastPercent / (parts[i] ?? 1));
  const to = members.map((member, i) => member.mostPercent / (parts[i] ?? 1));
  const least = Math.max(wish.levelFrom ?? 0, ...from);
  const most = Math.min(wish.levelTo ?? 100, ...to);
  if (least > most || most <= 0) return null;
  if (least > Math.max(MOST_OF_USUAL * usual, wish.levelFrom ?? 0)) return null;
  return Math.min(Math.max(usual, least), most);
}

/** Less fatty alcohol than this, in % of the formula, is not worth a material more. Common practice, no source. */
const LEAST_ALCOHOL = 0.5;

/** The fatty alcohol that the feel usually takes beyond what the oils bring, within its usage range; null when none. */
export function withBody(alcohol: MemberFacts | null, wish: Wish): SystemMember | null {
  const usual = USUAL_FATTY_ALCOHOL[wish.feel] - wish.alcoholInOils;
  if (!alcohol || usual < LEAST_ALCOHOL) return null;
  return { facts: alcohol, percent: Math.min(Math.max(usual, alcohol.leastPercent), alcohol.mostPercent) };
}

/**
 * A system of these emulsifiers for a wish, with its ratio and level; null when no ratio reaches the required HLB or no
 * level keeps every usage range.
 *
 * @param body the fatty alcohol added for body; `wish` then holds it among its oils
 */
export function buildSystem(
  members: readonly MemberFacts[],
  body: SystemMember | null,
  wish: Wish,
): EmulsifierSystem | null {
  const parts = shares(members, wish);
  if (!parts) return null;
  const levelPercent = levelFor(members, parts, wish);
  if (levelPercent === null) return null;
  const emulsifiers = members.map((facts, i) => ({ facts, percent: levelPercent * (parts[i] ?? 0) }));
  return { emulsifiers, fattyAlcohol: body, levelPercent, offered: offeredBand(emulsifiers) };
}
