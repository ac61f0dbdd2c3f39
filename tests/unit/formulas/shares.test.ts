import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heatingEnergy } from '@core/formulas/heating-energy';
import { formulaShares } from '@core/formulas/shares';
import { content, make, phase } from '../checks/build';

const water = make('Water', 'Aqua', { functions: ['solvent'], phaseOfUse: 'water' });
const oil = make('Oil', 'Squalane', { functions: ['emollient'], phaseOfUse: 'oil' });

describe('what the lines of a formula come to', () => {
  const percents = fc.array(fc.array(fc.nat(40), { maxLength: 4 }), { minLength: 1, maxLength: 4 });

  it('phases come to the whole, and the q.s. line is what the others leave, below zero where they are more', () => {
    fc.assert(
      fc.property(percents, fc.boolean(), (phases, filled) => {
        const made = phases.map((rows) => phase(rows.map((percent) => [oil, percent])));
        const fixed = phases.flat().reduce((sum, percent) => sum + percent, 0);
        const rest = phase([[water, 7]]);
        rest.lines[0]!.toHundred = filled;
        const found = formulaShares(content([...made, rest]));
        expect(found.hasToHundred).toBe(filled);
        expect(found.byLine.get(rest.lines[0]!.id)).toBe(filled ? 1_000_000 - fixed * 10_000 : 70_000);
        expect([...found.byPhase.values()].reduce((sum, ppm) => sum + ppm, 0)).toBe(found.totalPpm);
        expect(found.differencePpm).toBe(filled ? 0 : 1_000_000 - (fixed + 7) * 10_000);
      }),
    );
  });

  it('of no line is nothing, all of it missing', () => {
    expect(formulaShares(content([]))).toMatchObject({
      totalPpm: 0,
      differencePpm: 1_000_000,
      hasToHundred: false,
    });
  });
});

describe('energy to heat a formula', () => {
  const of = (...phases: ReturnType<typeof phase>[]) => {
    const byId = new Map([water, oil].map((one) => [one.id, one]));
    return heatingEnergy(content(phases), (id) => byId.get(id));
  };

  it('worked by hand: 0.7 kg water and 0.2 kg oil to 75 °C, the rest cold', () => {
    // 0.7 × 4.18 × 55 = 160.93 kJ; 0.2 × 2 × 55 = 22 kJ; 182.93 / 3600 = 0.050814 kWh.
    const energy = of(phase([[water, 70]], 75), phase([[oil, 20]], 75), phase([[oil, 10]]));
    expect(energy?.value).toBeCloseTo(0.050814, 6);
    expect(energy?.steps).toHaveLength(3);
  });

  it('is none where nothing is heated above the room, and grows with the temperature', () => {
    expect(of(phase([[water, 100]]), phase([[oil, 1]], 20))).toBeNull();
    expect(of(phase([[water, 100]], 20))).toBeNull();
    fc.assert(
      fc.property(fc.integer({ min: 21, max: 89 }), (celsius) => {
        const at = (one: number): number => of(phase([[water, 100]], one))?.value ?? 0;
        expect(at(celsius + 1) - at(celsius)).toBeCloseTo(4.18 / 3600, 9);
      }),
    );
  });
});
