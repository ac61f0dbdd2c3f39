import { membersOf, NEUTRAL, systemCost, type SystemRule } from '../system';
import { systemKind, usualLevel } from '../level';

export const cost: SystemRule = {
  id: 'cost',
  name: 'Costs little',
  says: 'What it adds to a kg of product by the newest prices, against the usual level at the library’s median price; without a price the cost is not known.',
  weight: 1,
  source: { text: 'prices in the library', basis: 'library' },
  judge(system, { usualCostPerKg, oilPercent, emulsionType }) {
    if (usualCostPerKg === null || usualCostPerKg === 0) return NEUTRAL;
    const total = systemCost(system);
    if (total === null) {
      const unpriced = membersOf(system).filter(({ facts }) => facts.costPerKg === null);
      const names = unpriced.map(({ facts }) => facts.material.tradeName).join(', ');
      return { verdict: 'against', strength: 0.25, why: `${names} has no price: the cost is not known.` };
    }
    const kind = systemKind(
      system.emulsifiers.map(({ facts }) => facts),
      emulsionType,
    );
    const level = usualLevel(kind, oilPercent) + (system.fattyAlcohol?.percent ?? 0);
    const usual = (usualCostPerKg * level) / 100;
    const times = total / usual;
    const why = `In a kg of product it costs ${times.toFixed(2)} times the usual level at the library’s median price.`;
    if (times <= 1) return { verdict: 'for', strength: 1 - times, why };
    return { verdict: 'against', strength: Math.min(1, times - 1), why };
  },
};
