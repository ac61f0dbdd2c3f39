import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendForTarget, partnerHlbFor } from '@core/emulsions/blend-two';
import { daviesHlb } from '@core/emulsions/davies';
import { DAVIES_GROUP_IDS, DAVIES_GROUPS } from '@core/emulsions/davies-groups';
import { eacnMix } from '@core/emulsions/eacn';
import { ccMix, moleFractions } from '@core/emulsions/cc';
import { emulsifierMasses } from '@core/emulsions/emulsifier-masses';
import { griffinEster, griffinEthoxylate, griffinMass, griffinPolyol } from '@core/emulsions/griffin';
import { hlbGap, meanBand, type HlbBand } from '@core/emulsions/hlb-band';
import { hldIonic, hldMeaning, hldNonionic } from '@core/emulsions/hld';
import { CLOSE_PACKING, internalPhase } from '@core/emulsions/internal-phase';
import { outsideWorkingPh, soapAtPh } from '@core/emulsions/working-ph';
import { figure, make, nextId, range } from '../checks/build';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const hlb = fc.double({ min: 0, max: 20, noNaN: true });
const molar = fc.double({ min: 40, max: 2000, noNaN: true });

describe('Griffin’s ways agree where they describe one molecule', () => {
  it('by per cent of oxyethylene and by mass of the hydrophilic part', () => {
    fc.assert(
      fc.property(molar, fc.double({ min: 0, max: 1, noNaN: true }), (whole, part) => {
        const byMass = griffinMass(whole * part, whole).value;
        expect(griffinEthoxylate(100 * part).value).toBeCloseTo(byMass, 9);
        expect(griffinPolyol(100 * part, 0).value).toBeCloseTo(byMass, 9);
        expect(griffinPolyol(40 * part, 60 * part).value).toBeCloseTo(byMass, 9);
      }),
    );
  });

  it('by saponification and acid value: of a monoester the part is what is not fatty acid', () => {
    // S = 56106 / M(ester), A = 56106 / M(acid): 20 (1 − M(acid)/M(ester)), the mass of the rest.
    fc.assert(
      fc.property(molar, fc.double({ min: 1, max: 500, noNaN: true }), (acid, rest) => {
        const ester = acid + rest;
        expect(griffinEster(56_106 / ester, 56_106 / acid).value).toBeCloseTo(
          griffinMass(rest, ester).value,
          9,
        );
      }),
    );
  });

  it.each([
    ['Oxyethylene', [...NEGATIVE, 100.1], (x: number) => griffinEthoxylate(x)],
    ['Polyol', [...NEGATIVE, 100.1], (x: number) => griffinPolyol(0, x)],
    ['Saponification value', [...NEGATIVE, 201], (x: number) => griffinEster(x, 200)],
    ['Acid value of the fatty acid', NOT_POSITIVE, (x: number) => griffinEster(0, x)],
    ['Molar mass of the hydrophilic part', NEGATIVE, (x: number) => griffinMass(x, 100)],
    ['Molar mass', NOT_POSITIVE, (x: number) => griffinMass(0, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('oxyethylene and polyol together are no more than the molecule', () => {
    expect(griffinPolyol(60, 40).value).toBe(20);
    refusal(() => griffinPolyol(60, 40.1), /together is 100.1/);
    expect(refusal(() => griffinMass(101, 100), /heavier than the whole/).fields[0]?.path).toBe(
      'Molar mass of the hydrophilic part',
    );
  });
});

describe('Davies’ groups', () => {
  const counts = fc.dictionary(fc.constantFrom(...DAVIES_GROUP_IDS), fc.integer({ min: 0, max: 20 }), {
    minKeys: 1,
  });
  it('add up, one by one and in any order, from seven', () => {
    fc.assert(
      fc.property(counts, counts, (one, other) => {
        const both: Record<string, number> = { ...one };
        for (const [id, count] of Object.entries(other)) both[id] = (both[id] ?? 0) + count;
        expect(daviesHlb(both).value - 7).toBeCloseTo(
          daviesHlb(one).value - 7 + daviesHlb(other).value - 7,
          8,
        );
        const backwards = Object.fromEntries(Object.entries(both).reverse());
        expect(daviesHlb(backwards).value).toBeCloseTo(daviesHlb(both).value, 9);
      }),
    );
    for (const id of DAVIES_GROUP_IDS) {
      expect(daviesHlb({ [id]: 0 }).value).toBe(7);
      expect(daviesHlb({ [id]: 1 }).value).toBeCloseTo(7 + DAVIES_GROUPS[id].number, 12);
    }
  });
});

describe('two for a target', () => {
  it('mixed as computed have the target HLB, and their masses are the total', () => {
    fc.assert(
      fc.property(
        hlb,
        hlb,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        (a, b, part, total) => {
          fc.pre(Math.abs(a - b) > 0.01);
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const target = low + part * (high - low);
          const masses = emulsifierMasses(target, low, high, total);
          expect(masses.lowMass + masses.highMass).toBeCloseTo(total, 9);
          expect(masses.lowMass * low + masses.highMass * high).toBeCloseTo(total * target, 6);
          const { highPercent } = blendForTarget({ targetHlb: target, lowHlb: low, highHlb: high });
          // Put the other way: the partner that the low one needs at its share is the high one.
          if (highPercent > 1)
            expect(partnerHlbFor(target, low, 100 - highPercent).value).toBeCloseTo(high, 6);
        },
      ),
    );
  });

  it.each([
    ['Share of the kept one', [...NEGATIVE, 100.1], (x: number) => partnerHlbFor(10, 5, x)],
    ['Total of both emulsifiers', NEGATIVE, (x: number) => emulsifierMasses(10, 5, 15, x)],
    ['EACN of an oil', [...NO_NUMBERS, -20.1, 40.1], (x: number) => eacnMix([{ fraction: 1, eacn: x }])],
    ['Cc of a surfactant', [...NO_NUMBERS, -20.1, 20.1], (x: number) => ccMix([{ moleFraction: 1, cc: x }])],
    ['Mass of a surfactant', NEGATIVE, (x: number) => moleFractions([{ mass: x, molarMass: 300 }])],
    [
      'Molar mass of a surfactant',
      [...NO_NUMBERS, 0, 0.9],
      (x: number) => moleFractions([{ mass: 1, molarMass: x }]),
    ],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});

describe('bands of HLB', () => {
  const quarter = fc.nat(80).map((one) => one / 4);
  const band = fc.tuple(quarter, quarter, quarter).map((all): HlbBand => {
    const [low = 0, value = 0, high = 0] = [...all].sort((a, b) => a - b);
    return { low, value, high };
  });

  it('are apart by what lies between them, with the sign of which is higher, and not at all where they meet', () => {
    fc.assert(
      fc.property(band, band, (offered, required) => {
        const gap = hlbGap(offered, required);
        expect(hlbGap(required, offered)).toBeCloseTo(-gap, 12);
        const meet = offered.low <= required.high && required.low <= offered.high;
        if (meet) expect(gap).toBe(0);
        else expect(gap > 0).toBe(offered.low > required.high);
        expect(Math.abs(gap)).toBeLessThanOrEqual(Math.abs(offered.value - required.value) + 1e-9);
      }),
    );
  });

  it('of a blend lie between their parts’, and keep their order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(band, fc.double({ min: 0.1, max: 50, noNaN: true })), {
          minLength: 1,
          maxLength: 6,
        }),
        (rows) => {
          const mean = meanBand(rows.map(([one, mass]) => ({ ...one, mass })));
          if (!mean) throw new Error('A mean was expected.');
          expect(mean.low).toBeLessThanOrEqual(mean.value + 1e-9);
          expect(mean.value).toBeLessThanOrEqual(mean.high + 1e-9);
          expect(mean.value).toBeGreaterThanOrEqual(Math.min(...rows.map(([one]) => one.value)) - 1e-9);
        },
      ),
    );
    expect(meanBand([])).toBeNull();
    expect(meanBand([{ mass: 0, low: 1, value: 2, high: 3 }])).toBeNull();
  });
});

describe('HLD', () => {
  const small = fc.double({ min: -5, max: 5, noNaN: true });
  it('is linear in temperature, EACN, Cc and alcohol, and for ionics in the logarithm of salt', () => {
    fc.assert(
      fc.property(
        small,
        small,
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 5, max: 80, noNaN: true }),
        (cc, alcoholTerm, salt, t) => {
          const common = { eacn: 6, cc, alcoholTerm, k: 0.17, salinityPercent: salt };
          const ionic = { ...common, alphaT: 0.01 };
          const here = hldIonic(ionic, t).value;
          expect(hldIonic(ionic, t + 10).value - here).toBeCloseTo(-0.1, 9);
          expect(hldIonic({ ...ionic, eacn: 7 }, t).value - here).toBeCloseTo(-0.17, 9);
          expect(hldIonic({ ...ionic, cc: cc + 1 }, t).value - here).toBeCloseTo(1, 9);
          expect(hldIonic({ ...ionic, salinityPercent: salt * Math.E }, t).value - here).toBeCloseTo(1, 9);
          const nonionic = { ...common, b: 0.13, cT: 0.06 };
          const there = hldNonionic(nonionic, t).value;
          expect(hldNonionic(nonionic, t + 10).value - there).toBeCloseTo(0.6, 9);
          expect(hldNonionic({ ...nonionic, salinityPercent: salt + 1 }, t).value - there).toBeCloseTo(
            0.13,
            9,
          );
          expect(hldNonionic({ ...nonionic, alcoholTerm: alcoholTerm + 1 }, t).value - there).toBeCloseTo(
            1,
            9,
          );
        },
      ),
    );
  });

  it('says which way it favours, and nothing within a tenth of zero', () => {
    expect([-0.1, 0.1].map(hldMeaning)).toEqual(['favours o/w', 'favours w/o']);
    for (const near of [-0.099, 0, 0.099]) expect(hldMeaning(near)).toMatch(/near the inversion/);
    refusal(() => hldMeaning(Number.NaN), /HLD is not a number/);
  });
});

