import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { publishedCaseFiles } from './published';

const script = resolve(import.meta.dirname, '../../build/cases.mjs');
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cases-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...files: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...files], {
    encoding: 'utf8',
    cwd: folder,
    env: { ...process.env, INIT_CWD: folder },
  });
  return { status, lines: stdout.trim().split('\n'), stderr };
}

function write(name: string, content: unknown): string {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
}

// The smallest example with a known answer: half of each of HLB 5 and 15 gives 10.
const good = {
  id: 'good',
  kind: 'blend-share',
  inputs: { targetHlb: 10, lowHlb: 5, highHlb: 15 },
  expect: { value: 50, unit: '%', tolerance: 0.1 },
  source: 'by definition',
};

describe('npm run cases', () => {
  it('passes every published example, one line each, and exits 0', () => {
    const { status, lines } = run(...publishedCaseFiles());
    expect(status).toBe(0);
    expect(lines.slice(0, -1).every((line) => line.includes('; pass'))).toBe(true);
    expect(lines.at(-1)).toMatch(/^\d+ passed, 0 failed$/);
  });

  it('shows id, expected and got, fails a wrong value and an unknown kind, and still runs the rest', () => {
    const file = write('mixed.json', [
      { ...good, id: 'wrong', expect: { value: 40, unit: '%', tolerance: 0.1 } },
      { ...good, id: 'odd', kind: 'phase-of-the-moon' },
      { id: 'torn' },
      good,
    ]);
    const { status, lines } = run(file);
    expect(status).toBe(1);
    expect(lines[0]).toBe('wrong: expected 40 % ± 0.1; got 50; fail');
    expect(lines[1]).toContain('unknown kind “phase-of-the-moon”');
    expect(lines[2]).toContain('torn:');
    expect(lines[2]).toContain('malformed');
    expect(lines[3]).toBe('good: expected 50 % ± 0.1; got 50; pass');
    expect(lines[4]).toBe('1 passed, 3 failed');
  });

  it('names a file that is no JSON, holds no cases or is missing, and runs the others', () => {
    const { status, lines } = run(
      write('torn.json', '[{'),
      write('empty.json', []),
      'none.json',
      write('ok.json', [good]),
    );
    expect(status).toBe(1);
    expect(lines[0]).toContain('torn.json: not JSON');
    expect(lines[1]).toContain('empty.json: malformed: it holds no cases');
    expect(lines[2]).toContain('none.json: cannot be read');
    expect(lines[3]).toContain('good: expected 50 % ± 0.1; got 50; pass');
    expect(lines[4]).toBe('1 passed, 3 failed');
  });

  it('asks for a file when none is named', () => {
    const { status, stderr } = run();
    expect(status).toBe(2);
    expect(stderr).toContain('Name at least one file');
  });
});
