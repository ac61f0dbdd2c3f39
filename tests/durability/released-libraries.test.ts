import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { composeService } from '@service/compose';
import type { Formula, FormulaVersion } from '@core/formulas/formula';
import { FORMULA } from '@core/formulas/noun';
import { MATERIAL } from '@core/materials/noun';
import { SETTINGS } from '@core/settings/noun';
import { keptText, type Noun } from '@core/record/noun';
import { migrations } from '@db/migrations/list';
import { Engine } from '@db/library/sql/engine';
import { alteredPart } from '@db/migrations/schema-check';
import { readState, type StateRow } from '@db/record/state';
import { blankMaterial, type Material } from '@core/materials/material';
import { afterEach, describe, expect, it } from 'vitest';

/** Schemas that no release ended with: the next one came with it. */
const SHIPPED_TOGETHER = [3];
const FIXTURES = resolve(import.meta.dirname, '../fixtures/libraries');

/** What the release that made a library answered of it, when it was made. */
interface Expected {
  settings: Record<string, unknown>;
  materials: Partial<Material>[];
  formulas: Partial<Formula>[];
  versions: FormulaVersion[];
  batches: Record<string, unknown>[];
  /** Of each batch, in their order; from schema 14 on. */
  documents?: unknown[];
  trials: Record<string, unknown>[];
  searches: Record<string, unknown>[];
}

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0)) await close();
});

/** Opens a copy of a released library with today's service. */
async function opened(release: string) {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-released-'));
  const library = join(folder, 'Shelf');
  cpSync(join(FIXTURES, release), library, { recursive: true });
  const { service, session } = composeService({ documents: folder, config: join(folder, 'config') });
  open.push(async () => {
    await session.close();
    rmSync(folder, { recursive: true, force: true });
  });
  await session.open(library);
  const ask = async <T = Record<string, unknown>>(path: string, method = 'GET', body?: unknown) => {
    const headers = { 'Content-Type': 'application/json' };
    const init = body === undefined ? { method } : { method, headers, body: JSON.stringify(body) };
    const response = await service.request(`/api${path}`, init);
    if (response.status >= 400) throw new Error(`${method} ${path}: ${await response.text()}`);
    return (await response.json()) as T;
  };
  return { ask, service, session, library };
}

function expectedOf(release: string): Expected {
  return JSON.parse(readFileSync(join(FIXTURES, release, 'expected.json'), 'utf8')) as Expected;
}

/** A material without what the record counts for itself: the freezing of old wrote it beside the content. */
function contentOf({ revision: _r, createdAt: _c, updatedAt: _u, ...content }: Material): object {
  return content;
}

it('there is one of every schema that was released, today’s included', () => {
  const [first] = SHIPPED_TOGETHER;
  const released = migrations.map(({ number }) => number).filter((number) => number !== first);
  expect(readdirSync(FIXTURES).sort()).toEqual(released.map((number) => `schema-${number}`).sort());
});

