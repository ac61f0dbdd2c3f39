import { listQuery } from '@core/lists/query';
import { MATERIALS_LIST } from '@core/materials/list';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import type { Ranking } from '@core/emulsions/systems/rank-systems';
import type { TrialSeries } from '@core/trials/trial-series';
import type { ProblemDetails } from '@service/problems/problem-details';
import { beforeEach, describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from '../service/service-fixture';

type Served = Awaited<ReturnType<typeof serviceWith>>;
let served: Served;
let ask: Ask;
beforeEach(async () => {
  served = await serviceWith('demonstration');
  ask = served.ask;
});

async function idOf(text: string): Promise<string> {
  const query = listQuery(MATERIALS_LIST, { text, limit: 1 });
  const row = (await served.session.current().lists.page('materials', query)).rows[0];
  if (!row) throw new Error(`Nothing called ${text}.`);
  return row.id;
}
const oils = async () => [
  { materialId: await idOf('Hazelthrum IPM'), percent: 6 },
  { materialId: await idOf('Goldenthrum Sunflower'), percent: 4 },
];
const wish = {
  ...{ emulsionType: 'o/w', feel: 'cream', climate: 'temperate', ph: 5.5, electrolyte: 'none', origins: [] },
};
const demand = {
  ...{
    emulsionType: 'o/w',
    targetHlb: 10,
    tolerance: 0.3,
    totalMinPercent: 3,
    totalMaxPercent: 5,
    atMost: 2,
  },
  ...{
    pinned: [] as string[],
    excluded: [] as string[],
    objective: 'least cost',
    rules: ['one sign of charge'],
  },
};

describe('systems from the library', () => {
  it('are ranked best first, each with reasons that have a source', async () => {
    const { status, body } = await ask<Ranking>('POST', '/emulsions/systems', { wish, oils: await oils() });
    expect(status).toBe(200);
    const scores = body.systems.map((system) => system.score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    for (const reason of body.systems[0]?.reasons ?? []) expect(reason.source.text).not.toBe('');
  });

  it('follow a changed weight, a target by hand and a level range', async () => {
    const request = { wish: { ...wish, levelFrom: 4, levelTo: 4.5 }, oils: await oils(), targetHlb: 12 };
    const { body } = await ask<Ranking>('POST', '/emulsions/systems', { ...request, weights: { cost: 0 } });
    expect(body.systems.length).toBeGreaterThan(0);
    for (const { levelPercent, reasons } of body.systems) {
      expect(levelPercent).toBeGreaterThanOrEqual(4 - 1e-9);
      expect(levelPercent).toBeLessThanOrEqual(4.5 + 1e-9);
      expect(reasons.filter((reason) => reason.ruleId === 'cost').every((one) => one.points === 0)).toBe(
        true,
      );
    }
    expect(body.required.value).toBe(12);
  });

  it('are refused in words without oils, or with levels that cannot be', async () => {
    const none = await ask<ProblemDetails>('POST', '/emulsions/systems', { wish, oils: [] });
    expect(none.body.title).toBe('There are no oils to emulsify.');
    const [first] = await oils();
    const bad = await ask<ProblemDetails>('POST', '/emulsions/systems', {
      wish,
      oils: [{ ...first, percent: -1 }],
    });
    expect(bad.body.title).toBe('A level cannot be negative.');
  });
});

describe('the optimiser over the library', () => {
  it('proves a best choice and gives others', async () => {
    const { body } = await ask<OptimiseResult>('POST', '/emulsions/optimise', { filter: {}, demand });
    if (body.status !== 'optimal') throw new Error(body.reason);
    expect(body.alternatives.length).toBeGreaterThanOrEqual(5);
    expect(body.best.hlb).toBeGreaterThan(9.7 - 1e-6);
  });

  it('keeps a pinned one although the filter leaves it out', async () => {
    const pinned = [await idOf('Pibberley 60')];
    const filter = { forms: ['pellets'] };
    const asked = { filter, demand: { ...demand, targetHlb: 12, tolerance: 1, pinned } };
    const { body } = await ask<OptimiseResult>('POST', '/emulsions/optimise', asked);
    if (body.status !== 'optimal') throw new Error(body.reason);
    expect(body.best.lines.map((line) => line.id)).toContain(pinned[0]);
  });

  it('refuses contradictory pins and a filter turned round', async () => {
    const id = await idOf('Pibberley 60');
    const both = { ...demand, pinned: [id], excluded: [id] };
    const pins = await ask<ProblemDetails>('POST', '/emulsions/optimise', { filter: {}, demand: both });
    expect(pins.body.title).toMatch(/both pinned and excluded/);
    const turned = { filter: { hlbFrom: 12, hlbTo: 8 }, demand };
    const window = await ask<ProblemDetails>('POST', '/emulsions/optimise', turned);
    expect(window.body.title).toBe('The lowest HLB is above the highest.');
  });
});

describe('trial series', () => {
  const series = (materialId: string) => ({
    ...{ title: 'HLB 9 to 11', formulaId: null, targetHlb: 10, batchMg: 100_000, readabilityMg: 100 },
    trials: [
      {
        ...{ label: 'HLB 10', hlb: 10, levelPpm: 50_000, result: '' },
        lines: [{ materialId, part: 'emulsifier', ppm: 50_000, mg: 5_000 }],
      },
    ],
    ...{ chosen: null as number | null, notes: '' },
  });

  it('are kept, edited under a revision check, printed and deleted', async () => {
    const content = series(await idOf('Pibberley 60'));
    const made = await ask<{ revision: number; series: TrialSeries }>('POST', '/trials', content);
    const path = `/trials/${made.body.series.id}`;
    const edit = { revision: 1, content: { ...content, chosen: 0 } };
    expect((await ask('PUT', path, edit)).status).toBe(200);
    expect((await ask<ProblemDetails>('PUT', path, edit)).body.code).toBe('conflict');
    expect((await ask<{ total: number }>('GET', '/trials')).body.total).toBe(1);
    const sheet = await served.service.request('/api/sheets', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ kind: 'trials', seriesId: made.body.series.id }),
    });
    expect(sheet.headers.get('content-type')).toBe('application/pdf');
    expect((await ask('DELETE', path)).status).toBe(204);
    expect((await ask('GET', path)).status).toBe(404);
  });

  it('cannot choose a trial that is not there', async () => {
    const content = { ...series(await idOf('Pibberley 60')), chosen: 3 };
    const { body } = await ask<ProblemDetails>('POST', '/trials', content);
    expect(body.title).toBe('The chosen trial is not in the series.');
  });
});
