import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { node, root, say } from './run.mjs';

const PACKAGE = join(root, 'node_modules/electron');
const FAILED = join(root, 'node_modules/.cache/stillroom/electron-runtime-failed');
const DAY_MS = 24 * 60 * 60 * 1000;
const INSTALL_LIMIT_MS = 2 * 60 * 1000;

/** Whether a window can be shown at all. */
export function hasDisplay(platform = process.platform, env = process.env) {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** The Electron program, or undefined where its runtime has not been fetched. */
export function electronProgram() {
  const pathFile = join(PACKAGE, 'path.txt');
  if (!existsSync(pathFile)) return undefined;
  const program = join(PACKAGE, 'dist', readFileSync(pathFile, 'utf8').trim());
  return existsSync(program) ? program : undefined;
}

function failedLately() {
  return existsSync(FAILED) && Date.now() - statSync(FAILED).mtimeMs < DAY_MS;
}

/** The Electron program, fetched once if need be. A failure is remembered for a day: it would slow each start. */
export async function obtainElectron() {
  const program = electronProgram();
  if (program || failedLately()) return program;
  say('Fetching the Electron runtime for a window of its own (once, about 110 MB, two minutes at most).');
  await node('node_modules/electron/install.js', [], { timeoutMs: INSTALL_LIMIT_MS });
  const fetched = electronProgram();
  if (!fetched) {
    mkdirSync(dirname(FAILED), { recursive: true });
    writeFileSync(FAILED, new Date().toISOString());
    console.log(
      'It could not be fetched, so Stillroom opens in the browser. It will be tried again tomorrow,',
    );
    console.log('or at once with: npx install-electron');
  }
  return fetched;
}
