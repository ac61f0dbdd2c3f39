import { chargeConflicts } from '../../conflicts/charge-conflicts';
import { hasCharge, membersOf, NEUTRAL, type SystemRule } from '../system';

export const oneSign: SystemRule = {
  id: 'one-sign',
  name: 'One sign of charge',
  says: 'A cationic and an anionic form an insoluble salt; they are never put together.',
  weight: 1,
  source: {
    text: 'Rosen, Surfactants and Interfacial Phenomena; Martin’s Physical Pharmacy, 5th ed. (from memory)',
    basis: 'memory',
  },
  judge(system) {
    if (!hasCharge(system, 'cationic') || !hasCharge(system, 'anionic')) return NEUTRAL;
    const doses = membersOf(system).map(({ facts, percent }) => ({
      lineId: facts.material.id,
      material: facts.material,
      ppm: percent * 10_000,
    }));
    const [worst] = chargeConflicts(doses);
    const named = worst
      ? `${worst.first.name} with ${worst.second.name}: ${worst.severity}. ${worst.why}`
      : '';
    return {
      verdict: 'refuses',
      why: named || 'It holds a cationic and an anionic, which form an insoluble salt.',
    };
  },
};
