import { bodyExpected, systemCost } from '@core/emulsions/systems/system';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { figure, make } from '../checks/build';
import * as shelf from '../checks/materials';
import {
  priced,
  system,
  NO_REST,
  wish,
  judged,
  verdict,
  STEARETH_21,
  STEARETH_2,
  QUAT,
  GLUTAMATE,
  ACRYLATE,
  CETEARYL,
  LIQUID_WO,
} from './judged';

describe('rules of the maker’s wishes', () => {
  it('salt-tolerance: ionics and sensitive polymers weaken, by what is wished or what is there', () => {
    const tolerant = { ...GLUTAMATE, electrolyteTolerance: 'high' as const };
    expect(verdict('salt-tolerance', system([[ACRYLATE, 0.3]]))).toBe('neutral');
    expect(judged('salt-tolerance', system([[ACRYLATE, 0.3]]), { electrolyte: 'high' })).toMatchObject({
      verdict: 'against',
      strength: 1,
      warns: true,
    });
    expect(judged('salt-tolerance', system([[GLUTAMATE, 2]]), { electrolyte: 'high' })).toMatchObject({
      verdict: 'against',
      strength: 0.5,
    });
    expect(judged('salt-tolerance', system([[tolerant, 2]]), { electrolyte: 'low' })).toMatchObject({
      verdict: 'for',
      strength: 0.5,
    });
    expect(judged('salt-tolerance', system([[STEARETH_21, 2]]), { electrolyte: 'high' })).toMatchObject({
      verdict: 'for',
      strength: 0.5,
    });
    // 0.1 % of salts is still little; a ppm more counts as though it were wished.
    expect(
      verdict('salt-tolerance', system([[GLUTAMATE, 2]]), { rest: { ...NO_REST, saltPpm: 1_000 } }),
    ).toBe('neutral');
    expect(
      verdict('salt-tolerance', system([[GLUTAMATE, 2]]), { rest: { ...NO_REST, saltPpm: 1_001 } }),
    ).toBe('against');
  });

  it('origin-wish: the share of members that are of another or no known origin', () => {
    const natural = { ...STEARETH_21, origin: 'natural' as const };
    const of = (...members: [Material, number][]) =>
      judged('origin-wish', system(members), { origins: ['natural', 'naturally derived'] });
    expect(of([natural, 2])).toMatchObject({ verdict: 'for', strength: 1 });
    expect(of([natural, 2], [STEARETH_2, 1])).toMatchObject({ verdict: 'against', strength: 0.5 });
    expect(of([STEARETH_2, 1])).toMatchObject({ strength: 1, why: expect.stringContaining('Harbour 2') });
    expect(verdict('origin-wish', system([[STEARETH_2, 1]]))).toBe('neutral');
  });

  it('body-for-feel: what waxy emulsifiers and alcohol give, against what is asked', () => {
    expect(verdict('body-for-feel', system([[STEARETH_21, 4]], [CETEARYL, 2]))).toBe('for');
    expect(verdict('body-for-feel', system([[LIQUID_WO, 4]]))).toBe('against');
    expect(verdict('body-for-feel', system([[LIQUID_WO, 4]]), { feel: 'milk' })).toBe('for');
    expect(bodyExpected(system([[LIQUID_WO, 4]]), wish())).toBe('none');
    expect(bodyExpected(system([[LIQUID_WO, 4]]), wish({ alcoholInOils: 4 }))).toBe('strong');
  });

  it('cost: against the usual level at the median price, by hand', () => {
    // 4 % at 14 € a kg is 0.56 € in a kg of product; usual is 20 % of 20 % of oil, 4 %, at 10 €: 0.40 €.
    const costly = system([[priced(STEARETH_21, 1400), 4]]);
    expect(systemCost(costly)).toBeCloseTo(56, 9);
    expect(judged('cost', costly, { usualCostPerKg: 1000 })).toMatchObject({
      verdict: 'against',
      strength: expect.closeTo(0.4, 9),
    });
    expect(judged('cost', costly, { usualCostPerKg: 2800 })).toMatchObject({
      verdict: 'for',
      strength: expect.closeTo(0.5, 9),
    });
    expect(judged('cost', system([[STEARETH_21, 4]]), { usualCostPerKg: 1000 })).toMatchObject({
      verdict: 'against',
      strength: 0.25,
      why: expect.stringContaining('Harbour 21 has no price'),
    });
    expect(verdict('cost', costly, { usualCostPerKg: 0 })).toBe('neutral');
    expect(verdict('cost', costly)).toBe('neutral');
  });

  it('mild-to-skin, known-figures, needs-base and fewer-materials name what they mean', () => {
    const irritant = make('Sharp', 'Steareth-10', { functions: ['emulsifier'], hazards: ['irritant'] });
    expect(judged('mild-to-skin', system([[irritant, 1]]))).toMatchObject({
      verdict: 'against',
      why: expect.stringContaining('Sharp'),
    });
    expect(verdict('mild-to-skin', system([[STEARETH_21, 1]]))).toBe('neutral');
    const vague = make('Vague', 'Steareth-10', {
      functions: ['emulsifier'],
      charge: 'non-ionic',
      figures: { hlb: { ...figure(12), provenance: 'estimated' } },
    });
    expect(
      judged(
        'known-figures',
        system([
          [vague, 1],
          [STEARETH_21, 1],
        ]),
      ),
    ).toMatchObject({ strength: 0.5, why: expect.stringContaining('Vague') });
    expect(
      verdict(
        'known-figures',
        system([
          [QUAT, 1],
          [ACRYLATE, 1],
        ]),
      ),
    ).toBe('neutral');
    expect(judged('needs-base', system([[shelf.stearicAcid(), 2]]))).toMatchObject({
      verdict: 'against',
      warns: true,
    });
    expect(
      judged('needs-base', system([[shelf.stearicAcid(), 2]]), { rest: { ...NO_REST, hasBase: true } }),
    ).toMatchObject({ warns: false });
    expect(
      verdict(
        'fewer-materials',
        system([
          [STEARETH_21, 1],
          [STEARETH_2, 1],
        ]),
      ),
    ).toBe('neutral');
    expect(
      judged(
        'fewer-materials',
        system(
          [
            [STEARETH_21, 1],
            [STEARETH_2, 1],
          ],
          [CETEARYL, 1],
        ),
      ),
    ).toMatchObject({ verdict: 'against', strength: 0.5 });
  });
});
