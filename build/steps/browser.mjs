import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { Halt, node, run, say } from './run.mjs';

const PLAYWRIGHT_LIMIT_MS = 5 * 60 * 1000;
/** The shell first: the same engine without windows, in which a test's fresh profile costs a tenth of the time. */
const NAMES = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'chrome',
  'msedge',
];
const MAC_PROGRAMS = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];
const WINDOWS_PROGRAMS = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Where a browser of the Chromium family may be on this kind of system, likeliest first. */
export function browserCandidates(platform, env) {
  if (platform === 'darwin') {
    const folders = ['/Applications', join(env.HOME ?? '/', 'Applications')];
    return folders.flatMap((folder) => MAC_PROGRAMS.map((program) => join(folder, program)));
  }
  if (platform === 'win32') {
    const folders = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    return folders.flatMap((folder) => WINDOWS_PROGRAMS.map((program) => `${folder}\\${program}`));
  }
  const folders = [...(env.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin', '/snap/bin'].filter(
    Boolean,
  );
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** The browser to test in: STILLROOM_BROWSER, or an installed one, or Playwright's own; undefined without any. */
export async function findBrowser() {
  const chosen = process.env.STILLROOM_BROWSER;
  if (chosen) {
    if (isProgram(chosen)) return chosen;
    throw new Halt(`STILLROOM_BROWSER is “${chosen}”, which is not a program. Correct or unset it.`);
  }
  const installed = browserCandidates(process.platform, process.env).find(isProgram);
  if (installed) return installed;
  const { chromium } = await import('@playwright/test');
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
}

async function installFromDebian() {
  say('Installing Chromium with apt-get.');
  if ((await run('apt-get', ['update'])) !== 0) return;
  await run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium-headless-shell']);
}

function isRootOnDebian() {
  if (process.platform !== 'linux' || process.getuid() !== 0) return false;
  try {
    execFileSync('apt-get', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** The browser to test in, installed if need be. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found) return found;
  say('No Chromium, Chrome or Edge is installed: fetching Playwright’s Chromium (five minutes at most).');
  await node('node_modules/playwright/cli.js', ['install', 'chromium'], { timeoutMs: PLAYWRIGHT_LIMIT_MS });
  const fetched = await findBrowser();
  if (fetched) return fetched;
  if (isRootOnDebian()) await installFromDebian();
  const installed = await findBrowser();
  if (installed) return installed;
  throw new Halt(
    'The browser tests need a browser. Install Chromium, Chrome or Edge, or set STILLROOM_BROWSER to its program.',
  );
}

/** How tests and measurements start the browser: quiet, without a network of its own, also as root in a container. */
export const BROWSER_ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
