import fc from 'fast-check';
import {
  hansenDistance,
  hansenOfBlend,
  hansenTotal,
  LIKENESS,
  parameterOfHlb,
  relativeEnergyDifference,
  type BlendPart,
  type Hansen,
} from '@core/solubility/hansen';
import { PUBLISHED_HANSEN, publishedHansen } from '@core/solubility/published-parameters';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { publishedValues } from '../../reference/published';
import { NEGATIVE, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const part = fc.double({ min: 0, max: 45, noNaN: true });
const substance: fc.Arbitrary<Hansen> = fc.record({ d: part, p: part, h: part });
const NOTHING: Hansen = { d: 0, p: 0, h: 0 };

describe('the distance of two substances', () => {
  it('is nothing to itself, the same both ways, and never more than by way of a third', () => {
    fc.assert(
      fc.property(substance, substance, substance, (a, b, c) => {
        const from = (one: Hansen, other: Hansen) => hansenDistance(one, other).value;
        expect(from(a, a)).toBe(0);
        expect(from(a, b)).toBeCloseTo(from(b, a), 12);
        expect(from(a, c)).toBeLessThanOrEqual(from(a, b) + from(b, c) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('counts dispersion double, the two others once', () => {
    expect(hansenDistance({ d: 3, p: 0, h: 0 }, NOTHING).value).toBe(6);
    expect(hansenDistance({ d: 0, p: 3, h: 0 }, NOTHING).value).toBe(3);
    expect(hansenDistance({ d: 0, p: 0, h: 3 }, NOTHING).value).toBe(3);
    // By hand: √(4 × 1² + 2² + 1²) = 3.
    expect(hansenDistance({ d: 17, p: 6, h: 5 }, { d: 16, p: 4, h: 4 }).value).toBe(3);
  });

  it('over the radius is 1 on the sphere, and half for twice the radius', () => {
    const solute = { d: 17, p: 6, h: 5 };
    const solvent = { d: 16, p: 4, h: 4 };
    expect(relativeEnergyDifference(solute, 3, solvent).value).toBe(1);
    expect(relativeEnergyDifference(solute, 6, solvent).value).toBe(0.5);
    expect(relativeEnergyDifference(solute, 3, solute).value).toBe(0);
    expect(relativeEnergyDifference(solute, 3, solvent).steps.map((step) => step.result)).toEqual([3, 1]);
  });

  it('is never given without what it does not tell', () => {
    expect(hansenDistance(NOTHING, NOTHING).cautions).toEqual([LIKENESS]);
    expect(relativeEnergyDifference(NOTHING, 1, NOTHING).cautions).toEqual([LIKENESS]);
  });

  it('refuses what is no parameter, by the name of the part and of whose it is', () => {
    const good = { d: 16, p: 4, h: 4 };
    for (const [key, name] of [
      ['d', 'The dispersion part'],
      ['p', 'The polar part'],
      ['h', 'The hydrogen-bonding part'],
    ] as const) {
      refusesEach([name, NEGATIVE, (value) => hansenTotal({ ...good, [key]: value })]);
      refusesEach([
        `${name} of the first`,
        NEGATIVE,
        (value) => hansenDistance({ ...good, [key]: value }, good),
      ]);
      refusesEach([
        `${name} of the second`,
        NEGATIVE,
        (value) => hansenDistance(good, { ...good, [key]: value }),
      ]);
    }
    refusesEach(['The radius', NOT_POSITIVE, (value) => relativeEnergyDifference(good, value, good)]);
  });
});

describe('the total parameter', () => {
  it('is the distance from nothing with dispersion counted once, and never less than a part', () => {
    expect(hansenTotal({ d: 2, p: 3, h: 6 }).value).toBe(7);
    fc.assert(
      fc.property(substance, (of) => {
        const { value } = hansenTotal(of);
        expect(value).toBeGreaterThanOrEqual(Math.max(of.d, of.p, of.h) - 1e-9);
        expect(value).toBeLessThanOrEqual(of.d + of.p + of.h + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a mixture of liquids', () => {
  const liquid: fc.Arbitrary<BlendPart> = fc.record({
    d: part,
    p: part,
    h: part,
    volume: fc.double({ min: 0.01, max: 100, noNaN: true }),
  });
  const liquids = fc.array(liquid, { minLength: 1, maxLength: 6 });
  const values = (parts: readonly BlendPart[]) => {
    const { d, p, h } = hansenOfBlend(parts);
    return [d.value, p.value, h.value];
  };
  const close = (got: number[], expected: number[]) =>
    got.forEach((value, at) => expect(value).toBeCloseTo(expected[at] ?? NaN, 8));

  it('has each part between those of its liquids, whatever the order and the unit of volume', () => {
    fc.assert(
      fc.property(liquids, (parts) => {
        const found = values(parts);
        (['d', 'p', 'h'] as const).forEach((key, at) => {
          const all = parts.map((one) => one[key]);
          expect(found[at]).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
          expect(found[at]).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
        });
        close(values([...parts].reverse()), found);
        close(values(parts.map((one) => ({ ...one, volume: one.volume * 29.57 }))), found);
      }),
      { numRuns: 50 },
    );
  });

  it('is the same mixed at once or one after the other, and unmoved by what is not there', () => {
    fc.assert(
      fc.property(liquids, liquid, (parts, last) => {
        const volume = parts.reduce((sum, one) => sum + one.volume, 0);
        const [d = 0, p = 0, h = 0] = values(parts);
        close(values([{ d, p, h, volume }, last]), values([...parts, last]));
        close(values([...parts, { ...last, volume: 0 }]), values(parts));
      }),
      { numRuns: 50 },
    );
  });

  it('lies closest to its solute between two liquids that each lie far off (Hansen: two bad solvents)', () => {
    const solute = { d: 17, p: 8, h: 8 };
    const [polar, oily] = [
      { d: 17, p: 16, h: 16 },
      { d: 17, p: 0, h: 0 },
    ];
    const { d, p, h } = hansenOfBlend([
      { ...polar, volume: 1 },
      { ...oily, volume: 1 },
    ]);
    const mixed = hansenDistance(solute, { d: d.value, p: p.value, h: h.value }).value;
    expect(mixed).toBe(0);
    expect(hansenDistance(solute, polar).value).toBeCloseTo(11.31, 2);
    expect(hansenDistance(solute, oily).value).toBeCloseTo(11.31, 2);
  });

  it('refuses a mixture of nothing, and volumes and parameters that cannot be', () => {
    const good = { d: 16, p: 4, h: 4, volume: 1 };
    refusal(() => hansenOfBlend([]), /no parts by volume/);
    refusal(() => hansenOfBlend([{ ...good, volume: 0 }]), /no parts by volume/);
    refusesEach(['A part', NEGATIVE, (volume) => hansenOfBlend([good, { ...good, volume }])]);
    refusesEach(['The polar part of a liquid', NEGATIVE, (p) => hansenOfBlend([good, { ...good, p }])]);
    refusal(
      () =>
        hansenOfBlend([
          { ...good, volume: 1e308 },
          { ...good, volume: 1e308 },
        ]),
      /beyond|not a number/,
    );
  });
});

describe('the parameter of an emulsifier from its HLB', () => {
  it('rises with HLB, by Beerbower’s relation as Vaughan 1985 prints it', () => {
    // 118 / 54 + 6 at HLB 0, 118 / 14 + 6 at 40, by hand.
    expect(parameterOfHlb(0).value).toBeCloseTo(8.185, 3);
    expect(parameterOfHlb(40).value).toBeCloseTo(14.4286, 4);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 39, noNaN: true }), (hlb) => {
        expect(parameterOfHlb(hlb + 1).value).toBeGreaterThan(parameterOfHlb(hlb).value);
      }),
      { numRuns: 30 },
    );
  });

  it('is refused outside of the scale, before it turns round at 54', () => {
    refusesEach(['HLB', [...NEGATIVE, 40.1, 54, 55], parameterOfHlb]);
  });
});

describe('the published parameters', () => {
  const row = z.object({
    name: z.string(),
    d: z.number(),
    p: z.number(),
    h: z.number(),
    radius: z.number().optional(),
  });
  const { liquids, spheres } = publishedValues(
    'hansen',
    z.object({ liquids: z.array(row), spheres: z.array(row) }),
  );
  const printed = [...liquids, ...spheres];
  const key = ({ d, p, h }: Hansen) => `${d} ${p} ${h}`;

  const renamedWhole: Record<string, string> = {
    'Methyl Alcohol': 'methanol',
    'Propyl Alcohol': '1-propanol',
    'n-Butyl Alcohol': '1-butanol',
    Glycol: 'ethylene glycol',
    'Methyl Pyrrolidone': 'n-methylpyrrolidone',
    'Polymethyl Methacrylate': 'poly(methyl methacrylate)',
  };

  it.each(PUBLISHED_HANSEN)(
    '%s: its three parts stand together in a row of the published table',
    (inci, of) => {
      const rows = printed.filter((one) => key(one) === key(of));
      const word = renamedWhole[inci] ?? inci.split(/[ /]/)[0]?.toLowerCase() ?? '';
      const renamed: Record<string, string> = {
        aqua: 'water',
        alcohol: 'ethanol',
        mek: 'methyl ethyl ketone',
        olea: 'olive oil',
        disiloxane: 'hexamethyldisiloxane',
      };
      const names = rows.map(({ name }) => name.toLowerCase());
      expect(
        names.some((name) => name.includes(renamed[word] ?? word)),
        `${inci}: ${names.join(', ')}`,
      ).toBe(true);
      expect(rows.some(({ name }) => name.includes('(computed)'))).toBe(of.basis === 'computed');
    },
  );

  it('have a radius where, and only where, the tables print a sphere', () => {
    for (const [inci, of] of PUBLISHED_HANSEN) {
      const sphere = printed.find(
        (one) =>
          key(one) === key(of) && (one.radius !== undefined || / R [\d.]+\)|R [\d.]+\)/.test(one.name)),
      );
      const radius = sphere ? (sphere.radius ?? Number(/R ([\d.]+)\)/.exec(sphere.name)?.[1])) : null;
      expect(of.radius, inci).toBe(radius);
    }
  });

  it('are found by INCI name, however it is written, and by no part of a name', () => {
    expect(publishedHansen('GLYCERIN')).toMatchObject({ d: 17.4, p: 12.1, h: 29.3 });
    expect(publishedHansen('  glycerin ')).toEqual(publishedHansen('Glycerin'));
    expect(publishedHansen('Polyglycerin')).toBeNull();
    expect(publishedHansen('Glycer')).toBeNull();
    expect(publishedHansen('')).toBeNull();
  });

  it('hold no name twice', () => {
    const names = PUBLISHED_HANSEN.map(([inci]) => inci.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });

  it('say what a formulator knows: an ester dissolves in an oil sooner than in water', () => {
    const of = (inci: string) => {
      const found = publishedHansen(inci);
      if (!found) throw new Error(inci);
      return found;
    };
    const filter = of('Ethylhexyl Methoxycinnamate');
    expect(hansenDistance(filter, of('Caprylic/Capric Triglyceride')).value).toBeLessThan(4);
    expect(hansenDistance(filter, of('Aqua')).value).toBeGreaterThan(30);
    expect(hansenDistance(of('Urea'), of('Aqua')).value).toBeLessThan(
      hansenDistance(of('Urea'), of('Squalane')).value,
    );
  });
});
