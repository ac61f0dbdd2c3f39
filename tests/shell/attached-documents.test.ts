import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, extname, join } from 'node:path';
import { AttachedDocuments } from '../../electron/main/attached-documents';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { serviceWith } from '../unit/service/service-fixture';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const PDF = new TextEncoder().encode('%PDF-1.7\nA safety data sheet.\n');

/** The real service with a document in its library, and what opens it. */
async function withDocument(bytes: Uint8Array<ArrayBuffer> = PDF, refusal = '') {
  const { service } = await serviceWith();
  const kept = await service.request('/api/attachments', { method: 'POST', body: bytes });
  const { sha256 } = (await kept.json()) as { sha256: string };
  const temporary = mkdtempSync(join(tmpdir(), 'stillroom-shell-'));
  folders.push(temporary);
  const openPath = vi.fn(async (_path: string) => refusal);
  const documents = new AttachedDocuments({ service, temporary, openPath });
  const address = (name?: string) =>
    `app://stillroom/api/attachments/${sha256}${name === undefined ? '' : `?name=${encodeURIComponent(name)}`}`;
  return { documents, temporary, openPath, address };
}

describe('an attached document', () => {
  test('is opened as a copy of its own name, whole and not to be written to', async () => {
    const { documents, openPath, address } = await withDocument();
    await documents.open(address('Safety data sheet 2026'));
    const path = openPath.mock.calls[0]?.[0] ?? '';
    expect(basename(path)).toBe('Safety data sheet 2026.pdf');
    expect(readFileSync(path)).toEqual(Buffer.from(PDF));
    expect(statSync(path).mode & 0o222).toBe(0);
  });

  test.each([
    ['../../.bashrc', 'bashrc.pdf'],
    ['C:\\Windows\\run.exe', 'C Windows run.exe.pdf'],
    ['sheet.PDF', 'sheet.pdf'],
    ['con', /^document [0-9a-f]{12}\.pdf$/],
    ['', /^document [0-9a-f]{12}\.pdf$/],
    ['x'.repeat(5000), `${'x'.repeat(60)}.pdf`],
  ])('called “%.20s” stays in its own folder, and ends in what it is', async (called, expected) => {
    const { documents, temporary, openPath, address } = await withDocument();
    await documents.open(address(called));
    const path = openPath.mock.calls[0]?.[0] ?? '';
    expect(dirname(dirname(path))).toBe(temporary);
    if (typeof expected === 'string') expect(basename(path)).toBe(expected);
    else expect(basename(path)).toMatch(expected);
    expect(extname(path)).toBe('.pdf');
  });

  test('of the same name as another is another file, and all go at the end', async () => {
    const { documents, temporary, openPath, address } = await withDocument();
    await documents.open(address('A'));
    await documents.open(address('A'));
    expect(new Set(openPath.mock.calls.map(([path]) => path)).size).toBe(2);
    await documents.sweep();
    expect(readdirSync(temporary)).toEqual([]);
  });

  test('that is not there, or that nothing can show, is said so', async () => {
    const { documents, openPath, address } = await withDocument(PDF, 'No application is registered');
    await expect(documents.open(address('A'))).rejects.toMatchObject({
      code: 'not-found',
      message: expect.stringContaining('No application is registered'),
    });
    openPath.mockClear();
    await expect(documents.open(`app://stillroom/api/attachments/${'0'.repeat(64)}`)).rejects.toThrow();
    expect(openPath).not.toHaveBeenCalled();
  });

  test('that the service gives as something else is not opened, whatever it is called', async () => {
    const service = {
      fetch: () => new Response('#!/bin/sh\n', { headers: { 'Content-Type': 'application/pdf' } }),
    };
    const openPath = vi.fn(async () => '');
    const documents = new AttachedDocuments({ service, temporary: tmpdir(), openPath });
    await expect(documents.open('app://stillroom/api/attachments/0?name=a.pdf')).rejects.toMatchObject({
      code: 'not-allowed',
    });
    expect(openPath).not.toHaveBeenCalled();
  });
});
