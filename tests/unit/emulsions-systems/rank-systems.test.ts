import { describe, expect, it } from 'vitest';
import { SYSTEM_RULES } from '@core/emulsions/systems/all-rules';
import { rankSystems, type Ranking } from '@core/emulsions/systems/rank-systems';
import type { SystemWishInput } from '@core/emulsions/systems/wish';
import type { Material } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import { Problem } from '@core/problems/problem';
import { figure, make, range } from '../checks/build';
import * as shelf from '../checks/materials';

const priced = (perKg: number): Offer[] => [
  {
    supplier: 'Invented',
    itemCode: '',
    packMg: 1_000_000,
    priceMinor: perKg,
    currency: 'EUR',
    date: '2026-01-01',
  },
];
const oil = shelf.mineralOil();
const library: Material[] = [
  { ...shelf.steareth21(), offers: priced(1400) },
  { ...shelf.steareth2(), offers: priced(1300) },
  { ...shelf.sorbitanOleate(), offers: priced(900) },
  { ...shelf.behentrimonium(), offers: priced(1800) },
  { ...shelf.stearoylGlutamate(), offers: priced(2500), origin: 'naturally derived' },
  make('Quay S', 'Sorbitan Stearate', {
    functions: ['emulsifier'],
    charge: 'non-ionic',
    architecture: 'classic',
    emulsionType: 'w/o',
    form: 'beads',
    consistency: 'waxy',
    figures: { hlb: figure(4.7) },
    offers: priced(700),
  }),
  make('Soap Flakes', 'Sodium Stearate', {
    functions: ['emulsifier'],
    charge: 'anionic',
    emulsionType: 'o/w',
    offers: priced(600),
  }),
  make('Alcohol C', 'Cetearyl Alcohol', {
    functions: ['co-emulsifier'],
    charge: 'non-ionic',
    consistency: 'waxy',
    offers: priced(500),
  }),
  oil,
  shelf.water(),
];

const wish = (parts: Partial<SystemWishInput> = {}): SystemWishInput => ({
  emulsionType: 'o/w',
  feel: 'cream',
  climate: 'temperate',
  ph: 6,
  electrolyte: 'none',
  origins: [],
  currency: 'EUR',
  ...parts,
});
const rank = (parts: Partial<SystemWishInput> = {}, weights = {}, materials = library): Ranking =>
  rankSystems({ wish: wish(parts), oils: [{ material: oil, mass: 20 }], materials, weights });
const names = (ranking: Ranking, index = 0) => ranking.systems[index]?.lines.map((line) => line.name) ?? [];

