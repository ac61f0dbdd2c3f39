import { Problem } from '../../problems/problem';
import { isClassicNonIonic } from '../systems/character';
import type { Candidate, Demand } from './demand';
import { groupsOf, type Groups } from './pairing';
import type { LeftOut } from './result';

/** The least that counts as using a material, in % of the formula: what no balance shows is no partner. */
export const LEAST_USE_PERCENT = 0.01;

/** A candidate that takes part, with its variables' names. */
export interface Player {
  one: Candidate;
  groups: Groups;
  /** Whether the mean HLB describes it: a classic non-ionic with a value. */
  described: boolean;
  excluded: boolean;
  pinned: boolean;
  x: string;
  y: string;
}

export interface Field {
  players: Player[];
  leftOut: LeftOut[];
}

/** Whether the rules ask for this one by its charge, so that HLB is not what it is chosen by. */
function askedByCharge(one: Candidate, demand: Demand): boolean {
  if (one.charge === 'cationic') {
    return demand.rules.includes('a cationic') || demand.rules.includes('ionic with a non-ionic');
  }
  return one.charge === 'anionic' && demand.rules.includes('ionic with a non-ionic');
}

/** Why a candidate cannot take part, or null. */
function obstacle(one: Candidate, demand: Demand, pinned: boolean): string | null {
  if (one.maxPercent < LEAST_USE_PERCENT) return 'its highest use is 0 %';
  if (demand.objective === 'least cost' && one.costPerKg === null) return 'it has no price in this currency';
  if (demand.targetHlb === null) return null;
  if (isClassicNonIonic(one)) return one.hlb === null ? 'it has no HLB' : null;
  if (pinned || askedByCharge(one, demand)) return null;
  const what = one.architecture === 'classic' || one.architecture === null ? one.charge : one.architecture;
  return what === null
    ? 'it has no charge recorded, so its HLB cannot be trusted'
    : `a mean HLB does not describe ${what} emulsifiers; pin it, or ask for its charge by a rule`;
}

/** Sorts candidates into those that take part and those left out, each with the reason. */
export function prepare(candidates: readonly Candidate[], demand: Demand): Field {
  const leftOut: LeftOut[] = [];
  const players: Player[] = [];
  for (const one of candidates) {
    const pinned = demand.pinned.includes(one.id);
    const why = obstacle(one, demand, pinned);
    if (why !== null) {
      if (pinned) throw pinnedCannot(one, why);
      leftOut.push({ id: one.id, name: one.name, why });
      continue;
    }
    const index = players.length;
    players.push({
      one,
      groups: groupsOf(one, demand.emulsionType),
      described: isClassicNonIonic(one) && one.hlb !== null,
      excluded: demand.excluded.includes(one.id),
      pinned,
      x: `x${index}`,
      y: `y${index}`,
    });
  }
  refuseEmpty(candidates, players, demand, leftOut);
  return { players, leftOut };
}

function pinnedCannot(one: Candidate, why: string): Problem {
  return new Problem({
    code: 'invalid-input',
    title: `${one.name} is pinned, but ${why}.`,
    advice: 'Add what is missing to the material, or unpin it.',
    facts: { id: one.id },
  });
}

function refuseEmpty(all: readonly Candidate[], players: Player[], demand: Demand, leftOut: LeftOut[]): void {
  if (all.length === 0) {
    throw new Problem({
      code: 'invalid-input',
      title: 'There are no emulsifiers to choose from.',
      advice: 'Widen the filter, or add emulsifiers to the library.',
    });
  }
  if (players.length === 0) {
    const example = leftOut[0];
    throw new Problem({
      code: 'invalid-input',
      title: `None of the ${all.length} candidates can take part${example ? `: ${example.name}, for one, cannot because ${example.why}` : ''}.`,
      advice: 'Complete the materials, widen the filter, or change the objective.',
      facts: { leftOut },
    });
  }
  if (demand.targetHlb !== null && !players.some((player) => player.described)) {
    throw new Problem({
      code: 'invalid-input',
      title: 'A target HLB alone cannot choose among ionic, polymeric or particulate emulsifiers.',
      advice: 'Add non-ionic candidates with an HLB, or leave the target HLB out.',
    });
  }
}

/** Refuses pins that contradict each other or the rest of the demand. */
export function refuseContradictions(candidates: readonly Candidate[], demand: Demand): void {
  const known = new Map(candidates.map((one) => [one.id, one]));
  const refuse = (title: string, advice: string): never => {
    throw new Problem({ code: 'invalid-input', title, advice });
  };
  if (known.size !== candidates.length) {
    refuse('One candidate is listed twice.', 'Keep each candidate once.');
  }
  for (const id of demand.pinned) {
    const one = known.get(id);
    if (!one)
      return refuse('A pinned emulsifier is not among the candidates.', 'Unpin it, or widen the filter.');
    if (demand.excluded.includes(id)) {
      return refuse(`${one.name} is both pinned and excluded.`, 'Choose one of the two.');
    }
  }
  const pins = new Set(demand.pinned).size;
  if (pins > demand.atMost) {
    refuse(
      `${pins} emulsifiers are pinned, but at most ${demand.atMost} may be used.`,
      'Unpin some, or allow more.',
    );
  }
}
