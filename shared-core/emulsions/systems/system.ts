import type { Material } from '../../materials/material';
import type { Charge } from '../../materials/vocabulary';
import type { Currency } from '../../quantities/money';
import type { Source } from '../../working/working';
import { allNamed, FATTY_ALCOHOL, holdsOxyethylene, needsBase } from '../conflicts/recognise';
import { meanBand, type HlbBand } from '../hlb-band';
import { costPerKg } from '../optimise/candidates';
import { usageRange } from '../usage-range';
import { hlbSpread, isClassicNonIonic, pairingFacts, worksAsSoap, type PairingFacts } from './character';
import type { Wish } from './wish';

/** What the rules ask of a material, worked out once. */
export interface MemberFacts extends PairingFacts {
  material: Material;
  /** The HLB with the ends of its figure; null where it is not known. */
  band: HlbBand | null;
  /** Whether the mean HLB describes it: a classic non-ionic with a value. */
  described: boolean;
  /** A soap, or a fatty acid that a base makes one. */
  soap: boolean;
  polymeric: boolean;
  oxyethylene: boolean;
  needsBase: boolean;
  fattyAlcohol: boolean;
  /** Minor units per kg of the material; null without an offer. */
  costPerKg: number | null;
  leastPercent: number;
  mostPercent: number;
  /** True where no highest use is recorded. */
  mostAssumed: boolean;
}

/** A fatty alcohol as such, not inside a blend that brings its own emulsifier. */
export function isFattyAlcohol(material: Material): boolean {
  return allNamed(material, FATTY_ALCOHOL);
}

/** The facts of one material. */
export function memberFacts(material: Material, currency: Currency): MemberFacts {
  const facts = pairingFacts(material);
  const spread = hlbSpread(material);
  const { minPercent, maxPercent, maxAssumed } = usageRange(material);
  return {
    ...facts,
    material,
    band: facts.hlb === null || spread === null ? null : { value: facts.hlb, ...spread },
    described: facts.hlb !== null && isClassicNonIonic(facts),
    soap: worksAsSoap(material),
    polymeric: (facts.architecture ?? 'classic') !== 'classic',
    oxyethylene: holdsOxyethylene(material),
    needsBase: needsBase(material),
    fattyAlcohol: isFattyAlcohol(material),
    costPerKg: costPerKg(material.offers, currency),
    leastPercent: minPercent,
    mostPercent: maxPercent,
    mostAssumed: maxAssumed,
  };
}

export interface SystemMember {
  facts: MemberFacts;
  /** % of the formula. */
  percent: number;
}

/** A system as it is judged: emulsifiers at their levels, and a fatty alcohol for body where one is added. */
export interface EmulsifierSystem {
  emulsifiers: SystemMember[];
  fattyAlcohol: SystemMember | null;
  /** Emulsifiers together, % of the formula, without the fatty alcohol. */
  levelPercent: number;
  /** Mean HLB of what the mean describes, with its spread; null where it describes nothing. */
  offered: HlbBand | null;
}

/** The mean HLB that emulsifiers offer, over those that the mean describes. */
export function offeredBand(members: readonly SystemMember[]): HlbBand | null {
  return meanBand(
    members.flatMap(({ facts, percent }) =>
      facts.described && facts.band ? [{ mass: percent, ...facts.band }] : [],
    ),
  );
}

/** All members, the fatty alcohol included. */
export function membersOf(system: EmulsifierSystem): SystemMember[] {
  return system.fattyAlcohol ? [...system.emulsifiers, system.fattyAlcohol] : system.emulsifiers;
}

/** Minor units that a system adds to a kg of product; null when a price is missing. */
export function systemCost(system: EmulsifierSystem): number | null {
  const members = membersOf(system);
  if (members.some(({ facts }) => facts.costPerKg === null)) return null;
  return members.reduce((sum, { facts, percent }) => sum + (percent / 100) * (facts.costPerKg ?? 0), 0);
}

function ownBody({ material, character }: MemberFacts): number {
  if (material.body === 'strong') return 2;
  if (material.body === 'some') return 1;
  return material.body === null && character === 'waxy' ? 1 : 0;
}

/**
 * The body a system is likely to give, 0 (none) to 3 (a rich cream): its members' own by their shares, and the gel
 * network that fatty alcohol builds beside them, added or among the oils. An estimate for ranking; common practice, no
 * source.
 */
export function bodyPoints(system: EmulsifierSystem, { alcoholInOils }: Wish): number {
  const own = system.emulsifiers.reduce((sum, { facts, percent }) => sum + percent * ownBody(facts), 0);
  const network = ((system.fattyAlcohol?.percent ?? 0) + alcoholInOils) / 2;
  return Math.min(3, own / system.levelPercent + network);
}

/** The body as it is told. */
export function bodyExpected(system: EmulsifierSystem, wish: Wish): 'none' | 'some' | 'strong' {
  const points = bodyPoints(system, wish);
  if (points < 0.75) return 'none';
  return points < 2 ? 'some' : 'strong';
}

/** Below this share of the system a member is a trace that no rule takes for a partner. Common practice, no source. */
const LEAST_PARTNER = 0.1;

/** Whether a member is there in earnest. */
export function isPartner(member: SystemMember, system: EmulsifierSystem): boolean {
  return member.percent >= LEAST_PARTNER * system.levelPercent;
}

/**
 * What a rule makes of a system: `strength` from 0 to 1; `refuses` takes the system out. `warns`: a formula of this
 * system would meet a warning of our own checks, so that it is not proposed as sound.
 */
export type Judgement =
  | { verdict: 'for'; strength: number; why: string }
  | { verdict: 'against'; strength: number; why: string; warns?: boolean }
  | { verdict: 'neutral' }
  | { verdict: 'refuses'; why: string };

/** A named rule of the trade, in a file of its own. */
export interface SystemRule {
  id: string;
  name: string;
  /** The rule in one sentence. */
  says: string;
  /** How much it counts by default; the maker can change it. */
  weight: number;
  source: Source;
  judge(system: EmulsifierSystem, wish: Wish): Judgement;
}

export const NEUTRAL: Judgement = { verdict: 'neutral' };

/** Whether a system has members of a charge. */
export function hasCharge(system: EmulsifierSystem, charge: Charge): boolean {
  return system.emulsifiers.some(({ facts }) => facts.charge === charge);
}
