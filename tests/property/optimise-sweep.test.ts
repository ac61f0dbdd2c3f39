import { describe, expect, it } from 'vitest';
import { OBJECTIVES, PAIRING_RULES, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { optimise } from '@core/emulsions/optimise/optimise';
import { Problem } from '@core/problems/problem';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { Seeded } from '../bench/seeded';
import { demoShelf } from '../unit/emulsions-optimise/demo-shelf';

const SHELF = demoShelf();
const RUNS = 300;
const tenths = (value: number): number => Math.round(value * 10) / 10;

/** A few of the demonstration shelf, as a filter would leave them. */
function someOf(chance: Seeded): Candidate[] {
  const share = 0.05 + chance.next() * 0.35;
  const some = SHELF.filter(() => chance.chance(share));
  return some.length > 1 ? some : SHELF.slice(0, 2);
}

function randomDemand(chance: Seeded, candidates: readonly Candidate[]): Demand {
  const targetHlb = chance.chance(0.85) ? tenths(3 + chance.next() * 14) : null;
  const totalMinPercent = chance.pick([0, tenths(chance.next() * 6), chance.whole(1, 6)]);
  return {
    emulsionType: chance.pick(['o/w', 'w/o']),
    targetHlb,
    tolerance: chance.pick([0, 0, 0.1, 0.3, 1]),
    totalMinPercent,
    totalMaxPercent: tenths(totalMinPercent + chance.pick([0.1, 0.5, 1, 2])),
    atMost: chance.pick([1, 1, 2, 3, 4]),
    pinned: chance.chance(0.25) ? candidates.slice(0, 1).map((one) => one.id) : [],
    excluded: chance.chance(0.25) ? candidates.slice(-1).map((one) => one.id) : [],
    objective: chance.pick(OBJECTIVES.filter((one) => targetHlb !== null || one !== 'nearest HLB')),
    rules: PAIRING_RULES.filter(() => chance.chance(0.25)),
    alternatives: 2,
  };
}

/** What a reason may name: what the form has a field for, and the rules that it lists. */
function makersOwn(name: string, demand: Demand): boolean {
  return (
    /^the (HLB window|lowest total|highest total|number of materials|usage ranges|exclusions)$/.test(name) ||
    name.startsWith('the pin on ') ||
    demand.rules.some((rule) => rule === name)
  );
}

describe('random demands on the demonstration shelf', () => {
  it('are answered or refused in words, and never fail', async () => {
    const chance = new Seeded(20261126);
    for (let run = 0; run < RUNS; run += 1) {
      const candidates = someOf(chance);
      const demand = randomDemand(chance, candidates);
      try {
        const result = await optimise({ candidates, demand }, solveWithHighs);
        if (result.status === 'infeasible') {
          expect(result.conflict.length, JSON.stringify(demand)).toBeGreaterThan(0);
          const named = [...result.conflict, ...result.relax.map((one) => one.demand)];
          expect(named.filter((name) => !makersOwn(name, demand))).toEqual([]);
        }
      } catch (problem) {
        if (!(problem instanceof Problem)) {
          throw new Error(`Run ${run} failed: ${JSON.stringify(demand)}`, { cause: problem });
        }
      }
    }
  }, 600_000);
});
