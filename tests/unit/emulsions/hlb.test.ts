import { describe, expect, it } from 'vitest';
import { daviesHlb } from '@core/emulsions/davies';
import { griffinEster, griffinEthoxylate, griffinMass, griffinPolyol } from '@core/emulsions/griffin';
import { hlbByAllMethods, NOTHING_KNOWN } from '@core/emulsions/hlb-methods';
import { hlbInputOf } from '@core/structure/hlb-of-structure';
import { readStructure } from '@core/structure/read-structure';
import { refusal } from '../working/refusal';

describe('Griffin', () => {
  it('shows the numbers put in', () => {
    const { steps, value, sources } = griffinEster(161, 198);
    expect(steps[0]?.shows).toBe('20 × (1 − 161 / 198)');
    expect(value).toBe(steps[0]?.result);
    expect(sources[0]?.text).toContain('Griffin');
  });

  it('refuses per cent over 100, parts heavier than the whole, and what is no number', () => {
    refusal(() => griffinEthoxylate(101), /Oxyethylene is 101 %/);
    refusal(() => griffinEthoxylate(Number.NaN), /not a number/);
    refusal(() => griffinPolyol(60, 50), /together/);
    refusal(() => griffinMass(500, 400), /heavier than the whole/);
    refusal(() => griffinEster(200, 190), /above the acid value/);
    refusal(() => griffinEster(10, 0), /more than zero/);
  });
});

describe('Davies', () => {
  it('shows 7 and every group', () => {
    expect(daviesHlb({ ester: 1, hydroxyl: 2, carbon: 20 }).steps[0]?.shows).toBe(
      '7 + 1 × 2.4 + 2 × 1.9 − 20 × 0.475',
    );
  });

  it('refuses heads without a number, and says why', () => {
    refusal(() => daviesHlb({ 'quaternary-ammonium': 1, carbon: 16 }), /quaternary ammonium.*no number/);
    refusal(() => daviesHlb({ 'amine-soap': 1 }), /amine soap/);
    refusal(() => daviesHlb({ 'ether-sulfate': 1 }), /ether-sulfate/);
    refusal(() => daviesHlb({ phosphate: 1 }), /phosphate/);
  });

  it('refuses an unknown group, a negative count and no groups', () => {
    expect(refusal(() => daviesHlb({ sugar: 1 }), /“sugar”/).advice).toContain('hydroxyl');
    refusal(() => daviesHlb({ toString: 1 }), /“toString”/);
    refusal(() => daviesHlb({ carbon: -1 }), /negative/);
    refusal(() => daviesHlb({}), /no groups/);
  });

  it('warns of a figure beyond Griffin’s scale', () => {
    expect(daviesHlb({ 'sulfate-na': 1, carbon: 12 }).cautions.join()).toContain('beyond Griffin');
  });
});

describe('all methods side by side', () => {
  const source = { text: 'a data sheet', basis: 'user' } as const;

  it('gives what applies, says why the rest does not, and the spread with the known value', () => {
    const reading = readStructure('CCCCCCCCCCCCCCCCCC(=O)OCC(O)CO');
    const { methods, spread } = hlbByAllMethods(hlbInputOf(reading, { value: 3.8, source }));
    expect(methods.filter((one) => one.applies).map((one) => one.method)).toEqual([
      'polyol',
      'ester',
      'mass',
      'davies',
    ]);
    expect(methods.find((one) => one.method === 'ethoxylate')).toMatchObject({
      reason: 'It holds no oxyethylene.',
    });
    expect(spread?.low).toBeCloseTo(3.7, 9);
    expect(spread?.high).toBeGreaterThan(5);
  });

  it('keeps Griffin off an ionic and Davies off a quaternary head', () => {
    const { methods, spread } = hlbByAllMethods(
      hlbInputOf(readStructure('CCCCCCCCCCCCCCCC[N+](C)(C)C.[Cl-]')),
    );
    expect(methods.every((one) => !one.applies)).toBe(true);
    expect(methods.map((one) => (one.applies ? '' : one.reason)).join()).toMatch(/cationic.*quaternary/);
    expect(spread).toBeNull();
  });

  it('turns a bad figure into that method’s reason and leaves the others', () => {
    const { methods } = hlbByAllMethods({
      ...NOTHING_KNOWN,
      charge: 'non-ionic',
      oxyethylenePercent: 130,
      groups: { hydroxyl: 1, carbon: 16 },
    });
    expect(methods.find((one) => one.method === 'ethoxylate')).toMatchObject({ applies: false });
    expect(methods.find((one) => one.method === 'davies')).toMatchObject({ applies: true });
  });
});
