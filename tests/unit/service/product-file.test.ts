import { formulaContent, type Formula } from '@core/formulas/formula';
import type { FormulaRow } from '@core/formulas/list';
import type { ListPage } from '@core/lists/query';
import type { MarketRegion } from '@core/products/product-kinds';
import type { VersionSummary } from '@db/formulas/versions';
import { strFromU8, unzipSync } from 'fflate';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../sheets/read-pdf';
import { serviceWith, type Ask } from './service-fixture';

const PDF = new TextEncoder().encode('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n');

async function filed(
  ask: Ask,
  service: Awaited<ReturnType<typeof serviceWith>>['service'],
  regions: MarketRegion[] = ['EU'],
) {
  const { body: all } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
  const id = all.rows.find((row) => row.name === 'Hedgerow Day Cream')?.id ?? '';
  const { formula: before } = (await ask<{ formula: Formula }>('GET', `/formulas/${id}`)).body;
  const market = { ...before.market, regions };
  const sold = { ...formulaContent.parse(before), market };
  expect((await ask('PUT', `/formulas/${id}`, { revision: before.revision, content: sold })).status).toBe(
    200,
  );
  const { body: version } = await ask<VersionSummary>('POST', `/formulas/${id}/versions`, {
    reason: 'first',
    recordedBy: 'A. D.',
  });
  // A report comes after the version that it speaks of: the file takes it all the same.
  const posted = await service.request('/api/attachments', { method: 'POST', body: PDF });
  const { sha256, mediaType, bytes } = (await posted.json()) as {
    sha256: string;
    mediaType: string;
    bytes: number;
  };
  const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${id}`)).body;
  const reportId = '01900000-0000-7000-8000-00000000abc1';
  const report = {
    ...{
      id: reportId,
      kind: 'stability report',
      title: 'Twelve weeks at 40',
      sha256,
      mediaType,
      bytes,
      versionNumber: 1,
    },
  };
  const claim = {
    id: '01900000-0000-7000-8000-00000000abc2',
    says: 'Softens the skin',
    evidence: '',
    reportId,
  };
  const bare = { ...claim, id: '01900000-0000-7000-8000-00000000abc3', says: 'Lasts a day', reportId: null };
  const content = { ...formulaContent.parse(formula), reports: [report], claims: [claim, bare] };
  const saved = await ask('PUT', `/formulas/${id}`, { revision: formula.revision, content });
  expect(saved.status).toBe(200);
  return { id, version };
}

beforeAll(async () => void (await import('@service/sheets/render')));

describe('the product’s file', () => {
  it('is one document with contents, gaps and bookmarks that lead to its parts', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { version } = await filed(ask, service);
    const response = await service.request('/api/sheets', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ kind: 'file', versionId: version.id }),
    });
    expect(response.status).toBe(200);
    const bytes = new Uint8Array(await response.arrayBuffer());
    const { text, pages, marked, roles } = await readPdf(bytes);
    expect(marked && roles.filter((role) => role === 'H1').length > 5).toBe(true);
    for (const words of [
      'Twelve weeks at 40',
      '“Lasts a day” has no evidence.',
      'No challenge test of the preservation is on file.',
      'Pseudomonas aeruginosa',
      'at most 1,000 CFU',
    ])
      expect(text).toContain(words);
    const document = await getDocument({ data: bytes, verbosity: 0 }).promise;
    const outline = (await document.getOutline()) as {
      title: string;
      dest: unknown;
      items: { title: string }[];
    }[];
    expect(outline.map(({ title }) => title)).toEqual([
      'Formula and procedure',
      'Specification of the finished product',
      'Label and law',
      'Exposure and natural origin',
      'Claims and statements',
      'Reports on file',
      'Batches',
      'Raw materials',
    ]);
    expect(outline.at(-1)?.items.length).toBeGreaterThan(10);
    // The contents name the page on which a part begins.
    const label = pages.findIndex((page) => page.startsWith('Label and law')) + 1;
    expect(pages[0]).toMatch(new RegExp(`Label and law\\s+${label}\\b`));
    await document.destroy();
  });

  it('is a folder of its parts, with the documents on file and what is missing', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { version } = await filed(ask, service, ['EU', 'US']);
    const response = await service.request('/api/sheets/product-file.zip', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ versionId: version.id }),
    });
    expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/zip']);
    const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
    const names = Object.keys(files);
    expect(names).toEqual(
      expect.arrayContaining(['contents.txt', '00-product-file.pdf', '02-label-and-law.pdf']),
    );
    expect(names.filter((name) => /^\d\d-/.test(name)).sort()).toEqual([
      '00-product-file.pdf',
      '01-formula.pdf',
      '02-label-and-law-united-states.pdf',
      '02-label-and-law.pdf',
      '03-exposure.pdf',
      '04-specification-of-the-finished-product.pdf',
      '05-claims-and-statements.pdf',
      '06-reports-on-file.pdf',
      '07-batches.pdf',
    ]);
    const specification = await readPdf(files['04-specification-of-the-finished-product.pdf']!);
    // ISO 17516 by kind: a face cream is none of those for small children or near the eyes.
    expect(specification.text).toContain('at most 1,000 CFU');
    expect(specification.text).toContain('Candida albicans');
    const us = await readPdf(files['02-label-and-law-united-states.pdf']!);
    expect(us.text).toContain('Water, ');
    const report = names.find((name) => name.startsWith('reports/'));
    expect(report).toBe('reports/stability-report-version-1-twelve-weeks-at-40.pdf');
    expect(files[report ?? '']).toEqual(PDF);
    expect(
      names.filter((name) => /^materials\/[^/]+\/specification\.pdf$/.test(name)).length,
    ).toBeGreaterThan(10);
    for (const name of names.filter((one) => one.endsWith('.pdf')))
      expect(strFromU8(files[name]?.subarray(0, 5) ?? new Uint8Array()), name).toBe('%PDF-');
    expect(strFromU8(files['contents.txt'] ?? new Uint8Array())).toContain('“Lasts a day” has no evidence.');
    const missing = '01900000-0000-7000-8000-00000000abcd';
    expect((await ask('POST', '/sheets/product-file.zip', { versionId: missing })).status).toBe(404);
  });
});
