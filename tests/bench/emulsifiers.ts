import type { Candidate, Demand } from '@core/emulsions/optimise/demand';

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function pick<T>(random: () => number, from: readonly T[]): T {
  return from[Math.floor(random() * from.length)] as T;
}

/** Generated emulsifiers, mostly non-ionic, with the spread of HLB, prices and usage ranges of a maker's shelf. */
export function generatedCandidates(count: number, seed: number): Candidate[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, index) => {
    const charge =
      random() < 0.8 ? 'non-ionic' : pick(random, ['anionic', 'cationic', 'amphoteric'] as const);
    const hlb = Math.round((1 + random() * 18) * 10) / 10;
    return {
      id: `candidate-${index}`,
      name: `Emulsifier ${index}`,
      inci: `Generated ${index}`,
      hlb: random() < 0.95 ? hlb : null,
      charge,
      architecture: random() < 0.9 ? 'classic' : pick(random, ['polymeric', 'particulate'] as const),
      emulsionType: hlb < 7 ? 'w/o' : 'o/w',
      character: random() < 0.6 ? 'waxy' : 'liquid',
      costPerKg: random() < 0.95 ? Math.round(300 + random() * random() * 9000) : null,
      minPercent: pick(random, [0.2, 0.5, 0.5, 1]),
      maxPercent: pick(random, [1, 1.5, 2, 3, 4, 5, 8]),
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
