import type { Batch } from '@core/batches/batch';
import { blankMaterial, type Material } from '@core/materials/material';
import type { SheetRequest } from '@core/sheets/requests';
import type { ShelfAnswer } from '@core/shelf/query';
import type { FormulaSummary } from '@db/formulas/list';
import type { VersionSummary } from '@db/formulas/versions';
import type { ProblemDetails } from '@service/problems/problem-details';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

type Service = Awaited<ReturnType<typeof serviceWith>>['service'];

async function print(service: Service, request: Partial<SheetRequest> & { kind: SheetRequest['kind'] }) {
  return service.request('/api/sheets', {
    method: 'POST',
    body: JSON.stringify(request),
    headers: { 'Content-Type': 'application/json' },
  });
}

/** The words of a PDF, page by page. */
async function textOf(response: Response): Promise<string> {
  const pdf = await getDocument({
    data: new Uint8Array(await response.arrayBuffer()),
    isEvalSupported: false,
  }).promise;
  const pages: string[] = [];
  for (let page = 1; page <= pdf.numPages; page += 1) {
    const { items } = await (await pdf.getPage(page)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return pages.join('\n').replace(/\s+/g, ' ');
}

describe('sheets through the service', () => {
  it('prints each of the four kinds, with what is in the library on them', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { body: formulas } = await ask<FormulaSummary[]>('GET', '/formulas');
    const formula = formulas.find((known) => known.name === 'Hedgerow Day Cream');
    const { body: version } = await ask<VersionSummary>('POST', `/formulas/${formula?.id}/versions`, {
      reason: 'r',
      recordedBy: 'b',
    });
    const plan = {
      versionId: version.id,
      size: { by: 'mass', massMg: 2_500_000 },
      overagePpm: 0,
      readabilityMg: 100,
      note: '',
    };
    const { body: batch } = await ask<Batch>('POST', '/batches', plan);
    const { body: shelf } = await ask<ShelfAnswer>('GET', '/materials?charge=cationic');
    const [first, second, third] = shelf.rows;

    const specification = await print(service, { kind: 'material', materialId: first?.id });
    expect(specification.headers.get('content-type')).toBe('application/pdf');
    expect(specification.headers.get('content-disposition')).toMatch(
      /filename="specification-[a-z0-9.-]+\.pdf"/,
    );
    expect(await textOf(specification)).toContain(first?.tradeName);

    const full = await textOf(
      await print(service, { kind: 'formula', formulaId: formula?.id, versionId: version.id }),
    );
    expect(full).toContain('Hedgerow Day Cream');
    const shared = await textOf(
      await print(service, {
        kind: 'formula',
        formulaId: formula?.id,
        versionId: version.id,
        forSharing: true,
        tradeNames: false,
      }),
    );
    expect(shared).not.toMatch(/€|Fennelock/);
    expect(shared).toMatch(/CETEARETH-20|Ceteareth-20/);

    const record = await textOf(await print(service, { kind: 'batch', batchId: batch.id }));
    expect(record).toContain('B-001');
    expect(record).toMatch(/2,?500\.0|2\.5000/);

    const comparison = await textOf(
      await print(service, {
        kind: 'comparison',
        materialIds: [first?.id, second?.id, third?.id].filter((id) => id !== undefined),
      }),
    );
    expect(comparison).toContain(second?.tradeName);
  });

  it('flags a name that the typeface cannot print, and prints it as codes when asked', async () => {
    const { ask, service } = await serviceWith('empty');
    const { body: material } = await ask<Material>(
      'POST',
      '/materials',
      blankMaterial('乳化剤 20', 'Ceteareth-20'),
    );
    const refused = await print(service, { kind: 'material', materialId: material.id });
    expect(refused.status).toBe(422);
    const problem = (await refused.json()) as ProblemDetails;
    expect(problem.code).toBe('unprintable-text');
    expect(problem.facts.characters).toContainEqual({ character: '乳', code: 'U+4E73' });
    expect(
      await textOf(
        await print(service, { kind: 'material', materialId: material.id, replaceUnprintable: true }),
      ),
    ).toContain('[U+4E73]');
  });

  it('refuses a sheet of something that is not there', async () => {
    const { service } = await serviceWith('empty');
    const gone = await print(service, {
      kind: 'material',
      materialId: '01890000-0000-7000-8000-000000000000',
    });
    expect(gone.status).toBe(404);
    expect((await print(service, { kind: 'comparison', materialIds: [] })).status).toBe(422);
  });
});
