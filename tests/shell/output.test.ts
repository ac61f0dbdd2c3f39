import { readFileSync } from 'node:fs';
import { parseAst } from 'vite';
import { describe, expect, test } from 'vitest';
import { builtFile, builtFiles } from './built-output';

const read = (file: string) => readFileSync(file, 'utf8');

const INDEX = read(builtFile('renderer/index.html'));

describe('the built page', () => {
  test('has no script or style written into it, and no handler', () => {
    const scripts = [...INDEX.matchAll(/<script\b([^>]*)>([^<]*)<\/script>/g)];
    expect(scripts.length).toBeGreaterThan(0);
    for (const [, attributes, text] of scripts) {
      expect(attributes).toMatch(/\bsrc="\.\/assets\//);
      expect(text).toBe('');
    }
    expect(INDEX).not.toMatch(/<style|\sstyle=|\son[a-z]+=/i);
  });

  test('loads nothing from elsewhere', () => {
    for (const [, address] of INDEX.matchAll(/\b(?:src|href)="([^"]*)"/g))
      expect(address).toMatch(/^\.\/[^/]/);
    for (const file of builtFiles('renderer', ['.css'])) {
      expect(read(file), file).not.toMatch(/@import|url\(\s*["']?(https?:)?\/\//);
    }
  });

  test('imports no module of Node or Electron', () => {
    const imports = /(?:from|import)\s*\(?\s*["'](node:[^"']*|electron|fs|path|os|child_process)["']/;
    for (const file of builtFiles('renderer', ['.js', '.mjs'])) expect(read(file), file).not.toMatch(imports);
  });

  test('does not evaluate text', () => {
    for (const file of builtFiles('renderer', ['.js', '.mjs']))
      expect(evaluations(read(file)), file).toEqual([]);
  });
});

describe('the built main process', () => {
  test('has its worker beside it, so that rewriting a library holds nobody', () => {
    expect(builtFile('main/rewrite-worker.js')).toMatch(/rewrite-worker\.js$/);
  });

  test('loads no file into a window', () => {
    for (const file of builtFiles('main', ['.js'])) {
      expect(read(file), file).not.toMatch(/\.loadFile\(|loadURL\(\s*["'`](file|https?):/);
      expect(read(file), file).not.toMatch(/["'`]file:\/\//);
    }
  });

  test('opens no developer tools by itself', () => {
    for (const file of builtFiles('main', ['.js'])) expect(read(file), file).not.toContain('openDevTools');
  });
});

/** Calls of `eval` in a script, by its syntax: the word alone may be a name or a message. */
function evaluations(source: string): string[] {
  const found: string[] = [];
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(visit);
    if (typeof node !== 'object' || node === null) return;
    const { type, callee } = node as { type?: string; callee?: { name?: string } };
    if (type === 'CallExpression' && callee?.name === 'eval') found.push('eval(…)');
    Object.values(node).forEach(visit);
  };
  visit(parseAst(source));
  return found;
}
