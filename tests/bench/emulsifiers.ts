import type { Candidate, Demand } from '@core/emulsions/optimise/demand';
import { Seeded } from './seeded';

/** Generated emulsifiers, mostly non-ionic, with the spread of HLB, prices and usage ranges of a maker's shelf. */
export function generatedCandidates(count: number, seed: number): Candidate[] {
  const chance = new Seeded(seed);
  return Array.from({ length: count }, (_, index) => {
    const charge =
      chance.next() < 0.8 ? 'non-ionic' : chance.pick(['anionic', 'cationic', 'amphoteric'] as const);
    const hlb = Math.round((1 + chance.next() * 18) * 10) / 10;
    return {
      id: `candidate-${index}`,
      name: `Emulsifier ${index}`,
      hlb: chance.next() < 0.95 ? hlb : null,
      charge,
      architecture: chance.next() < 0.9 ? 'classic' : chance.pick(['polymeric', 'particulate'] as const),
      emulsionType: hlb < 7 ? 'w/o' : 'o/w',
      character: chance.next() < 0.6 ? 'waxy' : 'liquid',
      costPerKg: chance.next() < 0.95 ? Math.round(300 + chance.next() * chance.next() * 9000) : null,
      minPercent: chance.pick([0.2, 0.5, 0.5, 1]),
      maxPercent: chance.pick([1, 1.5, 2, 3, 4, 5, 8]),
    };
  });
}

/** The demand of the benchmark: at most four, 4 to 6 % in all, HLB 11.3 ± 0.2. */
export function benchDemand(parts: Partial<Demand> = {}): Demand {
  return {
    emulsionType: 'o/w',
    targetHlb: 11.3,
    tolerance: 0.2,
    totalMinPercent: 4,
    totalMaxPercent: 6,
    atMost: 4,
    pinned: [],
    excluded: [],
    objective: 'least cost',
    rules: ['one sign of charge', 'serves the type'],
    alternatives: 0,
    ...parts,
  };
}
