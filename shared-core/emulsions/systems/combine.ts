import { buildSystem } from './build-system';
import { judgeSystem, type RuleWeights } from './judge-system';
import type { EmulsifierSystem, MemberFacts } from './system';
import type { Wish } from './wish';

/** The kinds that are combined with each other. */
type Kind = 'high' | 'low' | 'vague' | 'anionic' | 'cationic' | 'other';

/** How many of a kind are tried in combinations: the best ones alone. */
const BEST_OF_KIND = 16;
/** How many non-ionic pairs are tried with an ionic. */
const BEST_PAIRS = 24;
const BEST_IONICS = 8;
/** How many opposite charges are put together, so that the refusal can be shown. */
const SHOWN_CLASHES = 2;
/** High from here (Griffin: o/w 8 to 18). */
const HIGH_HLB = 8;

function kindOf(member: MemberFacts): Kind {
  if (member.charge === 'anionic') return 'anionic';
  if (member.charge === 'cationic') return 'cationic';
  if (member.charge !== 'non-ionic' || member.polymeric) return 'other';
  if (member.hlb === null) return 'vague';
  return member.hlb >= HIGH_HLB ? 'high' : 'low';
}

/** A member's promise: the score of it alone. Its own HLB and a lonely charge must not decide, its partners mend them. */
function promise(member: MemberFacts, wish: Wish, weights: RuleWeights): number {
  const alone: EmulsifierSystem = {
    emulsifiers: [{ facts: member, percent: 1 }],
    fattyAlcohol: null,
    levelPercent: 1,
    offered: null,
  };
  const verdict = judgeSystem(
    alone,
    { ...wish, emulsionType: wish.emulsionType === 'w/o' ? 'w/o' : 'o/w' },
    weights,
  );
  if (!verdict.refused) return verdict.score;
  // Refused alone for its type, it may still serve as a partner; refused for its pH, it may not.
  return verdict.ruleId === 'serves-type' ? 0 : -Infinity;
}

/**
 * The most promising of each kind. In "high" and "low" every HLB unit keeps its best first, so that a pair that meets
 * the target is not lost for a more pleasing one that cannot.
 */
function bestOfKinds(
  members: readonly MemberFacts[],
  wish: Wish,
  weights: RuleWeights,
): Record<Kind, MemberFacts[]> {
  const kinds: Record<Kind, MemberFacts[]> = {
    high: [],
    low: [],
    vague: [],
    anionic: [],
    cationic: [],
    other: [],
  };
  const ranked = members
    .map((member) => ({ member, score: promise(member, wish, weights) }))
    .filter(({ score }) => score > -Infinity)
    .sort((a, b) => b.score - a.score || a.member.material.id.localeCompare(b.member.material.id, 'en'));
  const perUnit = new Map<string, number>();
  const later: MemberFacts[] = [];
  for (const { member } of ranked) {
    const unit = `${kindOf(member)} ${Math.floor(member.hlb ?? -1)}`;
    const seen = perUnit.get(unit) ?? 0;
    perUnit.set(unit, seen + 1);
    if (seen < 2) kinds[kindOf(member)].push(member);
    else later.push(member);
  }
  for (const member of later) kinds[kindOf(member)].push(member);
  for (const kind of Object.keys(kinds) as Kind[]) kinds[kind] = kinds[kind].slice(0, BEST_OF_KIND);
  return kinds;
}

function pairsOf(first: readonly MemberFacts[], second: readonly MemberFacts[]): MemberFacts[][] {
  return first.flatMap((one) => second.map((other) => [one, other]));
}

/** Pairs within one list, each once. */
function pairsWithin(list: readonly MemberFacts[]): MemberFacts[][] {
  return list.flatMap((one, index) => list.slice(index + 1).map((other) => [one, other]));
}

function bestPairs(pairs: MemberFacts[][], wish: Wish, weights: RuleWeights): MemberFacts[][] {
  const scored = pairs.flatMap((pair) => {
    const system = buildSystem(pair, null, wish);
    const verdict = system ? judgeSystem(system, wish, weights) : null;
    return verdict && !verdict.refused ? [{ pair, score: verdict.score }] : [];
  });
  return scored
    .sort((a, b) => b.score - a.score)
    .slice(0, BEST_PAIRS)
    .map(({ pair }) => pair);
}

/**
 * The sets of one to three emulsifiers worth judging. Of a large library only the best of each kind (high- and low-HLB
 * non-ionic, anionic, cationic, other) are combined, best as the rules judge them alone; ranking is exact over these.
 */
export function combinations(
  members: readonly MemberFacts[],
  wish: Wish,
  weights: RuleWeights,
): MemberFacts[][] {
  const { high, low, vague, anionic, cationic, other } = bestOfKinds(members, wish, weights);
  const ionic = wish.emulsionType === 'cationic o/w' ? cationic : anionic;
  const singles = [...high, ...low, ...vague, ...ionic, ...other].map((member) => [member]);
  // Soap first: it is the clash most often made.
  const bySoap = [...anionic].sort((a, b) => Number(b.soap) - Number(a.soap));
  const clashes = pairsOf(cationic.slice(0, SHOWN_CLASHES), bySoap.slice(0, SHOWN_CLASHES));
  if (wish.emulsionType === 'w/o') return [...singles, ...pairsWithin([...low, ...other]), ...clashes];
  const nonIonic = [...pairsOf(high, low), ...pairsWithin(high)];
  const mixed = pairsOf(ionic, [...high, ...low, ...vague]);
  const threes = bestPairs(
    pairsOf(high, low),
    wish.emulsionType === 'cationic o/w' ? { ...wish, emulsionType: 'o/w' } : wish,
    weights,
  );
  const triples = threes.flatMap((pair) => ionic.slice(0, BEST_IONICS).map((one) => [one, ...pair]));
  const plain = wish.emulsionType === 'cationic o/w' ? [] : nonIonic;
  return [...singles, ...plain, ...mixed, ...triples, ...clashes];
}