describe('systems for a target', () => {
  it('come with ratio, level, cost, body and reasons that name rule and source', () => {
    const [first] = rank().systems;
    expect(first).toBeDefined();
    expect(first?.lines.reduce((sum, line) => sum + line.ratioPercent, 0)).toBeCloseTo(100, 9);
    expect(first?.costPerKg).toBeGreaterThan(0);
    expect(['some', 'strong']).toContain(first?.body);
    for (const reason of first?.reasons ?? []) {
      expect(reason.why).not.toBe('');
      expect(reason.source.text).not.toBe('');
      expect(SYSTEM_RULES.map((rule) => rule.id)).toContain(reason.ruleId);
    }
  });
  it('compute the ratio of a non-ionic pair from the oils’ required HLB', () => {
    const pair = rank().systems.find(
      ({ lines }) =>
        lines.length === 2 &&
        lines.some((l) => l.name === 'Harbour 21') &&
        lines.some((l) => l.name === 'Harbour 2'),
    );
    // (10.5 − 4.9)/(15.5 − 4.9) = 52.83 % of the high one (Griffin).
    expect(pair?.offered?.value).toBeCloseTo(10.5, 9);
    expect(pair?.lines.find((line) => line.name === 'Harbour 21')?.ratioPercent).toBeCloseTo(52.83, 2);
  });
  it('put ionic with non-ionic first where frost and heat must both be stood', () => {
    const ranking = rank({ climate: 'both' }, { 'climate-fit': 8 });
    const reason = ranking.systems[0]?.reasons.find((one) => one.ruleId === 'climate-fit');
    expect(reason).toMatchObject({ verdict: 'for', strength: 1 });
  });
  it('never pair a cationic with soap, and say why', () => {
    for (const type of ['o/w', 'cationic o/w'] as const) {
      const ranking = rank({ emulsionType: type, ph: null });
      for (const { lines } of ranking.systems) {
        const both = lines.map((line) => line.name);
        expect(
          both.includes('Velvet Q') && (both.includes('Soap Flakes') || both.includes('Meadow SG')),
        ).toBe(false);
      }
      const refusal = ranking.refused.find(
        (one) =>
          one.ruleId === 'one-sign' && one.names.includes('Velvet Q') && one.names.includes('Soap Flakes'),
      );
      expect(refusal?.why).toMatch(/Soap Flakes \(soap\).*insoluble salt/);
    }
  });
  it('give a conditioner a cationic with a non-ionic partner', () => {
    const ranking = rank({ emulsionType: 'cationic o/w' });
    expect(names(ranking)).toContain('Velvet Q');
    expect(names(ranking)).toContain('Harbour 21');
  });
  it('give w/o a waxy and a liquid emulsifier', () => {
    const first = names(rank({ emulsionType: 'w/o' }));
    expect(first).toContain('Quay O');
    expect(first.some((name) => ['Quay S', 'Harbour 2'].includes(name))).toBe(true);
    expect(first).not.toContain('Harbour 21');
  });
  it('hold soap against a low pH, and refuse what does not work at the pH', () => {
    const soap = (ph: number) =>
      rank({ ph }).systems.find(({ lines }) => lines.some((line) => line.name === 'Soap Flakes'))?.reasons ??
      [];
    expect(soap(5.5).some((reason) => reason.ruleId === 'works-at-ph')).toBe(true);
    expect(soap(9).some((reason) => reason.ruleId === 'works-at-ph')).toBe(false);
    const narrow = library.map((one) =>
      one.tradeName === 'Harbour 21' ? { ...one, figures: { ...one.figures, workingPh: range(4, 5) } } : one,
    );
    expect(
      rank({ ph: 8 }, {}, narrow).systems.some(({ lines }) => lines.some((l) => l.name === 'Harbour 21')),
    ).toBe(false);
  });
  it('take a cleansing surfactant last', () => {
    const sulfate = make('Suds', 'Sodium Lauryl Sulfate', {
      functions: ['emulsifier', 'surfactant'],
      charge: 'anionic',
      emulsionType: 'o/w',
      hazards: ['irritant'],
    });
    const found = rank({}, {}, [...library, sulfate]).systems.find(({ lines }) =>
      lines.some((l) => l.name === 'Suds'),
    );
    const reason = found?.reasons.find((one) => one.ruleId === 'mild-to-skin');
    expect(found === undefined || reason?.verdict === 'against').toBe(true);
    expect(names(rank({}, {}, [...library, sulfate]))).not.toContain('Suds');
  });
  it('change their order with the weights', () => {
    const costly = rank({ climate: 'both' }, { cost: 50, 'climate-fit': 0 }).systems[0]?.costPerKg ?? NaN;
    const hardy = rank({ climate: 'both' }, { cost: 0, 'climate-fit': 50 }).systems[0]?.costPerKg ?? NaN;
    expect(costly).toBeLessThan(hardy);
    const reason = rank({}, { cost: 50 }).systems[0]?.reasons.find((one) => one.ruleId === 'cost');
    expect(reason?.weight).toBe(50);
  });
  it('stay within usage ranges', () => {
    const usage = {
      minPpm: 10_000,
      typicalPpm: null,
      maxPpm: 12_000,
      provenance: 'supplier',
      source: '',
    } as const;
    const bounded = library.map((one) => (one.tradeName === 'Harbour 21' ? { ...one, usage } : one));
    for (const { lines } of rank({}, {}, bounded).systems) {
      const line = lines.find((each) => each.name === 'Harbour 21');
      if (line) expect(line.percent).toBeLessThanOrEqual(1.2 + 1e-9);
    }
  });
  it('keep to a level that is wished, and refuse a wish that ends before it begins', () => {
    for (const { levelPercent } of rank({ levelFrom: 3, levelTo: 4 }).systems) {
      expect(levelPercent).toBeGreaterThanOrEqual(3 - 1e-9);
      expect(levelPercent).toBeLessThanOrEqual(4 + 1e-9);
    }
    expect(() => rank({ levelFrom: 5, levelTo: 4 })).toThrow(Problem);
  });
  it('meet a target set by hand in place of the oils’', () => {
    const { systems } = rankSystems({
      wish: wish(),
      oils: [{ material: oil, mass: 20 }],
      materials: library,
      targetHlb: 8,
    });
    const pairs = systems.filter(({ offered, lines }) => offered !== null && lines.length === 2);
    expect(pairs.some(({ offered }) => Math.abs((offered?.value ?? 0) - 8) < 1e-9)).toBe(true);
  });
  it('are the same whatever the order of the library', () => {
    expect(rank({}, {}, [...library].reverse()).systems).toEqual(rank().systems);
  });
  it('say which oils have no required HLB, and leave HLB pairs out when none has', () => {
    const bare = make('Seedling', 'Camelina Sativa Seed Oil', { functions: ['emollient'] });
    const ranking = rankSystems({ wish: wish(), oils: [{ material: bare, mass: 10 }], materials: library });
    expect(ranking.required.value).toBeNull();
    expect(ranking.cautions.join(' ')).toContain('None of the oils');
    const mixed = rankSystems({
      wish: wish(),
      oils: [
        { material: bare, mass: 10 },
        { material: oil, mass: 10 },
      ],
      materials: library,
    });
    expect(mixed.cautions.join(' ')).toContain('Seedling');
  });
  it('leave archived materials out', () => {
    const archived = library.map((one) => ({
      ...one,
      status: one.tradeName === 'Harbour 21' ? ('archived' as const) : one.status,
    }));
    expect(
      rank({}, {}, archived).systems.some(({ lines }) => lines.some((line) => line.name === 'Harbour 21')),
    ).toBe(false);
  });
  it('build body with a fatty alcohol whatever function it was given, but not beside one among the oils', () => {
    const thickener = library.map((one) =>
      one.tradeName === 'Alcohol C' ? { ...one, functions: ['thickener' as const] } : one,
    );
    const alcohol = thickener.find((one) => one.tradeName === 'Alcohol C')!;
    const rich = rank({ feel: 'rich cream' }, {}, thickener).systems[0];
    expect(rich?.lines.map((line) => line.name)).toContain('Alcohol C');
    expect(rich?.reasons.find((one) => one.ruleId === 'gel-network')?.verdict).toBe('for');
    const withIt = rankSystems({
      wish: wish({ feel: 'rich cream' }),
      oils: [
        { material: oil, mass: 20 },
        { material: alcohol, mass: 4 },
      ],
      materials: thickener,
    }).systems[0];
    expect(withIt?.lines.map((line) => line.name)).not.toContain('Alcohol C');
    expect(withIt?.body).toBe('strong');
    expect(withIt?.reasons.find((one) => one.ruleId === 'gel-network')?.verdict).toBe('for');
  });
  it('never take far more emulsifier than the oil asks for, unless it is wished', () => {
    const least = library.map((one) =>
      one.tradeName === 'Harbour 2'
        ? {
            ...one,
            usage: {
              minPpm: 40_000,
              typicalPpm: null,
              maxPpm: 80_000,
              provenance: 'supplier',
              source: '',
            } as const,
          }
        : one,
    );
    // 20 % of oil usually takes 4 % of a non-ionic system: one part to five (common practice).
    for (const { levelPercent } of rank({ feel: 'milk' }, {}, least).systems)
      expect(levelPercent).toBeLessThanOrEqual(1.5 * 4 + 1e-9);
    const asked = rank({ feel: 'milk', levelFrom: 6 }, {}, least).systems;
    expect(asked.length).toBeGreaterThan(0);
    for (const { levelPercent } of asked) expect(levelPercent).toBeGreaterThanOrEqual(6 - 1e-9);
  });
  it('show at most two of one main emulsifier while the library gives others', () => {
    const { systems } = rankSystems({
      wish: wish(),
      oils: [{ material: oil, mass: 20 }],
      materials: library,
      limit: 3,
    });
    const mains = systems.map(
      ({ lines }) => lines.reduce((most, line) => (line.percent > most.percent ? line : most)).name,
    );
    expect(new Set(mains).size).toBeGreaterThan(1);
  });
  it('offer no lone low-HLB emulsifier for o/w when the oils say nothing of HLB', () => {
    const bare = make('Seedling', 'Camelina Sativa Seed Oil', { functions: ['emollient'] });
    const { systems } = rankSystems({
      wish: wish(),
      oils: [{ material: bare, mass: 10 }],
      materials: library,
    });
    const alone = systems.filter(({ lines }) => lines.filter((l) => l.role === 'emulsifier').length === 1);
    for (const { offered } of alone) expect(offered?.value ?? 10).toBeGreaterThanOrEqual(8);
  });
  it('say so when no non-ionic reaches the target, and refuse a target off the scale', () => {
    const at = (targetHlb: number) =>
      rankSystems({ wish: wish(), oils: [{ material: oil, mass: 20 }], materials: library, targetHlb });
    expect(at(22).cautions.join(' ')).toMatch(/No non-ionic of the library reaches HLB 22\.0/);
    expect(at(10.5).cautions.join(' ')).not.toContain('reaches');
    for (const target of [-4, 500, NaN]) expect(() => at(target)).toThrow(Problem);
  });
  it('refuse no oils, no emulsifiers, and weights that make no sense', () => {
    const refused = (run: () => unknown) => expect(run).toThrow(Problem);
    refused(() => rankSystems({ wish: wish(), oils: [], materials: library }));
    refused(() => rankSystems({ wish: wish(), oils: [{ material: oil, mass: 0 }], materials: library }));
    refused(() => rank({}, {}, [shelf.water()]));
    refused(() => rank({}, { cost: -1 }));
    refused(() => rank({}, { cost: NaN }));
    refused(() => rank({ ph: 15 }));
  });
});
