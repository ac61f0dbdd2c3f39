import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { parse } from 'vue/compiler-sfc';
import ts from 'typescript';

const ROOT = resolve(import.meta.dirname, '../../..');
const LAYERS = ['shared-core', 'db', 'electron', 'renderer'];
const ALIASES: Record<string, string> = {
  '@core': 'shared-core',
  '@db': 'db',
  '@service': 'electron/service',
  '@renderer': 'renderer',
};

function sources(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|vue)$/.test(name))
    .map((name) => join(folder, name));
}

function isFile(path: string): boolean {
  return statSync(join(ROOT, path), { throwIfNoEntry: false })?.isFile() ?? false;
}

/** The file of ours that an import names, or undefined for a package. */
function resolved(from: string, named: string): string | undefined {
  const [alias = ''] = named.split('/');
  const folder = ALIASES[alias];
  if (folder === undefined && !named.startsWith('.')) return undefined;
  const path =
    folder === undefined
      ? relative(ROOT, resolve(ROOT, dirname(from), named))
      : join(folder, named.slice(alias.length + 1));
  return [path, `${path}.ts`, join(path, 'index.ts')].find(isFile);
}

function scriptOf(file: string): string {
  const text = readFileSync(join(ROOT, file), 'utf8');
  if (!file.endsWith('.vue')) return text;
  const { script, scriptSetup } = parse(text).descriptor;
  return `${script?.content ?? ''}\n${scriptSetup?.content ?? ''}`;
}

/** What each file of the product imports of ours at its head, types included; what it loads only when needed is not in it. */
export function importsOfProduct(): Map<string, string[]> {
  return new Map(
    LAYERS.flatMap(sources).map((file) => {
      const { statements } = ts.createSourceFile(file, scriptOf(file), ts.ScriptTarget.Latest);
      const named = statements.flatMap((statement) =>
        (ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement)) &&
        statement.moduleSpecifier &&
        ts.isStringLiteral(statement.moduleSpecifier)
          ? [statement.moduleSpecifier.text]
          : [],
      );
      const found = named.flatMap((name) => resolved(file, name) ?? []);
      return [file, [...new Set(found)]];
    }),
  );
}

/** Groups of files that import one another in a circle, each sorted (Tarjan 1972, strongly connected components). */
export function circles(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const found: string[][] = [];
  const visit = (file: string): void => {
    order.set(file, order.size);
    low.set(file, order.get(file) ?? 0);
    stack.push(file);
    for (const next of graph.get(file) ?? []) {
      if (!order.has(next)) visit(next);
      if (stack.includes(next)) low.set(file, Math.min(low.get(file) ?? 0, low.get(next) ?? 0));
    }
    if (low.get(file) !== order.get(file)) return;
    const group = stack.splice(stack.indexOf(file));
    if (group.length > 1 || graph.get(file)?.includes(file)) found.push(group.sort());
  };
  for (const file of graph.keys()) if (!order.has(file)) visit(file);
  return found;
}
