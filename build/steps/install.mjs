import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Halt, root, run, say } from './run.mjs';

function lockedPackages(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages ?? {};
}

/** Whether node_modules holds just what package-lock.json asks for. Compared by content, not by time. */
export function dependenciesAreCurrent(folder = root) {
  const installed = join(folder, 'node_modules/.package-lock.json');
  if (!existsSync(installed)) return false;
  const have = lockedPackages(installed);
  return Object.entries(lockedPackages(join(folder, 'package-lock.json'))).every(([path, wanted]) => {
    if (path === '' || wanted.link) return true;
    const found = have[path];
    // Packages for other systems are left out by npm.
    if (!found) return Boolean(wanted.optional);
    return found.version === wanted.version;
  });
}

/** Installs what is missing, without running any package's own scripts. */
export async function ensureDependencies() {
  if (dependenciesAreCurrent()) return;
  say('Installing what Stillroom is built from (npm ci). The first time takes a minute or two.');
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund'];
  // npm tells its children where it lives; asking for `npm.cmd` would need a shell on Windows.
  const npm = process.env.npm_execpath;
  const code = npm?.endsWith('.js')
    ? await run(process.execPath, [npm, ...args])
    : await run('npm', args, { shell: process.platform === 'win32' });
  if (code !== 0) {
    throw new Halt(
      'npm could not install the packages; its message is above. Check the network connection (and a proxy, ' +
        'if there is one), and run the same command again.',
    );
  }
}