describe('the inner phase', () => {
  const oil = make('Oil', 'Squalane', {
    functions: ['emollient'],
    phaseOfUse: 'oil',
    figures: { density: figure(0.8) },
  });
  const water = make('Water', 'Aqua', { phaseOfUse: 'water', figures: { density: figure(1) } });
  const dose = (material: typeof oil, percent: number) => ({
    lineId: nextId(),
    material,
    ppm: percent * 10_000,
  });

  it('worked by hand: 40 g of 0.8 in 60 g of water fills 50 of 110 mL: 45.4545 %', () => {
    const doses = [dose(oil, 40), dose(water, 60)];
    const found = internalPhase(doses, 'o/w');
    expect(found?.worked.value).toBeCloseTo(45.4545, 4);
    expect(found?.worked.cautions).toEqual([]);
    expect(found?.lines).toEqual([doses[0]?.lineId]);
    // The other way round it is all the rest.
    expect(internalPhase(doses, 'w/o')?.worked.value).toBeCloseTo(54.5455, 4);
    // Water that no line tells of counts as water.
    expect(internalPhase([doses[0]!], 'o/w', 600_000)?.worked.value).toBeCloseTo(45.4545, 4);
  });

  it('says how much of the mass has no density, and has none without both phases', () => {
    const plain = { ...oil, figures: {} };
    expect(internalPhase([dose(plain, 40), dose(water, 60)], 'o/w')?.worked.cautions[0]).toMatch(
      /For 40 % of the mass/,
    );
    expect(internalPhase([dose(oil, 100)], 'o/w')).toBeNull();
    expect(internalPhase([dose(water, 100)], 'w/o')).toBeNull();
    expect(internalPhase([], 'o/w')).toBeNull();
    // Kepler's packing: four spheres in the cube of side 2√2 r.
    expect(CLOSE_PACKING).toBeCloseTo((4 * (4 / 3) * Math.PI) / (2 * Math.SQRT2) ** 3, 12);
  });
});

describe('pH at which emulsifiers work', () => {
  it.each([
    [null, 3, 9, false],
    [range(4, 8), 4, 8, false],
    [range(4, 8), 3.9, 8, true],
    [range(4, 8), 4, 8.1, true],
    [range(4, null), 4, 14, false],
    [range(null, 8), 0, 8.1, true],
  ])('window %j, product %d to %d: outside %s', (window, low, high, is) => {
    const one = make('E', 'Ceteareth-20', window ? { figures: { workingPh: window } } : {});
    expect(outsideWorkingPh(one, { low, high })).toBe(is);
  });

  it.each([
    [8, null],
    [7.5, { strength: 0.25, fails: false }],
    [7, { strength: 0.5, fails: false }],
    [6.9, { strength: 0.55, fails: true }],
    [5, { strength: 1, fails: true }],
  ])('soap at pH %d: %j', (low, state) => {
    const found = soapAtPh({ low, high: 9 });
    expect(found && { ...found, strength: Number(found.strength.toFixed(6)) }).toEqual(state);
  });
});