describe.each(readdirSync(FIXTURES))('a library made by an earlier release (%s)', (release) => {
  const expected = expectedOf(release);

  it('has the tables that today’s migrations make: where no log tells its hash, they are compared', async () => {
    const engine = await Engine.open(readFileSync(join(FIXTURES, release, 'library.sqlite')));
    expect(await alteredPart(engine, migrations)).toBeUndefined();
    engine.close();
  });

  it('says of every record what it said then', async () => {
    const { ask } = await opened(release);
    expect(await ask('/settings')).toMatchObject(expected.settings);
    for (const material of expected.materials)
      expect(await ask(`/materials/${material.id}`)).toMatchObject(material);
    for (const formula of expected.formulas)
      expect((await ask(`/formulas/${formula.id}`)).formula).toMatchObject(formula);
    for (const series of expected.trials) {
      const { id } = series.series as { id: string };
      expect(await ask(`/trials/${id}`)).toMatchObject(series);
    }
    for (const batch of expected.batches)
      expect((await ask(`/batches/${String(batch.id)}`)).batch).toMatchObject(batch);
    for (const [at, documents] of (expected.documents ?? []).entries())
      expect((await ask(`/batches/${String(expected.batches[at]?.id)}`)).documents).toEqual(documents);
    expect(await ask('/searches')).toEqual(expected.searches);
  });

  it('keeps every recorded version and its materials as they were, and prints them', async () => {
    const { ask, service } = await opened(release);
    expect(expected.versions.length).toBeGreaterThan(1);
    for (const version of expected.versions) {
      const now = await ask<FormulaVersion>(`/formulas/versions/${version.id}`);
      const { materials, ...rest } = version;
      expect(now).toMatchObject(rest);
      expect(Object.keys(now.materials).sort()).toEqual(Object.keys(materials).sort());
      for (const [id, frozen] of Object.entries(materials))
        expect(contentOf(now.materials[id]!)).toMatchObject(contentOf(frozen));
      const printed = await service.request('/api/sheets', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ kind: 'formula', formulaId: version.formulaId, versionId: version.id }),
      });
      expect([printed.status, printed.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    }
  });

  it('holds a material’s state once for all versions that use it unchanged', async () => {
    const { session } = await opened(release);
    const { library } = session.current();
    const distinct = new Set(
      expected.versions.flatMap(({ materials }) =>
        Object.values(materials).map((frozen) => JSON.stringify(contentOf(frozen))),
      ),
    );
    const kept = library.get<{ n: number }>("SELECT count(*) AS n FROM state WHERE kind = 'material'");
    expect(kept?.n).toBe(distinct.size);
  });

  it('takes a new version of an unchanged formula without a new state, and numbers that go on', async () => {
    const { ask, session } = await opened(release);
    const count = (where: string) =>
      session.current().library.get<{ n: number }>(`SELECT count(*) AS n FROM state ${where}`)?.n;
    const states = () => count('');
    const ofMaterials = count("WHERE kind = 'material'");
    const [version] = expected.versions;
    const path = `/formulas/${version!.formulaId}/versions`;
    const again = { reason: 'again', recordedBy: 'A. Demonstrator' };
    await ask(path, 'POST', again);
    // What an earlier release froze is under the hash that today's gives it.
    expect(count("WHERE kind = 'material'")).toBe(ofMaterials);
    const before = states();
    const { number } = await ask<{ number: number }>(path, 'POST', again);
    expect(states()).toBe(before);
    expect(number).toBe(Math.max(...expected.versions.map((one) => one.number)) + 2);
    const added = await ask<Formula>('/formulas', 'POST', {
      name: 'New',
      productType: 'gel',
      use: 'leave-on',
    });
    expect(expected.formulas.map(({ code }) => code)).not.toContain(added.code);
  });

  it('keeps what was frozen as today’s format would, so that the same is never kept twice', async () => {
    const { session } = await opened(release);
    const rows = session.current().library.all<StateRow>('SELECT * FROM state');
    const nouns: Record<string, Noun<object>> = { material: MATERIAL, formula: FORMULA, settings: SETTINGS };
    for (const row of rows) {
      const noun = nouns[row.kind]!;
      expect(keptText(noun.fields, readState(noun, row))).toBe(row.content);
    }
    expect(rows.length).toBeGreaterThan(expected.versions.length);
  });

  it('is the same after it was closed and opened again, and takes edits', async () => {
    const { ask, session, library } = await opened(release);
    const made = await ask<Material>('/materials', 'POST', blankMaterial('Brackwater Glycerin', 'Glycerin'));
    await session.close();
    expect(existsSync(join(library, 'library.sqlite'))).toBe(true);
    await session.open(library);
    expect(await ask(`/materials/${made.id}`)).toEqual(made);
    for (const version of expected.versions)
      expect((await ask<FormulaVersion>(`/formulas/versions/${version.id}`)).number).toBe(version.number);
  });
});
