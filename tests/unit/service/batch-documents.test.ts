import type { BatchDocument } from '@core/batches/document';
import type { BatchRow } from '@core/batches/list';
import { formulaContent, type Formula } from '@core/formulas/formula';
import type { ListPage } from '@core/lists/query';
import { readDocumentEntries } from '@db/batches/documents';
import { attachmentsInUse } from '@db/record/attachments-in-use';
import type { Attention } from '@db/today/attention';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

type Of = Awaited<ReturnType<typeof serviceWith>>;

const NONE = { rules: {}, records: {} };
const HEADERS = { 'Content-Type': 'application/json' };
const pdf = (says: string) =>
  new TextEncoder().encode(`%PDF-1.4\n% ${says}\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n`);

const day = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

async function keep({ service }: Of, says: string) {
  const posted = await service.request('/api/attachments', { method: 'POST', body: pdf(says) });
  const { sha256, mediaType, bytes } = (await posted.json()) as Record<string, unknown>;
  return { sha256: String(sha256), mediaType, bytes };
}

async function entered(of: Of, title: string, part: object = {}) {
  const kept = await keep(of, title);
  return { ...kept, kind: 'certificate of analysis', title, dated: '', validUntil: '', ...part };
}

async function batchOf({ ask }: Of, number: string): Promise<BatchRow> {
  const { rows } = (await ask<ListPage<BatchRow>>('GET', '/batches')).body;
  return rows.find((row) => row.number === number)!;
}

const documentsOf = async ({ ask }: Of, id: string) =>
  (await ask<{ documents: BatchDocument[] }>('GET', `/batches/${id}`)).body.documents;

async function bytesFrom({ service }: Of, path: string, body: unknown): Promise<Uint8Array> {
  const sent = { method: 'POST', headers: HEADERS, body: JSON.stringify(body) };
  const response = await service.request(`/api${path}`, sent);
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
}

async function merge(of: Of, bytes: Uint8Array): Promise<{ decisions: number }> {
  const sent = { method: 'POST', body: new Uint8Array(bytes) };
  const met = await of.service.request('/api/meetings/file?name=x', sent);
  const { id } = (await met.json()) as { id: string };
  return (await of.ask<{ merged: { decisions: number } }>('POST', `/meetings/${id}/apply`, NONE)).body.merged;
}

const packOf = (of: Of, formula: string, withBatches: boolean) =>
  bytesFrom(of, '/exports/pack', {
    ...{ title: 'Spring', materials: [], formulas: [formula], withSuppliers: false, format: 'pack' },
    withBatches,
  });

