import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { batchSheet } from '@core/sheets/batch-sheet';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { materialSheet } from '@core/sheets/material-sheet';
import { isFontFile } from '@service/sheets/fonts';
import { renderSheet } from '@service/sheets/render';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from './read-pdf';
import { AT, sampleMaterial, WAX } from './sample-materials';
import { CREAM_VERSION, MAKER, sampleBatch } from './samples';

const now = new Date(AT);
const batch = () => batchSheet(sampleBatch(), CREAM_VERSION, MAKER, AT);
const withImage = (image: string): SheetDefinition => {
  const sheet = materialSheet(WAX, MAKER, AT);
  return { ...sheet, content: [...sheet.content, { image, fit: [50, 50], alt: 'x' }] };
};

describe('a rendered sheet', () => {
  it('is tagged in reading order, with title and language', async () => {
    const pdf = await readPdf(await renderSheet(batch(), { now }));
    expect(pdf.marked).toBe(true);
    expect(pdf.title).toBe('Batch record – Almond day cream – B-0041');
    expect(pdf.language).toBe('en-GB');
    const headings = pdf.roles.filter((role) => /^H\d$/.test(role));
    expect(headings[0]).toBe('H1');
    expect(headings.slice(1).every((role) => role === 'H2')).toBe(true);
    for (const role of ['Table', 'TR', 'TH', 'TD', 'P']) expect(pdf.roles).toContain(role);
  });

  it('gives the same bytes for the same sheet and date, whatever was rendered between', async () => {
    const first = await renderSheet(batch(), { now });
    const other = sampleMaterial('Crème\u00a0brûlée e\u0301', [['Ωmega µ', 100]]);
    await renderSheet(materialSheet(other, MAKER, AT), { now });
    expect(Buffer.compare(Buffer.from(await renderSheet(batch(), { now })), Buffer.from(first))).toBe(0);
    const later = await renderSheet(batch(), { now: new Date('2026-03-15T10:30:00Z') });
    expect(Buffer.compare(Buffer.from(later), Buffer.from(first))).not.toBe(0);
  });

  it('leaves its definition as it was', async () => {
    const sheet = batch();
    const before = JSON.stringify(sheet);
    await renderSheet(sheet, { now });
    expect(JSON.stringify(sheet) === before).toBe(true);
  });

  it('lays out a name of 200 letters, notes of 10,000 and sixty INCI names without losing a word', async () => {
    const parts = Array.from({ length: 60 }, (_, at): [string, number] => [`Polyglyceryl-${at} Sebacate`, 1]);
    const notes = `${'n'.repeat(4000)} ${'Words. '.repeat(850)}end`;
    const wild = sampleMaterial('W'.repeat(200), parts, { notes });
    const { text, pages } = await readPdf(await renderSheet(materialSheet(wild, MAKER, AT), { now }));
    expect(text).toContain('Polyglyceryl-59 Sebacate');
    expect(text).toContain('end');
    expect(text.replace(/[^n]/g, '').length).toBeGreaterThanOrEqual(4000);
    expect(pages.length).toBeLessThan(12);
  });
});

describe('a character that the typeface lacks', () => {
  const named = sampleMaterial('Yuzu 柚子 oil', [['Citrus Junos Peel Oil', 100]]);

  it('is told of before printing, with where it stands', async () => {
    const refused = await renderSheet(materialSheet(named, MAKER, AT), { now }).catch(
      (error: unknown) => error,
    );
    if (!(refused instanceof Problem)) throw new Error('was printed');
    expect(refused.code).toBe('unprintable-text');
    expect(refused.message).toContain('柚 (U+67DA)');
    expect(refused.facts.characters).toContainEqual({ character: '子', code: 'U+5B50' });
    expect((refused.facts.where as string[]).length).toBeGreaterThan(0);
  });

  it('prints as its code when asked to', async () => {
    const bytes = await renderSheet(materialSheet(named, MAKER, AT), { now, replaceUnprintable: true });
    expect((await readPdf(bytes)).text).toContain('Yuzu [U+67DA][U+5B50] oil');
  });

  it('is not one of the Latin, Greek and Cyrillic letters', async () => {
    const fine = sampleMaterial('Łąka Ærø ß Ελιά Облепиха ≥ µ ₂ €', [['Aqua', 100]]);
    const { text } = await readPdf(await renderSheet(materialSheet(fine, MAKER, AT), { now }));
    expect(text).toContain('Łąka Ærø ß Ελιά Облепиха');
  });
});

describe('what a sheet can reach', () => {
  it.each(['http://127.0.0.1:9/x.png', 'https://example.org/x.png', 'HTTP://127.0.0.1:9/x.png'])(
    'is not %s',
    async (url) => {
      const sheet = { ...withImage('photo'), images: { photo: url } };
      await expect(renderSheet(sheet, { now })).rejects.toThrow(/denied by resource access policy/);
      await expect(renderSheet(withImage(url), { now })).rejects.toThrow(/denied|Invalid image/);
    },
  );

  it.each(['/etc/hostname', './package.json', 'file:///etc/hostname'])('is not the file %s', async (path) => {
    await expect(renderSheet(withImage(path), { now })).rejects.toThrow(/denied by resource access policy/);
  });

  it('is our fonts, exactly', () => {
    expect(isFontFile('/etc/fonts/fonts.conf')).toBe(false);
    expect(isFontFile('../node_modules/@expo-google-fonts/source-sans-3/package.json')).toBe(false);
  });
});

describe('other readers', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillroom-sheets-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const have = (tool: string): boolean => {
    const found = !spawnSync(tool, ['--version']).error;
    if (!found) console.warn(`${tool} is not installed: its check of the sheets is SKIPPED.`);
    return found;
  };
  const saved = async (): Promise<string> => {
    const file = join(folder, 'batch.pdf');
    writeFileSync(file, await renderSheet(batch(), { now }));
    return file;
  };

  it('qpdf finds no fault', async ({ skip }) => {
    if (!have('qpdf')) skip();
    // qpdf exits 2 on errors and 3 on warnings, which throws here.
    expect(execFileSync('qpdf', ['--check', await saved()], { encoding: 'utf8' })).toContain('No syntax');
  });

  it('poppler reads its text, its tags and its embedded fonts', async ({ skip }) => {
    if (!have('pdfinfo')) skip();
    const file = await saved();
    expect(execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' })).toContain('Velmora VQ 7');
    expect(execFileSync('pdfinfo', [file], { encoding: 'utf8' })).toMatch(/Tagged:\s+yes/);
    const structure = execFileSync('pdfinfo', ['-struct-text', file], { encoding: 'utf8' });
    expect(structure).toMatch(/H1 \(block\)\s+"Almond day cream"/);
    const fonts = execFileSync('pdffonts', [file], { encoding: 'utf8' }).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) expect(font).toMatch(/Identity-H\s+yes yes yes/);
  });
});
