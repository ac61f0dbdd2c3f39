import { membersOf, NEUTRAL, systemCost, type SystemRule } from '../system';

export const cost: SystemRule = {
  id: 'cost',
  name: 'Costs little',
  says: 'By the newest prices, against the median of the library’s emulsifiers; a missing price counts as unknown, not as nothing.',
  weight: 1,
  source: { text: 'prices in the library', basis: 'library' },
  judge(system, { usualCostPerKg }) {
    const total = systemCost(system);
    if (total === null || usualCostPerKg === null || usualCostPerKg === 0) return NEUTRAL;
    const percent = membersOf(system).reduce((sum, member) => sum + member.percent, 0);
    const times = (total * 100) / percent / usualCostPerKg;
    const why = `A kg of it costs ${times.toFixed(2)} times what the library’s emulsifiers cost in the median.`;
    if (times <= 1) return { verdict: 'for', strength: 1 - times, why };
    return { verdict: 'against', strength: Math.min(1, times - 1), why };
  },
};