describe('a document of a batch', () => {
  it('is added, changed, removed and put back, and all that was said of it stays on record', async () => {
    const of = await serviceWith('demonstration');
    const { ask, session } = of;
    const { id } = await batchOf(of, 'B-003');
    const path = `/batches/${id}/documents`;
    const paper = await entered(of, 'Certificate');
    const added = await ask<BatchDocument[]>('POST', path, paper);
    expect(added.status).toBe(201);
    const [one] = added.body;
    expect(added.body).toEqual([{ ...paper, id: one!.id }]);
    const signed = { ...paper, title: 'Certificate, signed', dated: '2026-09-12' };
    await ask('PUT', `${path}/${one!.id}`, signed);
    expect(await documentsOf(of, id)).toEqual([{ ...signed, id: one!.id }]);
    expect((await ask('DELETE', `${path}/${one!.id}`)).body).toEqual([]);
    await ask('PUT', `${path}/${one!.id}`, signed);
    expect(await documentsOf(of, id)).toEqual([{ ...signed, id: one!.id }]);

    const { library } = session.current();
    const entries = readDocumentEntries(library, id);
    expect(entries.map(({ revision, title, removed }) => [revision, title, removed])).toEqual([
      [1, 'Certificate', false],
      [2, 'Certificate, signed', false],
      [3, 'Certificate, signed', true],
      [4, 'Certificate, signed', false],
    ]);
    for (const sql of ["UPDATE batch_document SET title = 'x'", 'DELETE FROM batch_document'])
      expect(() => library.transaction((tx) => tx.run(sql))).toThrow(/never/);
  });

  it('is refused without a title, with days that do not follow, of no file, of another kind, or of no batch', async () => {
    const of = await serviceWith('demonstration');
    const { id } = await batchOf(of, 'B-003');
    const paper = await entered(of, 'Certificate');
    for (const wrong of [
      { title: ' ' },
      { dated: '2026-03-02', validUntil: '2026-03-01' },
      { sha256: 'x' },
      { kind: 'offer' },
      { dated: 'soon' },
    ])
      expect((await of.ask('POST', `/batches/${id}/documents`, { ...paper, ...wrong })).status).toBe(422);
    const nowhere = '0195c7a0-0000-7000-8000-000000000001';
    expect((await of.ask('POST', `/batches/${nowhere}/documents`, paper)).status).toBe(404);
    expect((await of.ask('PUT', `/batches/${id}/documents/${nowhere}`, paper)).status).toBe(404);
    expect((await of.ask('DELETE', `/batches/${id}/documents/${nowhere}`)).status).toBe(404);
    expect(await documentsOf(of, id)).toEqual([]);
  });

  it('is known as in use until it is removed, reminded of, listed in tables, and in the product’s file', async () => {
    const of = await serviceWith('demonstration');
    const { ask, session } = of;
    const { id, versionId, formulaId } = await batchOf(of, 'B-003');
    const paper = await entered(of, 'Sterility', { validUntil: day(-1), kind: 'test report' });
    const [one] = (await ask<BatchDocument[]>('POST', `/batches/${id}/documents`, paper)).body;
    const inUse = () => attachmentsInUse(session.current().library).map(({ words }) => words);
    expect(inUse()).toContain('“Sterility” of batch B-003');
    const today = async () => (await ask<Attention>('GET', '/today')).body.pastDocuments.first;
    expect(await today()).toContainEqual({ of: 'batch', id, name: 'Batch B-003: Sterility' });

    const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${formulaId}`)).body;
    const report = {
      ...(await keep(of, 'assessment')),
      ...{ id: one!.id, kind: 'safety assessment', title: 'Assessment', versionNumber: null },
      ...{ dated: day(-700), validUntil: day(-2) },
    };
    const put = async (revision: number, reports: object[]) =>
      expect(
        (
          await ask('PUT', `/formulas/${formulaId}`, {
            revision,
            content: { ...formulaContent.parse(formula), reports },
          })
        ).status,
      ).toBe(200);
    await put(formula.revision, [report]);
    const told = { of: 'formula', id: formulaId, name: `${formula.name}: Assessment` };
    expect(await today()).toContainEqual(told);
    // A newer assessment has taken its place.
    await put(formula.revision + 1, [report, { ...report, id: formula.id, dated: day(-9), validUntil: '' }]);
    expect(await today()).not.toContainEqual(told);

    const asked = { noun: 'batches', query: '', ids: null, format: 'csv' };
    expect(strFromU8(await bytesFrom(of, '/exports/table', asked))).toContain('test report: Sterility');

    const files = unzipSync(await bytesFrom(of, '/sheets/product-file.zip', { versionId }));
    const name = Object.keys(files).find((path) => path.startsWith('batches/'));
    expect(name).toBe('batches/b-003/test-report-sterility.pdf');
    expect(Buffer.from(files[name!]!).equals(Buffer.from(pdf('Sterility')))).toBe(true);
    expect(strFromU8(files['contents.txt']!)).toContain('batches/b-003/');

    await ask('DELETE', `/batches/${id}/documents/${one!.id}`);
    expect(inUse()).not.toContain('“Sterility” of batch B-003');
  });
});

describe('documents of batches on their way to another library', () => {
  it('go with a pack of batches and nothing else, with their files, and both sides’ changes meet', async () => {
    const ours = await serviceWith('demonstration');
    const theirs = await serviceWith('empty');
    const { id, formulaId } = await batchOf(ours, 'B-003');
    const path = `/batches/${id}/documents`;
    const paper = await entered(ours, 'Certificate');
    const [one] = (await ours.ask<BatchDocument[]>('POST', path, paper)).body;
    const file = `attachments/${paper.sha256}`;
    expect(Object.keys(unzipSync(await packOf(ours, formulaId, false)))).not.toContain(file);
    const pack = await packOf(ours, formulaId, true);
    expect(Object.keys(unzipSync(pack))).toContain(file);

    await merge(theirs, pack);
    expect(await documentsOf(theirs, id)).toEqual([{ ...paper, id: one!.id }]);
    const kept = await theirs.session.current().library.attachments.get(paper.sha256);
    expect(Buffer.from(kept).equals(Buffer.from(pdf('Certificate')))).toBe(true);

    // There one is added; here the first is removed. Each side then has both.
    const photo = await entered(theirs, 'Second', { kind: 'test report' });
    const [, second] = (await theirs.ask<BatchDocument[]>('POST', path, photo)).body;
    await ours.ask('DELETE', `${path}/${one!.id}`);
    expect(await merge(ours, await packOf(theirs, formulaId, true))).toMatchObject({ decisions: 1 });
    expect(await documentsOf(ours, id)).toEqual([second]);
    await ours.session.current().library.attachments.get(photo.sha256);
    await merge(theirs, await packOf(ours, formulaId, true));
    expect(await documentsOf(theirs, id)).toEqual([second]);
    // Once more, nothing changes.
    expect(await merge(theirs, await packOf(ours, formulaId, true))).toMatchObject({ decisions: 0 });
  });

  it('stand whole in the library as JSON, with all that was said of them', async () => {
    const ours = await serviceWith('demonstration');
    const theirs = await serviceWith('empty');
    const { id } = await batchOf(ours, 'B-003');
    const path = `/batches/${id}/documents`;
    const paper = await entered(ours, 'Certificate');
    const [one] = (await ours.ask<BatchDocument[]>('POST', path, paper)).body;
    await ours.ask('PUT', `${path}/${one!.id}`, { ...paper, title: 'Signed' });
    const json = await bytesFrom(ours, '/exports/library', {});
    const document = JSON.parse(strFromU8(json)) as {
      batches: { id: string; documents: object[] }[];
      attachments: { sha256: string; of: string }[];
    };
    expect(document.batches.find((batch) => batch.id === id)?.documents).toHaveLength(2);
    expect(document.attachments).toContainEqual({ sha256: paper.sha256, of: '“Signed” of batch B-003' });
    // The files are not within, and that is said where they are not here already.
    const sent = { method: 'POST', body: new Uint8Array(json) };
    const met = await theirs.service.request('/api/meetings/file?name=x', sent);
    expect(((await met.json()) as { missingFiles: number }).missingFiles).toBe(document.attachments.length);
    const again = await ours.service.request('/api/meetings/file?name=x', sent);
    expect(((await again.json()) as { missingFiles: number }).missingFiles).toBe(0);
    await merge(theirs, json);
    expect((await documentsOf(theirs, id)).map(({ title }) => title)).toEqual(['Signed']);
  });
});
