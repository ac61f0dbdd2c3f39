import { describe, expect, it } from 'vitest';
import { figure, make, range } from '../checks/build';
import {
  system,
  rest,
  required,
  judged,
  verdict,
  STEARETH_21,
  STEARETH_2,
  QUAT,
  GLUTAMATE,
  SOAP,
  ACRYLATE,
} from './judged';

describe('rules that refuse', () => {
  it('serves-type: one for the type at least, a cationic for a cationic emulsion', () => {
    expect(verdict('serves-type', system([[STEARETH_2, 2]]))).toBe('refuses');
    expect(
      verdict(
        'serves-type',
        system([
          [STEARETH_2, 2],
          [STEARETH_21, 2],
        ]),
      ),
    ).toBe('neutral');
    expect(verdict('serves-type', system([[STEARETH_21, 2]]), { emulsionType: 'w/o' })).toBe('refuses');
    expect(
      verdict(
        'serves-type',
        system([
          [STEARETH_21, 2],
          [STEARETH_2, 2],
        ]),
        { emulsionType: 'w/o' },
      ),
    ).toBe('against');
    expect(verdict('serves-type', system([[STEARETH_21, 2]]), { emulsionType: 'cationic o/w' })).toBe(
      'refuses',
    );
    expect(verdict('serves-type', system([[QUAT, 2]]), { emulsionType: 'cationic o/w' })).toBe('neutral');
    // Where no type is recorded it may.
    expect(
      verdict('serves-type', system([[make('Unknown', 'Steareth-10', { functions: ['emulsifier'] }), 2]])),
    ).toBe('neutral');
  });

  it('disperses-in-water: HLB 10 or a charge, for o/w only; an unknown HLB is given the doubt', () => {
    const of = (hlb: number) =>
      make('One', 'Steareth-10', {
        functions: ['emulsifier'],
        charge: 'non-ionic',
        figures: { hlb: figure(hlb) },
      });
    expect(verdict('disperses-in-water', system([[of(9.9), 2]]))).toBe('refuses');
    expect(verdict('disperses-in-water', system([[of(10), 2]]))).toBe('neutral');
    expect(
      verdict(
        'disperses-in-water',
        system([
          [of(4), 2],
          [GLUTAMATE, 1],
        ]),
      ),
    ).toBe('neutral');
    expect(verdict('disperses-in-water', system([[of(4), 2]]), { emulsionType: 'w/o' })).toBe('neutral');
    expect(
      verdict('disperses-in-water', system([[make('No HLB', 'Steareth-10', { charge: 'non-ionic' }), 2]])),
    ).toBe('neutral');
  });

  it('one-sign: never a cationic with an anionic, soap by its name included', () => {
    expect(
      verdict(
        'one-sign',
        system([
          [QUAT, 2],
          [GLUTAMATE, 2],
        ]),
      ),
    ).toBe('refuses');
    expect(
      judged(
        'one-sign',
        system([
          [QUAT, 2],
          [SOAP, 2],
        ]),
      ),
    ).toMatchObject({ why: expect.stringContaining('Soap (soap) anionic') });
    expect(
      verdict(
        'one-sign',
        system([
          [QUAT, 2],
          [STEARETH_21, 2],
        ]),
      ),
    ).toBe('neutral');
    expect(
      verdict(
        'one-sign',
        system([
          [GLUTAMATE, 2],
          [SOAP, 2],
        ]),
      ),
    ).toBe('neutral');
  });

  it('gets-on-with-rest: the worst of all its emulsifiers counts, wherever it stands', () => {
    const magnesium = make('Bitter', 'Magnesium Sulfate');
    // Magnesium thins an acrylate, and makes an insoluble metal soap.
    expect(judged('gets-on-with-rest', system([[ACRYLATE, 0.3]]), { rest: rest(magnesium) })).toMatchObject({
      verdict: 'against',
      warns: true,
    });
    expect(verdict('gets-on-with-rest', system([[SOAP, 2]]), { rest: rest(magnesium) })).toBe('refuses');
    expect(
      verdict(
        'gets-on-with-rest',
        system([
          [ACRYLATE, 0.3],
          [SOAP, 2],
        ]),
        { rest: rest(magnesium) },
      ),
    ).toBe('refuses');
    expect(
      verdict(
        'gets-on-with-rest',
        system([
          [SOAP, 2],
          [ACRYLATE, 0.3],
        ]),
        { rest: rest(magnesium) },
      ),
    ).toBe('refuses');
    expect(verdict('gets-on-with-rest', system([[STEARETH_21, 2]]), { rest: rest(magnesium) })).toBe(
      'neutral',
    );
    expect(verdict('gets-on-with-rest', system([[QUAT, 2]]))).toBe('neutral');
  });

  it('works-at-ph: out of the recorded range is refused, soap weakens below 8 and fails below 7', () => {
    const ranged = make('Ranged', 'Steareth-10', {
      functions: ['emulsifier'],
      figures: { workingPh: range(4, 9) },
    });
    for (const [ph, expected] of [
      [3.9, 'refuses'],
      [4, 'neutral'],
      [9, 'neutral'],
      [9.1, 'refuses'],
    ] as const)
      expect(verdict('works-at-ph', system([[ranged, 2]]), { ph }), `pH ${ph}`).toBe(expected);
    expect(judged('works-at-ph', system([[SOAP, 2]]), { ph: 7.5 })).toMatchObject({
      verdict: 'against',
      strength: 0.25,
      warns: false,
    });
    expect(judged('works-at-ph', system([[SOAP, 2]]), { ph: 6 })).toMatchObject({ strength: 1, warns: true });
    expect(verdict('works-at-ph', system([[SOAP, 2]]), { ph: 8 })).toBe('neutral');
    expect(verdict('works-at-ph', system([[SOAP, 2]]), { ph: null })).toBe('neutral');
  });

  it('hlb-fit: within the sources’ spread it fits, beyond two units of it is refused', () => {
    // Half of HLB 15.5 and half of 4.9 is 10.2, by hand.
    const pair = system([
      [STEARETH_21, 2],
      [STEARETH_2, 2],
    ]);
    expect(pair.offered?.value).toBeCloseTo(10.2, 9);
    expect(judged('hlb-fit', pair, { required: required(10.2) })).toMatchObject({
      verdict: 'for',
      strength: 1,
    });
    expect(judged('hlb-fit', pair, { required: required(11.7) })).toMatchObject({
      verdict: 'against',
      strength: expect.closeTo(0.75, 9),
    });
    expect(verdict('hlb-fit', pair, { required: required(12.19) })).toBe('against');
    expect(verdict('hlb-fit', pair, { required: required(12.21) })).toBe('refuses');
    expect(verdict('hlb-fit', pair, { required: required(12.21, 11) })).toBe('for');
    expect(verdict('hlb-fit', pair)).toBe('neutral');
    expect(verdict('hlb-fit', system([[QUAT, 2]]), { required: required(10) })).toBe('neutral');
  });
});
