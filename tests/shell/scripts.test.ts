import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { browserCandidates } from '../../build/steps/browser.mjs';
import { playwrightCounts, stageCounts, vitestCounts } from '../../build/steps/counts.mjs';
import { dependenciesAreCurrent } from '../../build/steps/install.mjs';
import { hasDisplay } from '../../build/steps/window.mjs';
import { readArguments } from '../../electron/loopback/arguments';
import { machineFolders } from '../../electron/loopback/machine-folders';
import { browserOpener } from '../../electron/loopback/open-browser';

const START = resolve(import.meta.dirname, '../../build/start.mjs');
let folder: string;
const made: string[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillroom-scripts-'));
  made.push(folder);
});
afterAll(() => made.forEach((path) => rmSync(path, { recursive: true, force: true })));

describe('npm start', () => {
  function start(...args: string[]) {
    const { status, stdout, stderr } = spawnSync(process.execPath, [START, ...args], { encoding: 'utf8' });
    return { status, stdout, stderr };
  }

  test('explains itself', () => {
    const { status, stdout } = start('--help');
    expect(status).toBe(0);
    for (const flag of ['--library', '--demo', '--port', '--no-open']) expect(stdout).toContain(flag);
  });

  test.each([
    [['--colour', 'red'], '--colour'],
    [['--port', 'eighty'], 'eighty'],
    [['--port', '70000'], '70000'],
    [['--demo', '--library', 'x'], 'not both'],
    [['--library'], '--library'],
    [['shelf'], 'shelf'],
  ])('refuses %j and says why', (args, why) => {
    const { status, stderr } = start(...args);
    expect(status).toBe(1);
    expect(stderr).toContain(why);
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});

describe('what is installed', () => {
  function lock(name: string, packages: Record<string, object>) {
    writeFileSync(join(folder, name), JSON.stringify({ packages }));
  }
  const wanted = {
    '': {},
    'node_modules/a': { version: '1.0.0' },
    'node_modules/b': { version: '2.0.0', optional: true },
  };

  test('is current when every version stands as locked; packages for other systems may be missing', () => {
    mkdirSync(join(folder, 'node_modules'));
    lock('package-lock.json', wanted);
    lock('node_modules/.package-lock.json', { 'node_modules/a': { version: '1.0.0' } });
    expect(dependenciesAreCurrent(folder)).toBe(true);
  });

  test('is not current without packages, with one missing, or with another version', () => {
    lock('package-lock.json', wanted);
    expect(dependenciesAreCurrent(folder)).toBe(false);
    mkdirSync(join(folder, 'node_modules'));
    lock('node_modules/.package-lock.json', {});
    expect(dependenciesAreCurrent(folder)).toBe(false);
    lock('node_modules/.package-lock.json', { 'node_modules/a': { version: '1.0.1' } });
    expect(dependenciesAreCurrent(folder)).toBe(false);
  });
});

describe('counting', () => {
  const since = Date.now();
  function report(content: object): string {
    const file = join(folder, 'report.json');
    writeFileSync(file, JSON.stringify(content));
    return file;
  }

  test('a stage is one question', () => {
    expect(stageCounts(0)).toEqual({ passed: 1, failed: 0, skipped: 0 });
    expect(stageCounts(2)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  test('a runner that wrote no report has failed, whatever its exit code', () => {
    expect(vitestCounts('no/such/report.json', since, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  test('a file that could not be loaded is a failure, and so is a crash after passing tests', () => {
    const unloaded = { name: 'a.test.ts', status: 'failed', message: 'no such module', assertionResults: [] };
    const base = { numPassedTests: 3, numFailedTests: 0, numPendingTests: 1, numTodoTests: 0 };
    const path = report({ ...base, testResults: [unloaded] });
    const counts = { passed: 3, failed: 1, skipped: 1 };
    const read = vitestCounts(path, since, 1);
    expect(read).toMatchObject(counts);
    expect(read.failures).toEqual([expect.stringMatching(/a\.test\.ts\n {4}no such module$/)]);
    report({ ...base, testResults: [] });
    expect(vitestCounts(path, since, 1)).toMatchObject(counts);
    expect(vitestCounts(path, since, 0)).toEqual({ passed: 3, failed: 0, skipped: 1, failures: [] });
  });

  test('a browser test that passed only when repeated is a failure', () => {
    const tests = [{ status: 'flaky', results: [{ errors: [{ message: 'timed out' }] }, { errors: [] }] }];
    const spec = { file: 'a.spec.ts', line: 7, title: 'opens', tests };
    const stats = { expected: 5, unexpected: 0, flaky: 1, skipped: 2 };
    const path = report({ stats, suites: [{ suites: [{ specs: [spec] }] }] });
    const read = playwrightCounts(path, since, 0);
    expect(read).toMatchObject({ passed: 5, failed: 1, skipped: 2 });
    expect(read.failures).toEqual(['a.spec.ts:7 › opens\n    timed out']);
  });

  test('a failed test is told again with the first lines of why', () => {
    const failed = {
      status: 'failed',
      fullName: 'a total › is 100',
      failureMessages: ['expected 99 to be 100'],
    };
    const passed = { status: 'passed', fullName: 'a total › is exact', failureMessages: [] };
    const base = { numPassedTests: 1, numFailedTests: 1, numPendingTests: 0, numTodoTests: 0 };
    const file = { name: 'b.test.ts', status: 'failed', assertionResults: [passed, failed] };
    const [why, ...more] = vitestCounts(report({ ...base, testResults: [file] }), since, 1).failures ?? [];
    expect(why).toMatch(/b\.test\.ts › a total › is 100\n {4}expected 99 to be 100$/);
    expect(more).toEqual([]);
  });
});

describe('systems', () => {
  test('a window needs a display', () => {
    expect(hasDisplay('linux', {})).toBe(false);
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
    expect(hasDisplay('darwin', {})).toBe(true);
    expect(browserOpener('linux', {})).toBeUndefined();
    expect(browserOpener('linux', { DISPLAY: ':0' })).toEqual({ command: 'xdg-open', args: [] });
    expect(browserOpener('win32', {})?.command).toBe('rundll32');
  });

  test('browsers are looked for where each system keeps them', () => {
    expect(browserCandidates('linux', { PATH: '/opt/bin' })).toContain('/opt/bin/chromium');
    expect(browserCandidates('darwin', { HOME: '/Users/m' })[0]).toMatch(/^\/Applications\/.*Chrome$/);
    const windows = browserCandidates('win32', { PROGRAMFILES: 'C:\\Program Files' });
    expect(windows).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
  });

  test('data is kept where each system keeps it', () => {
    const linux = machineFolders({ platform: 'linux', home: '/home/m', env: {} });
    expect(linux).toEqual({
      documents: '/home/m/Documents/Stillroom',
      config: '/home/m/.config/Stillroom',
      home: '/home/m',
    });
    const mac = machineFolders({ platform: 'darwin', home: '/Users/m', env: {} });
    expect(mac.config).toBe('/Users/m/Library/Application Support/Stillroom');
  });
});

describe('the host’s own command line', () => {
  test('is read', () => {
    expect(readArguments([])).toEqual({ library: undefined, demo: false, port: undefined, open: true });
    expect(readArguments(['--library', '/a b', '--port', '8080', '--no-open'])).toEqual({
      library: '/a b',
      demo: false,
      port: 8080,
      open: false,
    });
  });

  test.each([
    ['--x'],
    ['--port=-1'],
    ['--port=65536'],
    ['--port=8e3'],
    ['--library='],
    ['--demo', '--library=x'],
    ['x'],
  ])('refuses %j %j', (...args) => {
    expect(() => readArguments(args)).toThrow(expect.objectContaining({ code: 'invalid-input' }));
  });
});
