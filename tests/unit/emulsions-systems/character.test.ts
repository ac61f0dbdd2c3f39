import fc from 'fast-check';
import {
  bodyCharacter,
  dispersesInWater,
  hlbSpread,
  isCationicPartner,
  isClassicNonIonic,
  meanHlbApplies,
  missingInWaterInOil,
  pairingFacts,
  servesType,
  workingArchitecture,
  workingCharge,
  worksAsSoap,
  type PairingFacts,
} from '@core/emulsions/systems/character';
import { demandBand, isOil, oilPhaseDemand, targetCautions } from '@core/emulsions/systems/oil-phase';
import { usageRange, USUAL_HIGHEST_USE } from '@core/emulsions/usage-range';
import type { Material } from '@core/materials/material';
import { CHARGES, FORMS } from '@core/materials/vocabulary';
import { describe, expect, it } from 'vitest';
import { figure, make, range } from '../checks/build';

const emulsifier = (inci: string, parts: Parameters<typeof make>[2] = {}): Material =>
  make(inci, inci, { functions: ['emulsifier'], ...parts });

describe('the charge that an emulsifier works by', () => {
  it.each([
    // Soap is anionic whatever was recorded, and so is a fatty acid that a base makes one.
    ['Sodium Stearate', 'non-ionic', 'anionic'],
    ['Stearic Acid', null, 'anionic'],
    // What is recorded goes before what the name tells.
    ['Behentrimonium Chloride', 'non-ionic', 'non-ionic'],
    ['Behentrimonium Chloride', null, 'cationic'],
    ['Sodium Cetearyl Sulfate', null, 'anionic'],
    ['Carbomer', null, 'anionic'],
    ['Polysorbate 60', null, null],
    ['Polysorbate 60', 'non-ionic', 'non-ionic'],
  ] as const)('%s, recorded as %s: %s', (inci, charge, works) => {
    expect(workingCharge(emulsifier(inci, { charge }))).toBe(works);
  });

  it('of a soap made from an acid that is recorded as its own base is none: it is the base', () => {
    expect(worksAsSoap(make('Both', 'Stearic Acid', { functions: ['base'] }))).toBe(false);
    expect(worksAsSoap(make('Acid', 'Stearic Acid'))).toBe(true);
  });
});

describe('what a mean HLB describes', () => {
  it('classic non-ionics alone: no ionic, no polymer, no soap that is recorded as non-ionic', () => {
    const classic = { charge: 'non-ionic', architecture: 'classic' } as const;
    expect(meanHlbApplies(emulsifier('Polysorbate 60', classic))).toBe(true);
    expect(meanHlbApplies(emulsifier('Polysorbate 60', { charge: 'non-ionic' }))).toBe(true);
    expect(meanHlbApplies(emulsifier('Polysorbate 60'))).toBe(false);
    expect(meanHlbApplies(emulsifier('Sodium Stearate', classic))).toBe(false);
    expect(meanHlbApplies(emulsifier('Acrylates/C10-30 Alkyl Acrylate Crosspolymer', classic))).toBe(false);
    expect(
      meanHlbApplies(emulsifier('PEG-30 Dipolyhydroxystearate', { ...classic, architecture: 'polymeric' })),
    ).toBe(false);
  });

  it('carbomer and its relatives are polymers whatever was recorded, particles stay what they are', () => {
    expect(workingArchitecture(emulsifier('Carbomer', { architecture: 'classic' }))).toBe('polymeric');
    expect(workingArchitecture(emulsifier('Silica', { architecture: 'particulate' }))).toBe('particulate');
    expect(workingArchitecture(emulsifier('Polysorbate 60'))).toBeNull();
  });

  it('lies within its recorded spread, whichever of the figures are known', () => {
    const number = fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(number, number, number, (a, b, c) => {
        const [low, value, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        for (const known of [figure(value, low, high), range(low, high), figure(value), range(low, null)]) {
          const spread = hlbSpread({ figures: { hlb: known } })!;
          const { hlb } = pairingFacts(emulsifier('Polysorbate 60', { figures: { hlb: known } }));
          expect(spread.low).toBeLessThanOrEqual(hlb!);
          expect(spread.high).toBeGreaterThanOrEqual(hlb!);
        }
      }),
    );
    expect(hlbSpread({ figures: {} })).toBeNull();
  });
});

