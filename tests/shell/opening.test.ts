import { mkdtempSync, readFileSync, rmSync, statSync, existsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { keepPort, keptPort } from '../../electron/loopback/kept-port';
import { openingPage } from '../../electron/loopback/opening-page';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'stillroom-opening-'))));
afterEach(() => rmSync(folder, { recursive: true }));

describe('the page that opens the browser', () => {
  const address = 'http://127.0.0.1:4711/?key=abc_DEF-123';

  test('leads to the address, and its name does not tell the key', () => {
    const page = openingPage(join(folder, 'new'), address);
    expect(readFileSync(page.file, 'utf8')).toContain(`url=${address}`);
    expect(page.file).not.toContain('abc_DEF');
    page.remove();
    expect(existsSync(page.file)).toBe(false);
    page.remove();
  });

  test.skipIf(process.platform === 'win32')('can be read by its maker only', () => {
    expect(statSync(openingPage(folder, address).file).mode & 0o777).toBe(0o600);
  });
});

describe('the port', () => {
  test('of the first run is kept, and a later one does not take its place', () => {
    const config = join(folder, 'config');
    expect(keptPort(config)).toBeUndefined();
    keepPort(config, 41_000);
    keepPort(config, 41_001);
    expect(keptPort(config)).toBe(41_000);
  });

  test.each(['', '{}', '{"port":"x"}', '{"port":80}', '{"port":70000}'])('“%s” is no port', (text) => {
    writeFileSync(join(folder, 'port.json'), text);
    expect(keptPort(folder)).toBeUndefined();
    keepPort(folder, 41_000);
    expect(keptPort(folder)).toBe(41_000);
  });
});
