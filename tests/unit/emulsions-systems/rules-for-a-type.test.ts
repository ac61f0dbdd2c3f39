import { describe, expect, it } from 'vitest';
import { figure, make } from '../checks/build';
import {
  system,
  judged,
  verdict,
  STEARETH_21,
  STEARETH_2,
  QUAT,
  GLUTAMATE,
  CETEARYL,
  STEARYL,
  LIQUID_WO,
  WAXY_WO,
  POLYMERIC_WO,
} from './judged';

describe('rules for a type', () => {
  it('waxy-with-liquid: w/o wants both of low HLB, or a polymer that holds the film', () => {
    const wo = { emulsionType: 'w/o' as const };
    expect(
      verdict(
        'waxy-with-liquid',
        system([
          [WAXY_WO, 2],
          [LIQUID_WO, 2],
        ]),
        wo,
      ),
    ).toBe('for');
    expect(judged('waxy-with-liquid', system([[WAXY_WO, 2]]), wo)).toMatchObject({
      verdict: 'against',
      warns: true,
      why: expect.stringContaining('liquid partner'),
    });
    expect(judged('waxy-with-liquid', system([[LIQUID_WO, 2]]), wo)).toMatchObject({
      why: expect.stringContaining('waxy partner'),
    });
    expect(verdict('waxy-with-liquid', system([[POLYMERIC_WO, 2]]), wo)).toBe('neutral');
    expect(verdict('waxy-with-liquid', system([[WAXY_WO, 2]]))).toBe('neutral');
  });

  it('cationic-with-partner: a non-ionic of HLB 8 or more that is there in earnest', () => {
    const type = { emulsionType: 'cationic o/w' as const };
    expect(
      verdict(
        'cationic-with-partner',
        system([
          [QUAT, 2],
          [STEARETH_21, 2],
        ]),
        type,
      ),
    ).toBe('for');
    // Less than a tenth of the system is a trace.
    expect(
      judged(
        'cationic-with-partner',
        system([
          [QUAT, 4],
          [STEARETH_21, 0.1],
        ]),
        type,
      ),
    ).toMatchObject({ verdict: 'against', warns: false });
    expect(
      judged(
        'cationic-with-partner',
        system([
          [QUAT, 2],
          [STEARETH_2, 2],
        ]),
        type,
      ),
    ).toMatchObject({ verdict: 'against', warns: true });
    // Fatty alcohol builds the body that a partner would, so that no check would warn.
    expect(judged('cationic-with-partner', system([[QUAT, 2]], [CETEARYL, 3]), type)).toMatchObject({
      warns: false,
    });
    expect(
      judged('cationic-with-partner', system([[QUAT, 2]]), {
        ...type,
        oils: [{ material: CETEARYL, mass: 3 }],
      }),
    ).toMatchObject({ warns: false });
    expect(verdict('cationic-with-partner', system([[STEARETH_21, 2]]))).toBe('neutral');
  });

  it('high-with-low: four units apart, for o/w', () => {
    const of = (hlb: number) =>
      make(`HLB ${hlb}`, 'Steareth-10', {
        functions: ['emulsifier'],
        charge: 'non-ionic',
        figures: { hlb: figure(hlb) },
      });
    expect(
      verdict(
        'high-with-low',
        system([
          [of(14), 2],
          [of(10), 2],
        ]),
      ),
    ).toBe('for');
    expect(
      verdict(
        'high-with-low',
        system([
          [of(14), 2],
          [of(10.1), 2],
        ]),
      ),
    ).toBe('neutral');
    expect(
      verdict(
        'high-with-low',
        system([
          [of(14), 4],
          [of(4), 0.1],
        ]),
      ),
    ).toBe('neutral');
    expect(
      verdict(
        'high-with-low',
        system([
          [of(14), 2],
          [of(4), 2],
        ]),
        { emulsionType: 'w/o' },
      ),
    ).toBe('neutral');
    expect(verdict('high-with-low', system([[of(14), 2]]))).toBe('neutral');
  });

  it('gel-network: fatty alcohol with a partner that swells it, never stearyl alcohol alone (Eccleston 1982)', () => {
    expect(verdict('gel-network', system([[STEARETH_21, 2]], [CETEARYL, 3]))).toBe('for');
    expect(verdict('gel-network', system([[GLUTAMATE, 2]], [CETEARYL, 3]))).toBe('for');
    expect(verdict('gel-network', system([[STEARETH_21, 2]], [STEARYL, 3]))).toBe('against');
    expect(
      verdict('gel-network', system([[STEARETH_21, 2]], [STEARYL, 3]), {
        oils: [{ material: CETEARYL, mass: 1 }],
      }),
    ).toBe('for');
    expect(verdict('gel-network', system([[STEARETH_2, 2]], [CETEARYL, 3]))).toBe('neutral');
    expect(
      verdict('gel-network', system([[STEARETH_21, 2]]), { oils: [{ material: CETEARYL, mass: 3 }] }),
    ).toBe('for');
    expect(verdict('gel-network', system([[STEARETH_21, 2]], [CETEARYL, 3]), { feel: 'milk' })).toBe(
      'neutral',
    );
    expect(verdict('gel-network', system([[STEARETH_21, 2]], [CETEARYL, 3]), { emulsionType: 'w/o' })).toBe(
      'neutral',
    );
    expect(verdict('gel-network', system([[STEARETH_21, 2]]))).toBe('neutral');
    // Partners swell it from HLB 10 on.
    const of = (hlb: number) =>
      make(`HLB ${hlb}`, 'Steareth-10', { charge: 'non-ionic', figures: { hlb: figure(hlb) } });
    expect(verdict('gel-network', system([[of(10), 2]], [CETEARYL, 3]))).toBe('for');
    expect(verdict('gel-network', system([[of(9.9), 2]], [CETEARYL, 3]))).toBe('neutral');
  });

  it.each([
    ['frost', 'against', 'for', 'for', 'for'],
    ['hot', 'for', 'against', 'for', 'for'],
    ['both', 'against', 'against', 'for', 'for'],
    ['temperate', 'neutral', 'neutral', 'neutral', 'neutral'],
  ] as const)(
    'climate-fit: in %s an ionic is %s, an ethoxylate %s, a glucoside %s, a pair of both %s',
    (climate, ...expected) => {
      const sugar = make('Sugar', 'Cetearyl Glucoside', {
        functions: ['emulsifier'],
        charge: 'non-ionic',
        architecture: 'classic',
      });
      const all = [
        system([[GLUTAMATE, 2]]),
        system([[STEARETH_21, 2]]),
        system([[sugar, 2]]),
        system([
          [GLUTAMATE, 1],
          [STEARETH_21, 1],
        ]),
      ];
      expect(all.map((of) => verdict('climate-fit', of, { climate }))).toEqual(expected);
      expect(verdict('climate-fit', all[0]!, { climate, emulsionType: 'w/o' })).toBe('neutral');
    },
  );
});
