import type { Batch } from '@core/batches/batch';
import { blankMaterial, type Material } from '@core/materials/material';
import { BLANK_HLB } from '@core/calculators/hlb-request';
import { SHEETS, type sheetRequest, type SheetKind, type SheetRequest } from '@core/sheets/requests';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import type { FormulaRow } from '@core/formulas/list';
import type { VersionSummary } from '@db/formulas/versions';
import type { ProblemDetails } from '@service/problems/problem-details';
import { KINDS } from '@service/sheets/kinds/all';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { serviceWith, type Ask } from './service-fixture';

type Service = Awaited<ReturnType<typeof serviceWith>>['service'];

type AnyRequest = z.input<typeof sheetRequest>;

async function print(
  service: Service,
  request: AnyRequest | (Partial<SheetRequest> & { kind: SheetRequest['kind'] }),
) {
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

/** A request for each kind of sheet of the demonstration library, and words that its sheet must hold. */
async function oneOfEach(ask: Ask) {
  const { body: formulas } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
  const formula = formulas.rows.find((known) => known.name === 'Hedgerow Day Cream') ?? formulas.rows[0];
  const formulaId = formula?.id ?? '';
  const recorded = await ask<VersionSummary>('POST', `/formulas/${formulaId}/versions`, {
    reason: 'r',
    recordedBy: 'b',
  });
  const plan = {
    versionId: recorded.body.id,
    size: { by: 'mass', massMg: 2_500_000 },
    overagePpm: 0,
    readabilityMg: 100,
    note: '',
  };
  const { body: batch } = await ask<Batch>('POST', '/batches', plan);
  const { body: shelf } = await ask<ListPage<MaterialRow>>('GET', '/materials?charge=cationic');
  const [oil, emulsifier] = shelf.rows;
  if (!oil || !emulsifier) throw new Error('The demonstration library has no cationic materials.');
  const { body: kept } = await ask<{ series: { id: string } }>('POST', '/trials', {
    title: 'Which emulsifier',
    formulaId,
    targetHlb: null,
    batchMg: 100_000,
    readabilityMg: 10,
    trials: [
      {
        label: 'One',
        hlb: null,
        levelPpm: 50_000,
        lines: [{ materialId: emulsifier.id, part: 'emulsifier', ppm: 50_000, mg: 5000 }],
        result: '',
      },
    ],
    chosen: null,
    notes: '',
  });
  const line = (materialId: string, percent: number) => ({ materialId, percent });
  const requests: Record<SheetKind, AnyRequest> = {
    material: { kind: 'material', materialId: oil.id },
    formula: { kind: 'formula', formulaId },
    label: { kind: 'label', formulaId },
    exposure: { kind: 'exposure', formulaId },
    file: { kind: 'file', versionId: recorded.body.id },
    part: { kind: 'part', versionId: recorded.body.id, part: 'specification' },
    batch: { kind: 'batch', batchId: batch.id },
    comparison: { kind: 'comparison', materialIds: [oil.id, emulsifier.id] },
    calculation: { kind: 'calculation', calculation: BLANK_HLB },
    working: {
      kind: 'working',
      bench: {
        title: 'Which oils',
        formulaId: null,
        emulsionType: 'o/w',
        oils: [line(oil.id, 20)],
        emulsifiers: [line(emulsifier.id, 5)],
        rest: [],
        targetHlb: null,
      },
    },
    trials: { kind: 'trials', seriesId: kept.series.id },
    glossary: { kind: 'glossary', terms: ['hlb', 'qs'] },
  };
  const expected: Record<SheetKind, string> = {
    material: oil.tradeName,
    formula: 'Hedgerow Day Cream',
    label: 'Hedgerow Day Cream',
    exposure: 'Hedgerow Day Cream',
    file: 'What is missing',
    part: 'Staphylococcus aureus',
    batch: batch.number,
    comparison: emulsifier.tradeName,
    calculation: 'HLB',
    working: oil.tradeName,
    trials: 'Which emulsifier',
    glossary: 'Hydrophile-lipophile balance',
  };
  return { requests, expected };
}

// Loading the printer and the plots is most of the work, and none of what is tested.
beforeAll(async () => {
  await import('@service/sheets/render');
  for (const kind of Object.values(KINDS)) await kind.setting();
});

describe('sheets through the service', () => {
  it('prints every kind there is, named after what it is of', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { requests, expected } = await oneOfEach(ask);
    for (const kind of Object.keys(SHEETS) as SheetKind[]) {
      const printed = await print(service, requests[kind]);
      expect(printed.status, kind).toBe(200);
      expect(printed.headers.get('content-type'), kind).toBe('application/pdf');
      const file = /filename="([a-z0-9.-]+)\.pdf"/.exec(
        printed.headers.get('content-disposition') ?? '',
      )?.[1];
      expect(file?.startsWith(SHEETS[kind].fileWord.replaceAll(' ', '-')), `${kind}: ${file}`).toBe(true);
      expect(await textOf(printed), kind).toContain(expected[kind]);
    }
  });

  it('prints a formula whole, to share, a batch and a comparison, with what is in the library on them', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { body: formulas } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
    const formula = formulas.rows.find((known) => known.name === 'Hedgerow Day Cream');
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
    const { body: shelf } = await ask<ListPage<MaterialRow>>('GET', '/materials?charge=cationic');
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
    expect(record).toContain('B-004');
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
