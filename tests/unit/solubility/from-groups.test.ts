import fc from 'fast-check';
import { fedorsParameter, krevelenParameters, type GroupCounts } from '@core/solubility/from-groups';
import { FEDORS_GROUPS, KREVELEN_GROUPS } from '@core/solubility/groups';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const whole = fc.integer({ min: 1, max: 20 });
const scaled = (counts: GroupCounts, by: number): GroupCounts =>
  Object.fromEntries(Object.entries(counts).map(([group, count]) => [group, count * by]));

describe('the tables of groups', () => {
  const published = publishedValues(
    'group-contributions',
    z.object({
      hoftyzerVanKrevelen: z.object({
        groups: z.record(
          z.string(),
          z.object({ Fd: z.number(), Fp: z.number().nullable(), Eh: z.number().nullable() }),
        ),
      }),
      fedors: z.object({ groups: z.record(z.string(), z.object({ E: z.number(), V: z.number() })) }),
    }),
  );

  it('are those of van Krevelen and te Nijenhuis 2009 and of Fedors 1974, row by row', () => {
    expect(KREVELEN_GROUPS).toEqual(published.hoftyzerVanKrevelen.groups);
    expect(FEDORS_GROUPS).toEqual(published.fedors.groups);
  });
});

describe('Hansen parameters from groups', () => {
  it('of an ester, by hand', () => {
    // Ethyl acetate, 2 CH3, CH2, COO: Fd 840 + 270 + 390 = 1500, Fp 490, Eh 7000; molar volume 98.5 (Hansen).
    // 1500 / 98.5 = 15.228; 490 / 98.5 = 4.975; √(7000 / 98.5) = 8.430. Hansen's own: 15.8, 5.3, 7.2.
    const { d, p, h } = krevelenParameters({ CH3: 2, CH2: 1, COO: 1 }, 98.5);
    expect(d.value).toBeCloseTo(15.228, 3);
    expect(p.value).toBeCloseTo(4.975, 3);
    expect(h.value).toBeCloseTo(8.43, 3);
    expect(Math.abs(d.value - 15.8)).toBeLessThan(2);
    expect(Math.abs(p.value - 5.3)).toBeLessThan(2);
    expect(Math.abs(h.value - 7.2)).toBeLessThan(2);
  });

  it('adds polar parts by squares: two hydroxyls are √2 as polar as one, not twice', () => {
    const of = (hydroxyls: number) => krevelenParameters({ CH2: 4, OH: hydroxyls }, 100);
    expect(of(2).p.value).toBeCloseTo(Math.SQRT2 * of(1).p.value, 12);
    expect(of(2).h.value).toBeCloseTo(Math.SQRT2 * of(1).h.value, 12);
  });

  it('stay as they are for a molecule twice as large of the same groups, but for its polar part', () => {
    const counts = fc.record({ CH3: whole, CH2: whole, COO: whole, OH: whole });
    fc.assert(
      fc.property(counts, fc.double({ min: 50, max: 800, noNaN: true }), (groups, volume) => {
        const [once, twice] = [
          krevelenParameters(groups, volume),
          krevelenParameters(scaled(groups, 2), 2 * volume),
        ];
        expect(twice.d.value).toBeCloseTo(once.d.value, 9);
        expect(twice.h.value).toBeCloseTo(once.h.value, 9);
        expect(twice.p.value).toBeCloseTo(once.p.value / Math.SQRT2, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('do not depend on the order in which groups are counted, nor on groups counted as none', () => {
    const one = krevelenParameters({ CH3: 2, CH2: 5, OH: 1 }, 120);
    const other = krevelenParameters({ OH: 1, CH2: 5, COOH: 0, CH3: 2 }, 120);
    for (const key of ['d', 'p', 'h'] as const) expect(other[key].value).toBeCloseTo(one[key].value, 12);
    // A group without a published polar part matters only where it stands in the molecule.
    expect(krevelenParameters({ CH3: 2, CH2: 5, OH: 1, NH2: 0 }, 120).p.value).toBe(one.p.value);
  });

  it('say that they are estimates, each of them', () => {
    for (const worked of Object.values(krevelenParameters({ CH3: 2 }, 60)))
      expect(worked.cautions.join()).toContain('A measured value goes before it.');
  });

  it.each(Object.entries(KREVELEN_GROUPS).filter(([, of]) => of.Fp === null))(
    'refuse %s, whose polar part is not published, and say to take a measured value',
    (group) => {
      const { advice } = refusal(() => krevelenParameters({ CH3: 3, [group]: 1 }, 90), new RegExp(group));
      expect(advice).toContain('measured value');
    },
  );

  it('refuse groups that come to no dispersion: a lone quaternary carbon is no molecule', () => {
    // Fd of C is −70: a negative parameter would square to a likeness that is not there.
    refusal(() => krevelenParameters({ C: 3 }, 60), /dispersion of these groups/);
    refusal(() => krevelenParameters({ C: 6, CH3: 1 }, 60), /dispersion of these groups/);
    expect(krevelenParameters({ C: 1, CH3: 4 }, 120).d.value).toBeCloseTo(1610 / 120, 9);
  });
});

describe('the total parameter from groups', () => {
  it('of glycerin, by hand', () => {
    // 2 CH2 9880, CH 3430, 3 OH on adjacent carbons 65700: 79010 J/mol over 32.2 − 1 + 39 = 70.2 cm³/mol: 33.55.
    const { delta, molarVolume } = fedorsParameter({
      CH2: 2,
      CH: 1,
      'OH (disubstituted or on adjacent C)': 3,
    });
    expect(molarVolume.value).toBeCloseTo(70.2, 9);
    expect(delta.value).toBeCloseTo(Math.sqrt(79010 / 70.2), 9);
    expect(delta.value).toBeCloseTo(33.55, 2);
    expect(delta.steps.map((step) => step.unit)).toEqual(['cm³/mol', 'MPa½']);
  });

  it('does not change with the size of a molecule of the same groups; its volume does', () => {
    fc.assert(
      fc.property(
        fc.record({ CH3: whole, CH2: whole, OH: whole }),
        fc.integer({ min: 2, max: 9 }),
        (groups, by) => {
          const [once, more] = [fedorsParameter(groups), fedorsParameter(scaled(groups, by))];
          expect(more.delta.value).toBeCloseTo(once.delta.value, 9);
          expect(more.molarVolume.value).toBeCloseTo(by * once.molarVolume.value, 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('rises with each hydroxyl, and falls towards that of methylene with each of those', () => {
    const of = (CH2: number, OH: number) => fedorsParameter({ CH3: 1, CH2, OH }).delta.value;
    expect(of(3, 2)).toBeGreaterThan(of(3, 1));
    expect(of(12, 1)).toBeLessThan(of(3, 1));
    expect(of(900, 1)).toBeCloseTo(Math.sqrt(4940 / 16.1), 1);
  });

  it('is refused for groups that take up no room: C and CH alone have a negative volume', () => {
    refusal(() => fedorsParameter({ C: 2 }), /molar volume of these groups/);
    refusal(() => fedorsParameter({ CH: 1 }), /molar volume of these groups/);
  });
});

describe('counts of groups', () => {
  it.each([
    ['Hansen’s', (counts: GroupCounts) => krevelenParameters(counts, 100)],
    ['Fedors’', (counts: GroupCounts) => fedorsParameter(counts)],
  ] as const)(
    'for %s parameters are refused where there are none, or are none of the table',
    (_, attempt) => {
      refusal(() => attempt({}), /no group yet/);
      refusal(() => attempt({ CH3: 0 }), /no group yet/);
      expect(refusal(() => attempt({ CH3: 1, XYZ: 1 }), /no group “XYZ”/).advice).toContain('CH2');
      // Names that every object has are no groups either.
      refusal(() => attempt({ CH3: 1, constructor: 1 }), /no group “constructor”/);
      refusesEach([
        'The count of CH2',
        [...NO_NUMBERS, -1, 1001],
        (count) => attempt({ CH3: 1, CH2: count }),
      ]);
    },
  );

  it('need a molar volume above zero', () => {
    refusesEach(['The molar volume', NOT_POSITIVE, (volume) => krevelenParameters({ CH3: 2 }, volume)]);
  });
});
