import { formulaContent, type Formula, type FormulaVersion } from '@core/formulas/formula';
import type { FormulaRow } from '@core/formulas/list';
import { materialContent, type Material } from '@core/materials/material';
import type { ListPage } from '@core/lists/query';
import type { VersionSummary } from '@db/formulas/versions';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

const DAY = '2026-11-20';
const decide = (ask: Ask, versionId: string, decision: string, reason = '', by = 'Q. Invented') =>
  ask<ProblemDetails>('POST', `/formulas/versions/${versionId}/decisions`, { decision, by, on: DAY, reason });

async function recorded(ask: Ask, name = 'Hedgerow Day Cream') {
  const { body: all } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
  const id = all.rows.find((row) => row.name === name)?.id ?? '';
  const { body } = await ask<VersionSummary>('POST', `/formulas/${id}/versions`, {
    reason: 'first',
    recordedBy: 'A. D.',
  });
  return { id, versionId: body.id };
}
const rowOf = async (ask: Ask, id: string) =>
  (await ask<ListPage<FormulaRow>>('GET', '/formulas')).body.rows.find((row) => row.id === id);

describe('decisions on recorded versions', () => {
  it('are kept in turn, and tell in the lists where the newest version stands', async () => {
    const { ask } = await serviceWith('demonstration');
    const { id, versionId } = await recorded(ask);
    expect((await rowOf(ask, id))?.standing).toBe('recorded');
    expect((await decide(ask, versionId, 'approved')).status).toBe(201);
    expect((await rowOf(ask, id))?.standing).toBe('approved');
    expect((await decide(ask, versionId, 'approved')).status).toBe(409);
    expect((await decide(ask, versionId, 'withdrawn', 'Separates after a month')).status).toBe(201);
    const { body: versions } = await ask<VersionSummary[]>('GET', `/formulas/${id}/versions`);
    expect(versions[0]?.standing).toBe('withdrawn');
    expect(versions[0]?.decisions.map(({ decision, by, on }) => [decision, by, on])).toEqual([
      ['approved', 'Q. Invented', DAY],
      ['withdrawn', 'Q. Invented', DAY],
    ]);
    const { body: narrowed } = await ask<ListPage<FormulaRow>>('GET', '/formulas?standing=withdrawn');
    expect(narrowed.rows.map((row) => row.id)).toEqual([id]);
  });

  it('name who decides, and say why something is withdrawn; a withdrawal is final and stops batches', async () => {
    const { ask } = await serviceWith('demonstration');
    const { versionId } = await recorded(ask);
    expect((await decide(ask, versionId, 'approved', '', ' ')).body.fields[0]?.path).toBe('by');
    expect((await decide(ask, versionId, 'withdrawn')).body.fields[0]?.path).toBe('reason');
    const plan = {
      ...{ versionId, size: { by: 'mass', massMg: 1_000_000 }, overagePpm: 0, readabilityMg: 10, note: '' },
    };
    expect((await ask('POST', '/batches', plan)).status).toBe(201);
    await decide(ask, versionId, 'withdrawn', 'Wrong lot of wax');
    const { status, body } = await ask<ProblemDetails>('POST', '/batches', plan);
    expect([status, body.title]).toEqual([409, 'Version 1 is withdrawn: Wrong lot of wax']);
    expect((await decide(ask, versionId, 'approved')).status).toBe(409);
    expect((await decide(ask, '01900000-0000-7000-8000-00000000abcd', 'approved')).status).toBe(404);
  });

  it('do not hide what was withdrawn of a version’s materials since', async () => {
    const { ask } = await serviceWith('demonstration');
    const { versionId } = await recorded(ask);
    const path = `/formulas/versions/${versionId}/withdrawn-materials`;
    expect((await ask('GET', path)).body).toEqual([]);
    const { body: version } = await ask<FormulaVersion>('GET', `/formulas/versions/${versionId}`);
    const one = Object.values(version.materials)[0]!;
    const { body: now } = await ask<Material>('GET', `/materials/${one.id}`);
    const content = {
      ...materialContent.parse(now),
      withdrawnOn: '2026-11-01',
      withdrawnWhy: 'Recalled, invented',
    };
    await ask('PUT', `/materials/${one.id}`, { revision: now.revision, content });
    expect((await ask('GET', path)).body).toEqual([
      {
        id: one.id,
        tradeName: one.tradeName,
        withdrawnOn: '2026-11-01',
        withdrawnWhy: 'Recalled, invented',
      },
    ]);
    const { body: kept } = await ask<FormulaVersion>('GET', `/formulas/versions/${versionId}`);
    expect(kept.materials[one.id]?.withdrawnOn).toBe('');
  });

  it('approve nothing that the checks say must be fixed first', async () => {
    const { ask } = await serviceWith('demonstration');
    await ask('POST', '/law/starter-set');
    const { id } = await recorded(ask);
    const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${id}`)).body;
    const content = formulaContent.parse(formula);
    const preserved = content.phases[2]?.lines[0];
    if (preserved) preserved.ppm = 40_000;
    await ask('PUT', `/formulas/${id}`, { revision: formula.revision, content });
    const { versionId } = await recorded(ask);
    const { status, body } = await decide(ask, versionId, 'approved');
    expect(status).toBe(422);
    expect(body.title).toContain('cannot be approved');
  });
});
