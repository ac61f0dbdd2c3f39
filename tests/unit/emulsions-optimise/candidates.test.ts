import { demoLibrary } from '@core/demo/demo-library';
import { candidateFrom } from '@core/emulsions/optimise/candidates';
import type { Demand } from '@core/emulsions/optimise/demand';
import { optimise } from '@core/emulsions/optimise/optimise';
import { blankMaterial } from '@core/materials/material';
import { readCandidates } from '@db/emulsions/candidates';
import { materials as stored } from '@db/materials/materials';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { describe, expect, it } from 'vitest';
import { figure, make, range } from '../checks/build';
import { serviceWith } from '../service/service-fixture';
import { candidatesFrom } from './demo-shelf';

describe('an emulsifier as a candidate', () => {
  it('is the same whether read from the library or projected from the materials, over the demonstration', async () => {
    const { session } = await serviceWith('demonstration');
    const { materials, settings } = demoLibrary();
    const inOrder = candidatesFrom(materials, settings.currency).sort((a, b) =>
      a.name < b.name ? -1 : a.name > b.name ? 1 : 0,
    );
    const read = readCandidates(session.current().library, settings.currency);
    const known = new Map(read.map((one) => [one.name, one]));
    expect(read.map((one) => one.name)).toEqual(inOrder.map((one) => one.name));
    for (const { id: _own, ...one } of inOrder) {
      const { id: _read, ...stored } = known.get(one.name)!;
      expect(stored, one.name).toEqual(one);
    }
  });

  it('is the same for a base, a soap, a lone range, no usage and offers of two currencies', async () => {
    const { session } = await serviceWith('empty');
    const odd = [
      make('Both', ['Stearic Acid', 'Triethanolamine'], { functions: ['emulsifier', 'base'], charge: null }),
      make('Soap', ['Glyceryl Stearate', 'Sodium Stearate'], {
        functions: ['emulsifier'],
        charge: 'non-ionic',
      }),
      make('Range', 'Sucrose Stearate', { functions: ['emulsifier'], figures: { hlb: range(3, 6) } }),
      make('Acrylic', 'Acrylates/C10-30 Alkyl Acrylate Crosspolymer', {
        functions: ['emulsifier'],
        figures: { hlb: figure(8, 7, 9) },
        offers: (['EUR', 'GBP', 'EUR'] as const).map((currency, index) => ({
          ...blankMaterial('', '').offers[0],
          ...{ supplier: 'Invented', itemCode: '', packMg: 1_000_000, priceMinor: 900 + index, currency },
          date: '2026-01-01',
        })),
      }),
    ];
    session.current().library.transaction((tx) => odd.forEach((one) => stored.insert(tx, one)));
    const read = readCandidates(session.current().library, 'EUR');
    const byName = (a: { name: string }, b: { name: string }): number => (a.name < b.name ? -1 : 1);
    expect(read).toEqual(candidatesFrom(odd, 'EUR').sort(byName));
    expect(read.find((one) => one.name === 'Soap')?.charge).toBe('anionic');
    expect(read.find((one) => one.name === 'Acrylic')).toMatchObject({
      architecture: 'polymeric',
      costPerKg: 902,
    });
    expect(read.find((one) => one.name === 'Range')).toMatchObject({ hlb: 4.5, hlbLow: 3, hlbHigh: 6 });
  });
});

describe('an answer that rests on what nobody recorded', () => {
  const pair = [
    make('High', 'Steareth-21', {
      ...{ functions: ['emulsifier'], charge: 'non-ionic', emulsionType: 'o/w' },
      figures: { hlb: figure(15) },
    }),
    make('Low', 'Sorbitan Stearate', {
      ...{ functions: ['emulsifier'], charge: 'non-ionic', emulsionType: 'both' },
      figures: { hlb: range(3, 6) },
    }),
  ];
  const demand: Omit<Demand, 'targetHlb'> = {
    ...{ emulsionType: 'o/w', tolerance: 0.3, totalMinPercent: 4, totalMaxPercent: 4, atMost: 2 },
    ...{ objective: 'fewest materials', pinned: [], excluded: [], rules: [], alternatives: 0 },
  };

  it('says that 8 % was assumed, and how far the range of its HLB leaves the mean open', async () => {
    const candidates = pair.map((one) => candidateFrom(one, 'EUR'));
    const asked = { ...demand, targetHlb: 10, tolerance: 0 };
    const result = await optimise({ candidates, demand: asked }, solveWithHighs);
    if (result.status !== 'optimal') throw new Error(result.reason);
    expect(result.cautions.join(' ')).toMatch(/No highest use is recorded for .*High.*: 8 %/);
    // By hand: (10 − 4.5)/(15 − 4.5) = 52.38 % of the high one; with 3 the mean is 9.286, with 6 it is 10.714.
    expect(result.best.lines.find((line) => line.name === 'High')?.percent).toBeCloseTo(4 * 0.52381, 4);
    expect(result.best.hlbBand?.low).toBeCloseTo(9.2857, 3);
    expect(result.best.hlbBand?.high).toBeCloseTo(10.7143, 3);
  });

  it('blames assumed ranges for what they are', async () => {
    const candidates = pair.map((one) => candidateFrom(one, 'EUR'));
    const asked = { ...demand, targetHlb: 10, totalMinPercent: 20, totalMaxPercent: 30 };
    const result = await optimise({ candidates, demand: asked }, solveWithHighs);
    if (result.status === 'optimal') throw new Error('No answer was expected.');
    const usage = result.relax.find((one) => one.demand === 'the usage ranges');
    expect(usage?.says).toMatch(/no highest use is recorded and 8 % is assumed/);
  });
});
