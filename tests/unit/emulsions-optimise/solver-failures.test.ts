import { describe, expect, it } from 'vitest';
import { OBJECTIVES, type Candidate } from '@core/emulsions/optimise/demand';
import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import { SolverFailed, type SolveLp } from '@core/emulsions/optimise/result';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { demoShelf, named } from './demo-shelf';

type Asked = OptimiseInput['demand'];
const SHELF = demoShelf();

const asked = (parts: Partial<Asked>): Asked => ({
  emulsionType: 'o/w',
  targetHlb: 11.2,
  tolerance: 0.3,
  totalMinPercent: 5,
  totalMaxPercent: 6,
  atMost: 1,
  objective: 'nearest HLB',
  rules: ['one sign of charge'],
  alternatives: 3,
  ...parts,
});
const run = (candidates: Candidate[], parts: Partial<Asked>, solve: SolveLp = solveWithHighs) =>
  optimise({ candidates, demand: asked(parts) }, solve);

describe('models on which the solver stumbles', () => {
  it('are solved another way: one emulsifier of a dozen, none of which reaches the window', async () => {
    const few = named(SHELF, 'Brineholt Lactylate', 'Brineholt Stearic 50', 'Combeforth Behenyl Wax');
    const more = named(SHELF, 'Combeforth Distearyl', 'Dunnockle Stearate', 'Fennelock Lauryl 23');
    const rest = named(SHELF, 'Fennelock Oleyl 10', 'Gossamoor Cross', 'Gossamoor Ready');
    const last = named(SHELF, 'Honeythrum Coconut Wax', 'Pearthistle GS-SE', 'Tansymere Ten');
    const candidates = [...few, ...more, ...rest, ...last].filter(
      (one) => one.name !== 'Tansymere Ten Liquid',
    );
    expect(candidates).toHaveLength(12);
    const result = await run(candidates, {});
    if (result.status === 'optimal') throw new Error('No single one lies within the window.');
    // Tansymere Ten, HLB 12, may be used up to 4 %; Fennelock Oleyl 10 has HLB 12.4.
    expect(result.reason).toContain('the nearest reachable is 12.4');
  });

  it.each([
    [['Honeythrum', 'Tansymere'], 6.1],
    [['Wrenstow', 'Pearthistle'], 7.9],
    [['Honeythrum', 'Wrenstow'], 13.8],
    [['Fennelock', 'Ripplecombe', 'Tansymere', 'Twainlow'], 8.2],
    [['Brineholt', 'Dunnockle', 'Gossamoor', 'Tansymere'], 13.2],
    [[''], 15],
  ])(
    'never lose the answer: %s for HLB %d',
    async (starts, targetHlb) => {
      const candidates = named(SHELF, ...starts);
      for (const objective of OBJECTIVES) {
        for (const tolerance of [0, 0.1]) {
          const result = await run(candidates, { objective, tolerance, targetHlb, totalMinPercent: 4 });
          if (result.status === 'infeasible') expect(result.reason).toContain('HLB');
        }
      }
    },
    120_000,
  );
});

describe('a solver that gives up', () => {
  it('leaves the plain reason, without how far the HLB can be reached', async () => {
    const shelf = named(SHELF, 'Tansymere Three Liquid');
    // How far the HLB reaches is asked with an objective; whether demands clash, without one.
    const solve: SolveLp = async (lp) => {
      if (/obj: \+ 1 d|obj: - /.test(lp)) throw new SolverFailed('The solver failed on this model.');
      return solveWithHighs(lp);
    };
    const result = await run(shelf, { objective: 'least cost', targetHlb: 12, totalMinPercent: 3 }, solve);
    if (result.status === 'optimal') throw new Error('HLB 5 is not HLB 12.');
    expect(result.relax.map((one) => one.says)).toEqual([
      'HLB 12 ± 0.3 cannot be reached with the allowed emulsifiers',
    ]);
  });

  it('keeps the proven best, and says that there may be more', async () => {
    const solve: SolveLp = async (lp) => {
      // A model that bars an answer given before carries one row more, which ends in ≤ 1.
      if (/\+ 1 y\d+\n \+ 1 y\d+ <= 1$/m.test(lp)) throw new SolverFailed('The solver failed on this model.');
      return solveWithHighs(lp);
    };
    const parts = { objective: 'least cost', targetHlb: 10, atMost: 3, totalMinPercent: 3 } as const;
    const result = await run(named(SHELF, 'Pibberley', 'Dunnockle'), parts, solve);
    if (result.status === 'infeasible') throw new Error(result.reason);
    expect(result.best.hlb).toBeGreaterThan(9.7 - 1e-6);
    expect(result.noMore).toBe(false);
    expect(result.cautions.join(' ')).toContain('there may be more');
  });
});
