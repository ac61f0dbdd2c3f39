import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Halt, node, root, say } from './run.mjs';

const SOURCES = ['shared-core', 'db', 'electron', 'renderer'];
const SINGLE_SOURCES = ['build/electron.vite.config.ts', 'package-lock.json', 'tsconfig.json'];
const STAMP = join(root, 'out/built-from.txt');
const BUILT = [
  'out/main/index.js',
  'out/main/loopback.js',
  'out/preload/index.cjs',
  'out/renderer/index.html',
];

/** A digest over what the build reads: name, size and time of each file. */
function digestOfSources() {
  const digest = createHash('sha256');
  const add = (name) => {
    const { size, mtimeMs } = statSync(join(root, name));
    digest.update(`${name}\0${size}\0${mtimeMs}\n`);
  };
  for (const folder of SOURCES) {
    const entries = readdirSync(join(root, folder), { recursive: true, withFileTypes: true });
    const files = entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
    for (const file of files.sort()) add(file.slice(root.length + 1));
  }
  for (const file of SINGLE_SOURCES) add(file);
  return digest.digest('hex');
}

/** Whether `out/` was built from the sources as they are now. */
export function outputIsCurrent() {
  if (!BUILT.every((file) => existsSync(join(root, file))) || !existsSync(STAMP)) return false;
  return readFileSync(STAMP, 'utf8') === digestOfSources();
}

/** Builds main, preload, loopback and page into `out/`; answers the exit code. */
export async function buildOutput() {
  // Taken before: what changes during the build makes the next start build again.
  const digest = digestOfSources();
  const code = await node('node_modules/electron-vite/bin/electron-vite.js', [
    'build',
    '--config',
    'build/electron.vite.config.ts',
  ]);
  if (code === 0) {
    mkdirSync(join(root, 'out'), { recursive: true });
    writeFileSync(STAMP, digest);
  }
  return code;
}

/** Builds when the sources are newer than the output. */
export async function ensureOutput() {
  if (outputIsCurrent()) return;
  say('Building Stillroom.');
  if ((await buildOutput()) !== 0) {
    throw new Halt(
      'The build failed; its message is above. Delete the folder “out” and run the command again.',
    );
  }
}
