import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { parse } from 'vue/compiler-sfc';

const ROOT = resolve(import.meta.dirname, '../../..');

/** Words of the product's sources that a screen, a sheet or a message may show, with their file. */
export interface VisibleWords {
  file: string;
  text: string;
}

/** Every text of the product: string literals of its scripts, and what its templates hold beside their tags. */
export function visibleWords(): VisibleWords[] {
  return ['shared-core', 'renderer', 'electron'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|vue)$/.test(name))
      .flatMap((name) => wordsOf(join(folder, name)).map((text) => ({ file: join(folder, name), text }))),
  );
}

function wordsOf(file: string): string[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  if (!file.endsWith('.vue')) return literals(file, text);
  const { script, scriptSetup, template } = parse(text).descriptor;
  const scripts = `${script?.content ?? ''}\n${scriptSetup?.content ?? ''}`;
  return [...literals(file, scripts), ...templateWords(template?.content ?? '')];
}

function literals(file: string, text: string): string[] {
  const found: string[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node)) found.push(node.text);
    else if (ts.isTemplateExpression(node)) found.push(node.getText().slice(1, -1));
    ts.forEachChild(node, look);
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found.filter((one) => one !== '');
}

/** Texts between tags and the values of attributes, without remarks to ourselves. */
function templateWords(template: string): string[] {
  const html = template.replace(/<!--[\s\S]*?-->/g, '');
  const between = [...html.matchAll(/>([^<>]+)</g)].map((one) => one[1] ?? '');
  const attributes = [...html.matchAll(/\s[:@\w-]+="([^"]+)"/g)].map((one) => one[1] ?? '');
  return [...between, ...attributes]
    .map((one) => one.replace(/\s+/g, ' ').trim())
    .filter((one) => one !== '');
}
