import { changedConsequences } from '@core/formulas/change/changed-consequences';
import { consequencesOf } from '@core/formulas/change/consequences';
import { compositionFigures } from '@core/formulas/composition-figures';
import { heatingEnergy } from '@core/formulas/heating-energy';
import { USUAL_CHECKS } from '@core/checks/check';
import { NO_LAW } from '@core/limits/law';
import { describe, expect, it } from 'vitest';
import { content, figure, make, phase } from '../checks/build';

const water = make('Water', 'Aqua');
const oil = make('Almond oil', 'Prunus Amygdalus Dulcis Oil', {
  functions: ['emollient'],
  phaseOfUse: 'oil',
  figures: { requiredHlbOw: figure(7) },
});
const high = make('High', 'Polysorbate 60', {
  functions: ['emulsifier'],
  charge: 'non-ionic',
  phaseOfUse: 'oil',
  figures: { hlb: figure(15) },
});
const low = make('Low', 'Sorbitan Stearate', {
  functions: ['emulsifier'],
  charge: 'non-ionic',
  phaseOfUse: 'oil',
  figures: { hlb: figure(5) },
});
const brine = make('Brine', 'Sodium Chloride', {
  composition: [
    { inci: 'Aqua', lowPpm: 900_000, highPpm: 900_000 },
    { inci: 'Sodium Chloride', lowPpm: 100_000, highPpm: 100_000 },
  ],
});
const ALL = [water, oil, high, low, brine];
const find = (id: string) => ALL.find((one) => one.id === id);
const materials = Object.fromEntries(ALL.map((one) => [one.id, one]));
const cream = (shares: [number, number, number, number, number]) =>
  content([
    phase(
      [
        [oil, shares[1]],
        [high, shares[2]],
        [low, shares[3]],
      ],
      70,
    ),
    phase(
      [
        [water, shares[0]],
        [brine, shares[4]],
      ],
      70,
    ),
  ]);
const AROUND = { law: NO_LAW, onDay: '2026-11-01', currency: 'EUR' as const, checks: USUAL_CHECKS };

describe('what a formula is made up of', () => {
  it('oil phase, solids and electrolyte come to what they come to by hand', () => {
    // 20 + 2 + 2 of the oil phase; solids are all but 70 of water and 0.9 × 6 of the brine; salt is 0.1 × 6.
    const figures = compositionFigures(cream([70, 20, 2, 2, 6]), find);
    expect(figures.oilPhase.value).toBeCloseTo(24, 9);
    expect(figures.solids.low.value).toBeCloseTo(100 - 70 - 5.4, 9);
    expect(figures.electrolyte.high.value).toBeCloseTo(0.6, 9);
    expect(figures.oilPhase.steps[0]?.shows).toBe('20 + 2 + 2');
  });

  it('a range of the supplier gives solids two ends', () => {
    const wet = make('Wet', 'Aqua', {
      composition: [{ inci: 'Aqua', lowPpm: 400_000, highPpm: 600_000 }],
    });
    const figures = compositionFigures(content([phase([[wet, 100]])]), () => wet);
    expect([figures.solids.low.value, figures.solids.high.value]).toEqual([40, 60]);
  });

  it('several names in one leave solids open: glycerin in water may be nearly all, or nearly none of it', () => {
    const solids = (inci: string | string[]): number[] => {
      const one = make('Mix', inci);
      const { low, high } = compositionFigures(content([phase([[one, 100]])]), () => one).solids;
      return [low.value, high.value];
    };
    for (const joined of ['Aqua (and) Glycerin', 'Glycerin & Aqua', 'Glycerin and Water'])
      expect(solids(joined), joined).toEqual([0, 100]);
    // All of them leave, or none does.
    expect(solids('Aqua (and) Alcohol Denat.')).toEqual([0, 0]);
    expect(solids('Glycerin (and) Panthenol')).toEqual([100, 100]);
    expect(solids(['Aqua', 'Glycerin'])).toEqual([50, 50]);
    expect(solids('Aqua/Water/Eau')).toEqual([0, 0]);
    expect(solids('Cyclopentasiloxane')).toEqual([0, 0]);
  });

  it('heating takes mass × specific heat × difference, phase by phase', () => {
    // By hand: (0.24 kg × 2 + 0.76 kg × 4.18) kJ/K × 50 K = 182.84 kJ; / 3600.
    const energy = heatingEnergy(cream([70, 20, 2, 2, 6]), find);
    expect(energy?.value).toBeCloseTo((0.24 * 2 + 0.76 * 4.18) * (50 / 3600), 9);
    expect(heatingEnergy(content([phase([[water, 100]])]), find)).toBeNull();
  });
});

describe('what follows from a change', () => {
  const side = (shares: Parameters<typeof cream>[0]) =>
    consequencesOf({ content: cream(shares), materials }, AROUND);
  const wording = { region: 'en-GB', currency: 'EUR' } as const;

  it('a formula against itself changes nothing', () => {
    const one = side([70, 20, 2, 2, 6]);
    expect(changedConsequences(one, one, wording)).toEqual({ figures: [], findings: [], label: null });
  });

  it('tells the offered HLB, and the findings that come with it', () => {
    const [before, after] = [side([70, 20, 0.8, 3.2, 6]), side([70, 20, 4, 0, 6])];
    // (0.8 × 15 + 3.2 × 5) / 4 = 7, which the oil asks for; all of the high one gives 15.
    expect([before.offeredHlb, before.requiredHlb, after.offeredHlb]).toEqual([7, 7, 15]);
    const { figures, findings } = changedConsequences(before, after, wording);
    expect(figures.find(({ label }) => label === 'Offered HLB')).toMatchObject({
      before: '7',
      after: '15',
      change: '+8',
    });
    expect(findings.some(({ kind, title }) => kind === 'new' && /HLB/.test(title))).toBe(true);
  });

  it('tells the order of the label where it turns round', () => {
    const { label } = changedConsequences(side([70, 20, 2, 3, 5]), side([70, 20, 3, 2, 5]), wording);
    expect(label?.before.indexOf('Polysorbate 60')).toBeGreaterThan(
      label?.before.indexOf('Sorbitan Stearate') ?? 9,
    );
    expect(label?.after.indexOf('Polysorbate 60')).toBeLessThan(
      label?.after.indexOf('Sorbitan Stearate') ?? 0,
    );
  });
});
