import type { Batch } from '@core/batches/batch';
import { formulaContent, type Formula, type FormulaVersion } from '@core/formulas/formula';
import { formulaCost } from '@core/costing/formula-cost';
import { formulaLines } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import type { VersionSummary } from '@db/formulas/versions';
import type { FormulaRow } from '@core/formulas/list';
import type { ListPage } from '@core/lists/query';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from './service-fixture';

type WithMaterials = { formula: Formula; materials: Record<string, Material> };

async function anyFormula(ask: Ask, name = 'Hedgerow Day Cream'): Promise<WithMaterials> {
  const { body: all } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
  const known = all.rows.find((formula) => formula.name === name) ?? all.rows[0];
  return (await ask<WithMaterials>('GET', `/formulas/${known?.id}`)).body;
}
const put = (ask: Ask, formula: Formula, part: Partial<Formula>) =>
  ask<ProblemDetails>('PUT', `/formulas/${formula.id}`, {
    revision: formula.revision,
    content: { ...formulaContent.parse(formula), ...part },
  });
const record = (ask: Ask, id: string) =>
  ask<VersionSummary & ProblemDetails>('POST', `/formulas/${id}/versions`, {
    reason: 'first',
    recordedBy: 'A. D.',
  });

describe('formulas through the service', () => {
  it('a recorded version keeps the materials’ values of its moment, whatever changes later', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula, materials } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    const [id] = Object.keys(materials);
    const { revision, createdAt, updatedAt, ...content } = materials[id ?? ''] as Material;
    expect([createdAt, updatedAt].every(Boolean)).toBe(true);
    await ask('PUT', `/materials/${id}`, { revision, content: { ...content, tradeName: 'Renamed since' } });
    const { body: frozen } = await ask<FormulaVersion>('GET', `/formulas/versions/${version.id}`);
    expect(frozen.materials[id ?? '']?.tradeName).toBe(content.tradeName);
    const total = frozen.content.phases
      .flatMap((phase) => phase.lines)
      .reduce((sum, line) => sum + line.ppm, 0);
    expect(total).toBe(1_000_000);
  });

  it('a version becomes the draft again, or a formula of its own; the list tells what each costs', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula, materials } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    await put(ask, formula, { purpose: 'Changed since', phases: [] });

    const restored = `/formulas/versions/${version.id}/restore`;
    expect((await ask('POST', restored, { revision: formula.revision })).status).toBe(409);
    const now = (await ask<WithMaterials>('GET', `/formulas/${formula.id}`)).body.formula;
    const { body: back } = await ask<Formula>('POST', restored, { revision: now.revision });
    expect([back.purpose, back.code, back.revision]).toEqual([
      formula.purpose,
      formula.code,
      now.revision + 1,
    ]);
    expect(formulaLines(back).length).toBe(formulaLines(formula).length);

    const { body: copy } = await ask<Formula>('POST', `/formulas/versions/${version.id}/copy`);
    expect(copy.name).toBe(`${formula.name} (from version 1)`);
    expect([copy.id === formula.id, copy.code === formula.code]).toEqual([false, false]);

    const told = async () => {
      const { body } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
      return body.rows.find((row) => row.id === copy.id);
    };
    const known = formulaCost(formulaContent.parse(formula), materials, 'EUR');
    // The list adds prices that are rounded to whole cents each.
    expect(Math.abs(((await told())?.costPerKg ?? 0) - known.perKgMinor)).toBeLessThanOrEqual(1);
    expect((await told())?.pricedPpm).toBe(known.coveredPpm);
    const [line] = formulaLines(formula);
    const {
      revision,
      createdAt: _c,
      updatedAt: _u,
      ...content
    } = materials[line?.materialId ?? ''] as Material;
    await ask('PUT', `/materials/${content.id}`, { revision, content: { ...content, offers: [] } });
    expect((await told())?.pricedPpm).toBe(known.coveredPpm - (line?.ppm ?? 0));
  });

  it('the database itself refuses to change or delete a recorded version', async () => {
    const { ask, session } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    const { library } = session.current();
    const attempt = (sql: string) => () => library.transaction((tx) => tx.run(sql, version.id));
    expect(attempt(`UPDATE formula_version SET reason = 'other' WHERE id = ?`)).toThrow(/never changes/);
    expect(attempt('DELETE FROM formula_version WHERE id = ?')).toThrow(/never deleted/);
  });

  it('refuses to record lines that do not make 100 %, and keeps the draft', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const phases = formula.phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((line) => ({ ...line, toHundred: false })),
    }));
    const short = phases.map((phase, at) =>
      at === 0 ? { ...phase, lines: phase.lines.map((line) => ({ ...line, ppm: 0 })) } : phase,
    );
    expect((await put(ask, formula, { phases: short })).status).toBe(200);
    const refused = await record(ask, formula.id);
    expect(refused.status).toBe(422);
    expect(refused.body.title).toMatch(/not 100 %/);
    expect((await ask<WithMaterials>('GET', `/formulas/${formula.id}`)).body.formula.phases).toEqual(short);
  });

  it('refuses two q.s. lines and a line of a material that is gone, naming the line', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const twice = {
      revision: formula.revision,
      content: {
        ...formula,
        phases: formula.phases.map((phase) => ({
          ...phase,
          lines: phase.lines.map((line) => ({ ...line, toHundred: true })),
        })),
      },
    };
    const two = await ask<ProblemDetails>('PUT', `/formulas/${formula.id}`, twice);
    expect(two.status).toBe(422);
    expect(two.body.title).toMatch(/Only one line can be q\.s\./);
    const gone = '01890000-0000-7000-8000-000000000000';
    const phases = formula.phases.map((phase, at) =>
      at === 0
        ? { ...phase, lines: phase.lines.map((line, n) => (n === 0 ? { ...line, materialId: gone } : line)) }
        : phase,
    );
    const missing = await put(ask, formula, { phases });
    expect(missing.status).toBe(422);
    expect(missing.body.fields[0]?.path).toBe(`line.${formula.phases[0]?.lines[0]?.id}`);
  });

  it('refuses a target whose ends are crossed, naming each, and takes equal ends', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const target = { ...formula.target, phLow: 8, phHigh: 4, densityLow: 1.2, densityHigh: 0.9 };
    const crossed = await put(ask, formula, { target });
    expect(crossed.status).toBe(422);
    expect(crossed.body.fields.map((field) => field.path)).toEqual([
      'content.target.phLow',
      'content.target.densityLow',
    ]);
    expect(crossed.body.title).toBe('pH: the lower end of the target is above the upper end.');
    expect((await put(ask, formula, { target: { ...formula.target, phLow: 5, phHigh: 5 } })).status).toBe(
      200,
    );
  });

  it('refuses lines, phases or steps of the same identifier', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const [first, ...others] = formula.phases;
    if (!first) throw new Error('The demonstration formula has phases.');
    const twice = <T>(list: T[]): T[] => [...list, ...list.slice(0, 1)];
    const lines = { ...first, lines: twice(first.lines) };
    for (const part of [
      { phases: [lines, ...others] },
      { phases: twice(formula.phases) },
      { steps: twice(formula.steps) },
    ]) {
      const refused = await put(ask, formula, part);
      expect([refused.status, refused.body.code]).toEqual([422, 'invalid-input']);
      expect(refused.body.fields.some((field) => field.message.includes('the same identifier'))).toBe(true);
    }
  });

  it('refuses a version in the words and numbers of the library’s language region', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    await ask('PATCH', '/settings', { languageRegion: 'de-DE' });
    const ppmOf = (at: number, toHundred: boolean) =>
      formula.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.map((line) => ({ ...line, toHundred: toHundred && line.toHundred, ppm: at })),
      }));
    const count = formula.phases.flatMap((phase) => phase.lines).length;
    await put(ask, formula, { phases: ppmOf(226_500, true) });
    const over = `${(((count - 1) * 226_500 - 1_000_000) / 10_000).toFixed(2).replace('.', ',')}\u00a0%`;
    expect((await record(ask, formula.id)).body.detail).toBe(`Remove ${over} from the other lines.`);
    await put(ask, { ...formula, revision: formula.revision + 1 }, { phases: ppmOf(12_345, false) });
    const total = `${((count * 12_345) / 10_000).toFixed(4).replace('.', ',').replace(/0+$/, '')}\u00a0%`;
    expect((await record(ask, formula.id)).body.title).toBe(`The lines add up to ${total}, not 100 %.`);
  });

  it('tells what is wrong with a batch in the library’s language region', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    await ask('PATCH', '/settings', { languageRegion: 'de-DE' });
    const { body } = await ask<ProblemDetails>('POST', '/batches', {
      versionId: version.id,
      size: { by: 'units', units: 1_000_000, fillMg: 12_500_000 },
      overagePpm: 0,
      readabilityMg: 100,
      note: '',
    });
    expect(body.title).toMatch(/^12\.500\.000/);
  });

  it('plans a 2.5 kg batch whose weighed lines add up to exactly 2.5 kg', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    const plan = {
      versionId: version.id,
      size: { by: 'mass', massMg: 2_500_000 },
      overagePpm: 0,
      readabilityMg: 100,
      note: '',
    };
    const { status, body: batch } = await ask<Batch>('POST', '/batches', plan);
    expect(status).toBe(201);
    expect(batch.lines.reduce((sum, line) => sum + line.targetMg, 0)).toBe(2_500_000);
    expect(batch.lines.every((line) => line.targetMg % 100 === 0)).toBe(true);
    expect(batch.number).toBe('B-004');
    expect((await ask<Batch>('POST', '/batches', plan)).body.number).toBe('B-005');
  });

  it('keeps the space that a prefix ends in, and counts on behind it', async () => {
    const { ask } = await serviceWith('demonstration');
    await ask('PATCH', '/settings', { batchPrefix: ' LOT ', formulaPrefix: 'Cream ' });
    const { formula } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    const size = { by: 'mass', massMg: 1_000_000 };
    const plan = { versionId: version.id, size, overagePpm: 0, readabilityMg: 100, note: '' };
    const numbers = [];
    for (let made = 0; made < 2; made += 1)
      numbers.push((await ask<Batch>('POST', '/batches', plan)).body.number);
    expect(numbers).toEqual(['LOT 001', 'LOT 002']);
    expect((await ask<Formula>('POST', `/formulas/${formula.id}/copy`)).body.code).toBe('Cream 001');
  });

  it('says in words what is wrong with a setting', async () => {
    const { ask } = await serviceWith('empty');
    const change = (part: object) => ask<ProblemDetails>('PATCH', '/settings', part);
    const cases = [
      [{ recordedBy: 'A'.repeat(121) }, 'recordedBy', 'Keep this to 120 characters or fewer.'],
      [{ readabilityMg: 0.5 }, 'readabilityMg', 'A readability of less than a milligram cannot be entered.'],
      [{ overagePpm: 600_000 }, 'overagePpm', 'An overage above 50 % makes a different batch size.'],
    ] as const;
    for (const [part, path, message] of cases)
      expect((await change(part)).body.fields).toEqual([{ path, message }]);
  });

  it.each([
    ['zero', 0],
    ['50 tonnes', 50_000_000_000],
    ['less than nothing', -5],
  ])('refuses a batch of %s with what to do', async (_what, massMg) => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const { body: version } = await record(ask, formula.id);
    const answer = await ask<ProblemDetails>('POST', '/batches', {
      versionId: version.id,
      size: { by: 'mass', massMg },
      overagePpm: 0,
      readabilityMg: 100,
      note: '',
    });
    expect(answer.status).toBe(422);
    expect(answer.body.title).toMatch(/Enter a|smaller/);
  });

  it('deletes a draft without versions, and refuses once one is recorded', async () => {
    const { ask } = await serviceWith('demonstration');
    const { formula } = await anyFormula(ask);
    const { body: copy } = await ask<Formula>('POST', `/formulas/${formula.id}/copy`);
    expect((await ask('DELETE', `/formulas/${copy.id}`)).status).toBe(204);
    await record(ask, formula.id);
    expect((await ask<ProblemDetails>('DELETE', `/formulas/${formula.id}`)).body.code).toBe('in-use');
  });
});
