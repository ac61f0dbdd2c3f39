import type { Material } from '../../materials/material';
import { Problem } from '../../problems/problem';
import type { Source } from '../../working/working';
import { isEmulsifier } from '../conflicts/recognise';
import { buildSystem } from './build-system';
import { combinations } from './combine';
import { judgeSystem, type Reason, type RuleWeights } from './judge-system';
import { oilPhaseDemand, type OilLine, type OilPhaseDemand } from './oil-phase';
import {
  bodyExpected,
  isFattyAlcohol,
  memberFacts,
  membersOf,
  systemCost,
  type EmulsifierSystem,
  type MemberFacts,
} from './system';
import { systemWish, type SystemWishInput, type Wish } from './wish';

export interface RankedLine {
  materialId: string;
  name: string;
  role: 'emulsifier' | 'co-emulsifier';
  /** % of the formula. */
  percent: number;
  /** % of the system. */
  ratioPercent: number;
}

export interface RankedSystem {
  lines: RankedLine[];
  levelPercent: number;
  offeredHlb: number | null;
  /** Minor units added to a kg of product; null when a price is missing. */
  costPerKg: number | null;
  body: 'none' | 'some' | 'strong';
  score: number;
  reasons: Reason[];
}

/** A system that a rule refused, kept so that the refusal can be explained. */
export interface RefusedSystem {
  names: string[];
  ruleId: string;
  why: string;
  source: Source;
}

export interface Ranking {
  systems: RankedSystem[];
  refused: RefusedSystem[];
  required: OilPhaseDemand;
  cautions: string[];
}

export interface RankInput {
  wish: SystemWishInput;
  oils: readonly OilLine[];
  /** The library; what is no emulsifier or fatty alcohol, or is archived, is passed over. */
  materials: readonly Material[];
  /** Weights by rule id, each ≥ 0; the others keep their own. */
  weights?: RuleWeights;
  /** Set by hand in place of the oils' required HLB. */
  targetHlb?: number | null;
  /** How many systems to give. */
  limit?: number;
}

const MOST_REFUSED = 12;

function problem(title: string, advice: string): Problem {
  return new Problem({ code: 'invalid-input', title, advice });
}

/** A target by hand counts as known to half a unit either way, the step of a trial series (common practice). */
function byHand(target: number): OilPhaseDemand {
  return { value: target, low: Math.max(0, target - 0.5), high: target + 0.5, covered: 1, unknown: [] };
}

function checked({ wish, oils, materials, weights, targetHlb }: RankInput): Wish {
  const parsed = systemWish.safeParse(wish);
  if (!parsed.success)
    throw problem(parsed.error.issues[0]?.message ?? 'The wish cannot be read.', 'Correct it.');
  if (oils.length === 0) throw problem('There are no oils to emulsify.', 'Add oils to the oil phase first.');
  if (oils.some((oil) => !(oil.mass >= 0)) || oils.every((oil) => oil.mass === 0)) {
    throw problem('The oils need amounts above zero.', 'Give each oil its mass or share.');
  }
  if (Object.values(weights ?? {}).some((weight) => !(weight >= 0 && weight <= 100))) {
    throw problem('A rule’s weight must lie between 0 and 100.', 'Correct the weight.');
  }
  if (!materials.some(isEmulsifier)) {
    throw problem(
      'The library holds no emulsifiers.',
      'Add some, or mark them with the function “emulsifier”.',
    );
  }
  const type = wish.emulsionType === 'w/o' ? 'w/o' : 'o/w';
  if (typeof targetHlb === 'number' && !(targetHlb >= 0 && targetHlb <= 40))
    throw problem('The target HLB must lie between 0 and 40.', 'Correct it, or leave it empty.');
  const { levelFrom, levelTo } = parsed.data;
  if (levelFrom !== null && levelTo !== null && levelFrom > levelTo)
    throw problem('The lowest total level is above the highest.', 'Swap the two, or leave one empty.');
  const required = typeof targetHlb === 'number' ? byHand(targetHlb) : oilPhaseDemand(oils, type);
  const alcoholInOils = oils.reduce(
    (sum, { material, mass }) => sum + (isFattyAlcohol(material) ? mass : 0),
    0,
  );
  return { ...parsed.data, oils, alcoholInOils, required, usualCostPerKg: null };
}

function medianCost(members: readonly MemberFacts[]): number | null {
  const prices = members.flatMap((member) => (member.costPerKg === null ? [] : [member.costPerKg]));
  return prices.sort((a, b) => a - b)[Math.floor(prices.length / 2)] ?? null;
}

/** The fatty alcohols worth adding: the cheapest mixed one, else the cheapest. Cetearyl aged best (Eccleston 1982). */
function bestAlcohol(members: readonly MemberFacts[]): MemberFacts | null {
  const cetearyl = ({ material }: MemberFacts): number =>
    material.composition.some((part) => /^cetearyl/i.test(part.inci)) ? 0 : 1;
  const sorted = [...members].sort(
    (a, b) =>
      cetearyl(a) - cetearyl(b) ||
      (a.costPerKg ?? Infinity) - (b.costPerKg ?? Infinity) ||
      a.material.id.localeCompare(b.material.id, 'en'),
  );
  return sorted[0] ?? null;
}

