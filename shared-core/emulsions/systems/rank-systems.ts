import type { Material } from '../../materials/material';
import { Problem } from '../../problems/problem';
import type { Currency } from '../../quantities/money';
import type { Source } from '../../working/working';
import { isEmulsifier } from '../conflicts/recognise';
import { buildSystem, withBody } from './build-system';
import { combinations } from './combine';
import { judgeSystem } from './judge-system';
import type { OilPhaseDemand } from './oil-phase';
import { best, passed, shown, type Passed, type RankedSystem } from './ranked';
import { rankingCautions } from './ranking-cautions';
import { isFattyAlcohol, memberFacts, membersOf, type MemberFacts, type SystemMember } from './system';
import { systemWish, type SystemWish, type Wish } from './wish';
import { wishOver, type RankInput } from './wish-over';

export type { RankInput } from './wish-over';
export type { RankedLine, RankedSystem } from './ranked';

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

const MOST_REFUSED = 12;

function problem(title: string, advice: string): Problem {
  return new Problem({ code: 'invalid-input', title, advice });
}

function checked({ wish, oils, materials, weights, targetHlb }: RankInput): SystemWish {
  const parsed = systemWish.safeParse(wish);
  if (!parsed.success)
    throw problem(parsed.error.issues[0]?.message ?? 'The conditions cannot be read.', 'Correct it.');
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
  if (typeof targetHlb === 'number' && !(targetHlb >= 0 && targetHlb <= 40))
    throw problem('The target HLB must lie between 0 and 40.', 'Correct it, or leave it empty.');
  const { levelFrom, levelTo } = parsed.data;
  if (levelFrom !== null && levelTo !== null && levelFrom > levelTo)
    throw problem('The lowest total level is above the highest.', 'Swap the two, or leave one empty.');
  return parsed.data;
}

const FACTS = new WeakMap<Material, { currency: Currency; facts: MemberFacts | null }>();

/**
 * The facts of one material, null where it can be no member of a system; kept as long as it is: a shelf is ranked again
 * at every change of the wish.
 */
function factsOf(material: Material, currency: Currency): MemberFacts | null {
  const known = FACTS.get(material);
  if (known?.currency === currency) return known.facts;
  const usable = material.status !== 'archived' && material.withdrawnOn === '';
  const member = usable && (isEmulsifier(material) || isFattyAlcohol(material));
  const facts = member ? memberFacts(material, currency) : null;
  FACTS.set(material, { currency, facts });
  return facts;
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

/** The fatty alcohol that is added for body, and the wish that counts it among the oils. */
interface Rich {
  body: SystemMember;
  wish: Wish;
}

function richWith(alcohol: MemberFacts | null, wish: Wish, input: RankInput): Rich | null {
  const body = alcohol && withBody(alcohol, wish);
  if (!body) return null;
  const oils = [...input.oils, { material: body.facts.material, mass: body.percent }];
  const over = wishOver(wish, { ...input, oils }, wish.usualCostPerKg);
  // What stands in the oils already is told apart from what is added.
  return { body, wish: { ...over, oils: wish.oils, alcoholInOils: wish.alcoholInOils } };
}

/**
 * Ranks emulsifier systems of one to three materials of a library, with or without a fatty alcohol, for a wish.
 *
 * @throws Problem `invalid-input` without oils, emulsifiers, or with weights out of range
 */
export function rankSystems(input: RankInput): Ranking {
  const asked = checked(input);
  const weights = input.weights ?? {};
  const members = input.materials.flatMap((material) => factsOf(material, asked.currency) ?? []);
  const emulsifiers = members.filter((member) => !member.fattyAlcohol);
  const wish = wishOver(asked, input, medianCost(emulsifiers));
  const alcohol =
    wish.emulsionType === 'w/o' ? null : bestAlcohol(members.filter((member) => member.fattyAlcohol));
  const rich = richWith(alcohol, wish, input);
  const found: Passed[] = [];
  const refused: RefusedSystem[] = [];
  for (const members of combinations(emulsifiers, wish, weights)) {
    for (const { body, wish: over } of rich ? [{ body: null, wish }, rich] : [{ body: null, wish }]) {
      const system = buildSystem(members, body, over);
      if (!system) continue;
      const verdict = judgeSystem(system, over, weights);
      if (!verdict.refused) {
        found.push(passed(system, over, verdict.score, verdict.reasons));
      } else if (!body && (refused.length < MOST_REFUSED || verdict.ruleId === 'one-sign')) {
        const names = members.map((member) => member.material.tradeName);
        refused.push({ names, ruleId: verdict.ruleId, why: verdict.why, source: verdict.source });
      }
    }
  }
  const shownOnes = best(found, input.limit ?? 20);
  const assumed = shownOnes.flatMap(({ system }) =>
    membersOf(system).filter(({ facts: one }) => one.mostAssumed),
  );
  const names = [...new Set(assumed.map(({ facts: one }) => one.material.tradeName))];
  return {
    systems: shownOnes.map(shown),
    refused,
    required: wish.required,
    cautions: rankingCautions(wish, emulsifiers, names),
  };
}