describe('body', () => {
  it('is told by the consistency, else by the form, else not at all', () => {
    expect(bodyCharacter({ consistency: 'waxy', form: 'liquid' })).toBe('waxy');
    expect(bodyCharacter({ consistency: 'oily', form: 'pellets' })).toBe('liquid');
    expect(bodyCharacter({ consistency: null, form: 'pellets' })).toBe('waxy');
    expect(bodyCharacter({ consistency: null, form: 'viscous liquid' })).toBe('liquid');
    expect(bodyCharacter({ consistency: null, form: 'powder' })).toBeNull();
    expect(bodyCharacter({ consistency: null, form: null })).toBeNull();
    for (const form of FORMS)
      expect(['waxy', 'liquid', null]).toContain(bodyCharacter({ consistency: null, form }));
  });
});

const facts = fc.record<PairingFacts>({
  charge: fc.constantFrom(null, ...CHARGES),
  architecture: fc.constantFrom(null, 'classic', 'polymeric', 'particulate'),
  hlb: fc.option(fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10)),
  character: fc.constantFrom(null, 'waxy', 'liquid'),
  emulsionType: fc.constantFrom(null, 'o/w', 'w/o', 'both'),
});
const one = (parts: Partial<PairingFacts>): PairingFacts => ({
  ...{ charge: 'non-ionic', architecture: 'classic', hlb: null, character: null, emulsionType: null },
  ...parts,
});

describe('what a w/o emulsion lacks', () => {
  it('is a waxy and a liquid emulsifier of low HLB, unless one holds the film alone', () => {
    const waxy = one({ hlb: 4.7, character: 'waxy' });
    const liquid = one({ hlb: 3.7, character: 'liquid' });
    expect(missingInWaterInOil([])).toEqual(['waxy', 'liquid']);
    expect(missingInWaterInOil([waxy])).toEqual(['liquid']);
    expect(missingInWaterInOil([waxy, liquid])).toEqual([]);
    expect(missingInWaterInOil([one({ hlb: 8.1, character: 'waxy' }), liquid])).toEqual(['waxy']);
    expect(missingInWaterInOil([one({ architecture: 'polymeric', emulsionType: 'w/o' })])).toEqual([]);
    expect(missingInWaterInOil([one({ architecture: 'polymeric', emulsionType: 'o/w' })])).toHaveLength(2);
  });

  it('never grows when an emulsifier comes in, nor hangs on their order', () => {
    fc.assert(
      fc.property(fc.array(facts, { maxLength: 4 }), facts, (members, more) => {
        const missing = missingInWaterInOil(members);
        expect(missingInWaterInOil([...members].reverse())).toEqual(missing);
        for (const still of missingInWaterInOil([...members, more])) expect(missing).toContain(still);
      }),
    );
  });
});

describe('whether an emulsifier disperses in water', () => {
  it('is so by a charge, else from HLB 10 on; what is for w/o alone does not; else it is not known', () => {
    fc.assert(
      fc.property(facts, (of) => {
        const told = dispersesInWater(of);
        if (of.charge !== null && of.charge !== 'non-ionic') expect(told).toBe(true);
        else if (of.hlb !== null) expect(told).toBe(of.hlb >= 10);
        else expect(told).toBe(of.emulsionType === 'w/o' ? false : null);
        // The partner that a cationic wants is a non-ionic of HLB 8 and more, known to be both.
        expect(isCationicPartner(of)).toBe(of.charge === 'non-ionic' && of.hlb !== null && of.hlb >= 8);
        expect(isClassicNonIonic(of)).toBe(
          of.charge === 'non-ionic' && (of.architecture === null || of.architecture === 'classic'),
        );
      }),
    );
  });

  it('serves the type that is recorded, and may serve either where none is', () => {
    expect([null, 'both', 'o/w', 'w/o'].map((of) => servesType(of as 'both', 'o/w'))).toEqual([
      ...[true, true, true, false],
    ]);
  });
});

