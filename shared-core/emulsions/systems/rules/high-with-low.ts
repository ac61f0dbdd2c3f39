import { isPartner, NEUTRAL, type SystemRule } from '../system';

/** Partners closer than this in HLB are one kind. */
const APART = 4;

export const highWithLow: SystemRule = {
  id: 'high-with-low',
  name: 'High-HLB with low-HLB partner',
  says: 'A high- and a low-HLB partner pack the interface more tightly than one alone.',
  weight: 1.5,
  source: {
    text: 'common practice, no source; lamellae at the drop: Schulman and Cockbain, Fukushima and Friberg, as cited in a trade magazine',
    basis: 'common-practice',
  },
  judge(system, { emulsionType }) {
    if (emulsionType === 'w/o') return NEUTRAL;
    const values = system.emulsifiers
      .filter((member) => member.facts.described && isPartner(member, system))
      .map(({ facts }) => facts.hlb ?? 0);
    if (values.length < 2 || Math.max(...values) - Math.min(...values) < APART) return NEUTRAL;
    return {
      verdict: 'for',
      strength: 1,
      why: `Its partners lie at HLB ${Math.max(...values)} and ${Math.min(...values)}.`,
    };
  },
};
