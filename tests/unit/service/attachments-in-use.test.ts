import { formulaContent, type Formula } from '@core/formulas/formula';
import type { FormulaRow } from '@core/formulas/list';
import type { ListPage } from '@core/lists/query';
import { materialContent, type Material } from '@core/materials/material';
import type { MaterialRow } from '@core/materials/list';
import { attachmentsInUse } from '@db/record/attachments-in-use';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

interface Paper {
  sha256: string;
  mediaType: string;
  bytes: number;
}

const PHOTO = 'a1'.repeat(32);
const PDF = new TextEncoder().encode('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n');

it('knows each photo, document and report by the record that shows it, and misses one that is gone', async () => {
  const { ask, service, session } = await serviceWith('demonstration');
  const { library } = session.current();
  const before = attachmentsInUse(library);
  for (const each of before) await library.attachments.get(each.sha256);
  expect(before.map(({ words }) => words)).toContain('“Specification, third issue” of Goldenthrum Sunflower');
  const posted = await service.request('/api/attachments', { method: 'POST', body: PDF });
  const { sha256, mediaType, bytes } = (await posted.json()) as Paper;

  const { body: shelf } = await ask<ListPage<MaterialRow>>('GET', '/materials');
  const { body: material } = await ask<Material>(
    'GET',
    `/materials/${shelf.rows.find(({ tradeName }) => !before.some(({ words }) => words.endsWith(tradeName)))?.id}`,
  );
  const paper = { sha256, mediaType, bytes };
  const sheet = { ...paper, kind: 'safety data sheet', title: 'Data sheet', dated: '', validUntil: '' };
  const shown = { ...materialContent.parse(material), photo: PHOTO, documents: [sheet] };
  const kept = await ask('PUT', `/materials/${material.id}`, { revision: material.revision, content: shown });
  expect(kept.status).toBe(200);

  const { body: all } = await ask<ListPage<FormulaRow>>('GET', '/formulas');
  const id = all.rows.find((row) => row.name === 'Hedgerow Day Cream')?.id ?? '';
  const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${id}`)).body;
  const report = {
    id: '01900000-0000-7000-8000-00000000abc1',
    kind: 'stability report',
    title: 'Twelve weeks at 40',
    ...paper,
    versionNumber: null,
  };
  const content = { ...formulaContent.parse(formula), reports: [report] };
  const saved = await ask('PUT', `/formulas/${id}`, { revision: formula.revision, content });
  expect(saved.status).toBe(200);

  const now = attachmentsInUse(library).filter(({ sha256: each }) => [PHOTO, sha256].includes(each));
  expect(now).toEqual([
    { sha256: PHOTO, words: `the photo of ${material.tradeName}` },
    { sha256, words: `“Data sheet” of ${material.tradeName}` },
    { sha256, words: '“Twelve weeks at 40” of Hedgerow Day Cream' },
  ]);

  const heard: string[] = [];
  session.changes.listen({ hear: ({ change }) => heard.push(change.kind), end: () => undefined });
  rmSync(join(library.folder, 'attachments', sha256.slice(0, 2), sha256));
  await library.checkAttachments();
  expect(heard).toEqual(['library']);
  const { body: status } = await ask<{ open: { notes: { title: string; detail: string }[] } }>(
    'GET',
    '/library',
  );
  expect(status.open.notes).toHaveLength(1);
  expect(status.open.notes[0]?.title).toBe('2 attachments of this library are missing.');
  expect(status.open.notes[0]?.detail).toContain(`The photo of ${material.tradeName} (missing)`);
});