describe('an oil phase', () => {
  const oil = (required: number | null, mass: number, parts: Parameters<typeof make>[2] = {}) => ({
    material: make(`Oil ${required}`, 'Squalane', {
      ...{ functions: ['emollient'], phaseOfUse: 'oil' },
      figures: required === null ? {} : { requiredHlbOw: figure(required) },
      ...parts,
    }),
    mass,
  });

  it('asks for the mean of those that are known, says how much that is, and names the others', () => {
    const found = oilPhaseDemand([oil(10, 30), oil(14, 10), oil(null, 10)], 'o/w');
    expect(found.value).toBeCloseTo(11, 12);
    expect(found.covered).toBeCloseTo(0.8, 12);
    expect(found.unknown).toEqual(['Oil null']);
    const none = oilPhaseDemand([oil(null, 10)], 'o/w');
    expect(none).toMatchObject({ value: null, covered: 0 });
    expect(demandBand(none)).toBeNull();
    expect(oilPhaseDemand([oil(10, 30)], 'w/o').value).toBeNull();
  });

  it('asks for a figure between those of its oils, whatever the size of the batch', () => {
    const lines = fc.array(fc.tuple(fc.integer({ min: 20, max: 180 }), fc.integer({ min: 1, max: 500 })), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(lines, fc.integer({ min: 1, max: 50 }), (rows, by) => {
        const at = (scale: number) =>
          oilPhaseDemand(
            rows.map(([tenths, mass]) => oil(tenths / 10, mass * scale)),
            'o/w',
          ).value!;
        expect(at(by)).toBeCloseTo(at(1), 9);
        const figures = rows.map(([tenths]) => tenths / 10);
        expect(at(1)).toBeGreaterThanOrEqual(Math.min(...figures) - 1e-9);
        expect(at(1)).toBeLessThanOrEqual(Math.max(...figures) + 1e-9);
      }),
    );
  });

  it('is of what has to be emulsified: an emollient of the oil phase, or what has a required HLB; no emulsifier', () => {
    expect(isOil(oil(null, 1).material)).toBe(true);
    expect(isOil(oil(null, 1, { phaseOfUse: 'water' }).material)).toBe(false);
    expect(isOil(oil(15, 1, { functions: ['co-emulsifier'], phaseOfUse: null }).material)).toBe(true);
    expect(isOil(oil(15, 1, { functions: ['emulsifier', 'emollient'] }).material)).toBe(false);
  });

  it('warns of a target below 8 for o/w, where Griffin’s scale ends, and of no other', () => {
    expect(targetCautions(7.9, 'o/w')).toHaveLength(1);
    expect([targetCautions(8, 'o/w'), targetCautions(5, 'w/o'), targetCautions(null, 'o/w')]).toEqual([
      [],
      [],
      [],
    ]);
  });
});

describe('between which levels a material may be used', () => {
  const usage = (minPpm: number | null, maxPpm: number | null) => usageRange({ usage: { minPpm, maxPpm } });
  it('as recorded; where no highest use is, the usual one is assumed, and said to be', () => {
    expect(usage(5_000, 40_000)).toEqual({ minPercent: 0.5, maxPercent: 4, maxAssumed: false });
    expect(usage(null, 40_000)).toEqual({ minPercent: 0, maxPercent: 4, maxAssumed: false });
    expect(usage(5_000, null)).toEqual({ minPercent: 0.5, maxPercent: USUAL_HIGHEST_USE, maxAssumed: true });
    // A lowest use above it is not forbidden by an assumption.
    expect(usage(120_000, null)).toMatchObject({ minPercent: 12, maxPercent: 12, maxAssumed: true });
    expect(usageRange({ usage: null })).toMatchObject({ minPercent: 0, maxPercent: USUAL_HIGHEST_USE });
  });
});