function shown(system: EmulsifierSystem, wish: Wish, score: number, reasons: Reason[]): RankedSystem {
  const members = membersOf(system);
  const whole = members.reduce((sum, member) => sum + member.percent, 0);
  return {
    lines: members.map((member) => ({
      materialId: member.facts.material.id,
      name: member.facts.material.tradeName,
      role: member === system.fattyAlcohol ? 'co-emulsifier' : 'emulsifier',
      percent: member.percent,
      ratioPercent: (100 * member.percent) / whole,
    })),
    levelPercent: system.levelPercent,
    offeredHlb: system.offeredHlb,
    costPerKg: systemCost(system),
    body: bodyExpected(system, wish),
    score,
    reasons,
  };
}

/** Said when no non-ionic of the library lies as high, or as low, as what is required. */
function outOfReach({ required, emulsionType }: Wish, members: readonly MemberFacts[]): string[] {
  const described = members.filter((member) => member.described && member.hlb !== null);
  const target = required.value;
  if (target === null || described.length === 0 || emulsionType === 'w/o') return [];
  const sorted = described.sort((a, b) => (a.hlb ?? 0) - (b.hlb ?? 0));
  const lowest = sorted[0];
  const highest = sorted.at(-1);
  const nearest = target > (highest?.hlb ?? 40) ? highest : target < (lowest?.hlb ?? 0) ? lowest : undefined;
  if (!nearest) return [];
  const name = nearest.material.tradeName;
  return [
    `No non-ionic of the library reaches HLB ${target.toFixed(1)}: the nearest is ${name} with ${nearest.hlb?.toFixed(1)}. What is proposed rests on emulsifiers that a mean HLB does not describe.`,
  ];
}

function cautionsFor(wish: Wish, members: readonly MemberFacts[]): string[] {
  const { required, oils } = wish;
  const cautions = [
    ...outOfReach(wish, members),
    'Ranked by rules and figures, not by trial: make a series of ±1 HLB in steps of 0.5 of the first ones.',
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

/** Best first; equal scores by cost, then by materials, so that the same library always gives the same order. */
function inOrder(a: RankedSystem, b: RankedSystem): number {
  const key = (system: RankedSystem): string => system.lines.map((line) => line.materialId).join();
  const cost = (system: RankedSystem): number => system.costPerKg ?? Infinity;
  if (a.score !== b.score) return b.score - a.score;
  if (cost(a) !== cost(b)) return cost(a) < cost(b) ? -1 : 1;
  return key(a).localeCompare(key(b), 'en');
}

/** How many systems of the same main emulsifier are shown, so that a choice is one. */
const MOST_ALIKE = 2;

function mainOf(system: RankedSystem): string {
  const emulsifiers = system.lines.filter((line) => line.role === 'emulsifier');
  return emulsifiers.reduce((most, line) => (line.percent > most.percent ? line : most)).materialId;
}

/** The best of each main emulsifier; more of the same only where the library gives nothing else. */
function unalike(ranked: readonly RankedSystem[], limit: number): RankedSystem[] {
  const seen = new Map<string, number>();
  const first: RankedSystem[] = [];
  const more: RankedSystem[] = [];
  for (const system of ranked) {
    const main = mainOf(system);
    const known = seen.get(main) ?? 0;
    seen.set(main, known + 1);
    (known < MOST_ALIKE ? first : more).push(system);
  }
  return [...first, ...more.slice(0, limit - first.length)].slice(0, limit).sort(inOrder);
}

/**
 * Ranks emulsifier systems of one to three materials of a library, with or without a fatty alcohol, for a wish.
 *
 * @throws Problem `invalid-input` without oils, emulsifiers, or with weights out of range
 */
export function rankSystems(input: RankInput): Ranking {
  const asked = checked(input);
  const weights = input.weights ?? {};
  const usable = input.materials.filter((material) => material.status !== 'archived');
  const facts = (list: Material[]): MemberFacts[] =>
    list.map((material) => memberFacts(material, asked.currency));
  const emulsifiers = facts(usable.filter(isEmulsifier)).filter((member) => !member.fattyAlcohol);
  const wish: Wish = { ...asked, usualCostPerKg: medianCost(emulsifiers) };
  const alcohol = wish.emulsionType === 'w/o' ? null : bestAlcohol(facts(usable.filter(isFattyAlcohol)));
  const systems: RankedSystem[] = [];
  const refused: RefusedSystem[] = [];
  for (const members of combinations(emulsifiers, wish, weights)) {
    const plain = buildSystem(members, null, wish);
    if (!plain) continue;
    const rich = alcohol ? buildSystem(members, alcohol, wish) : null;
    for (const system of rich?.fattyAlcohol ? [plain, rich] : [plain]) {
      const verdict = judgeSystem(system, wish, weights);
      if (!verdict.refused) {
        systems.push(shown(system, wish, verdict.score, verdict.reasons));
      } else if (system === plain && (refused.length < MOST_REFUSED || verdict.ruleId === 'one-sign')) {
        const names = members.map((member) => member.material.tradeName);
        refused.push({ names, ruleId: verdict.ruleId, why: verdict.why, source: verdict.source });
      }
    }
  }
  const best = unalike(systems.sort(inOrder), input.limit ?? 20);
  return { systems: best, refused, required: wish.required, cautions: cautionsFor(wish, emulsifiers) };
}
