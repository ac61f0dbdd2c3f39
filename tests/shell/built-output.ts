import { existsSync, readdirSync } from 'node:fs';
import { extname, join, resolve } from 'node:path';

const OUT = resolve(import.meta.dirname, '../../out');

/** A file of the build. Throws, so that a missing build is a failure and not a test left out. */
export function builtFile(name: string): string {
  const file = join(OUT, name);
  if (!existsSync(file))
    throw new Error(`out/${name} is not built. Run “npm run build” first; “npm test” does.`);
  return file;
}

/** The files of one part of the build that end so. */
export function builtFiles(part: 'main' | 'preload' | 'renderer', extensions: string[]): string[] {
  const folder = builtFile(part);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => extensions.includes(extname(name)))
    .map((name) => join(folder, name));
}
