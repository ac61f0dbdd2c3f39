import { isAttachment } from '../../electron/main/attached-documents';
import { isOurs, isOwnDownload, mayRequest } from '../../electron/main/origin';
import { isPermitted } from '../../electron/main/permissions';
import { windowArguments } from '../../electron/main/arguments';
import { windowOptions } from '../../electron/main/window-options';
import { windowGate } from '../../electron/main/window-gate';
import { isRevealable } from '../../electron/main/desktop-calls';
import { menuTemplate } from '../../electron/main/menu';
import { MENU_COMMANDS } from '../../electron/preload/contract';
import { Hono } from 'hono';
import { describe, expect, test } from 'vitest';
import { HOSTILE_URLS } from './hostile-urls';

describe('what belongs to Stillroom', () => {
  test.each([
    'app://stillroom/',
    'app://stillroom/index.html',
    'app://stillroom/api/materials?q=a#/x',
    'APP://stillroom/',
  ])('%s is ours', (url) => {
    expect(isOurs(url)).toBe(true);
    expect(mayRequest(url)).toBe(true);
    expect(isOwnDownload(url)).toBe(true);
  });

  test.each(HOSTILE_URLS)('“%s” is not', (url) => {
    expect(isOurs(url)).toBe(false);
    expect(isOwnDownload(url)).toBe(false);
    expect(isPermitted('clipboard-sanitized-write', url)).toBe(false);
  });

  test.each(HOSTILE_URLS.filter((url) => !url.startsWith('data:')))('“%s” is not requested', (url) => {
    expect(mayRequest(url)).toBe(false);
  });

  test('what the page made in memory may be shown and saved', () => {
    expect(mayRequest('blob:app://stillroom/5b6e')).toBe(true);
    expect(isOwnDownload('blob:app://stillroom/5b6e')).toBe(true);
    expect(mayRequest('data:image/png;base64,AAAA')).toBe(true);
    expect(isOwnDownload('data:text/html,x')).toBe(false);
  });
});

describe('what leads out of the page', () => {
  const HASH = 'a1'.repeat(32);

  test('is an attached document, by the hash of its content', () => {
    expect(isAttachment(`app://stillroom/api/attachments/${HASH}`)).toBe(true);
    expect(isAttachment(`app://stillroom/api/attachments/${HASH}?name=Safety%20data%20sheet`)).toBe(true);
  });

  test.each([
    ...HOSTILE_URLS,
    'https://example.com/',
    `https://stillroom/api/attachments/${HASH}`,
    `app://stillroom.example/api/attachments/${HASH}`,
    `app://stillroom/api/attachments/${HASH}/../../library`,
    `app://stillroom/api/attachments/${HASH.toUpperCase()}`,
    'app://stillroom/api/attachments/',
    'app://stillroom/',
  ])('“%s” leads nowhere', (url) => {
    expect(isAttachment(url)).toBe(false);
  });

  test.each(['/home/maker/Stillroom'])('%s may be shown in its folder', (path) => {
    expect(isRevealable(path)).toBe(true);
  });
  test.each(['', 'x', './x', '../x', '\\\\server\\share', '//server/share'])('“%s” may not', (path) => {
    expect(isRevealable(path)).toBe(false);
  });
});

describe('the window', () => {
  test('is sandboxed, isolated and offline', () => {
    expect(windowOptions('/p/index.cjs', true).webPreferences).toEqual({
      preload: '/p/index.cjs',
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: false,
    });
    expect(windowOptions('/p/index.cjs', true).show).toBe(false);
  });

  test('has developer tools only while developing', () => {
    expect(windowOptions('/p/index.cjs', false).webPreferences?.devTools).toBe(true);
    const roles = (isPackaged: boolean) => JSON.stringify(menuTemplate(() => undefined, false, isPackaged));
    expect(roles(false)).toContain('toggleDevTools');
    expect(roles(true)).not.toContain('toggleDevTools');
  });

  test('sends each menu command of its own', () => {
    const sent: string[] = [];
    for (const { submenu } of menuTemplate((command) => sent.push(command), false, true)) {
      if (!Array.isArray(submenu)) continue;
      // Our items use none of the arguments that Electron hands to a click.
      for (const { click } of submenu) (click as (() => void) | undefined)?.();
    }
    expect(sent.sort()).toEqual([...MENU_COMMANDS].sort());
  });
});

describe('the command line of a window', () => {
  test('finds our flags among those of others', () => {
    const args = ['electron', '.', '--inspect=0', '--user-data-dir=/x', '--library', 'shelf', '--demo'];
    expect(windowArguments(args, '/home/maker')).toEqual({ library: '/home/maker/shelf', demo: true });
    expect(windowArguments(['electron', '.', '--library=/a b'], '/')).toEqual({
      library: '/a b',
      demo: false,
    });
    expect(windowArguments(['electron', '.'], '/')).toEqual({ library: undefined, demo: false });
    expect(windowArguments(['electron', '.', '--library'], '/')).toEqual({ library: undefined, demo: false });
  });
});

describe('the gate of the window', () => {
  const app = new Hono().use(windowGate()).all('*', (c) => c.text('inside'));

  test('lets the page’s own requests in', async () => {
    const headers = { origin: 'app://stillroom' };
    expect(await (await app.request(new Request('app://stillroom/api/x'))).text()).toBe('inside');
    expect(
      (await app.request(new Request('app://stillroom/api/x', { method: 'POST', headers }))).status,
    ).toBe(200);
  });

  test.each(['app://other/api/x', 'http://stillroom/api/x', 'app://stillroom.example/api/x'])(
    'refuses %s',
    async (url) => {
      expect((await app.request(new Request(url))).status).toBe(403);
    },
  );

  test.each(['null', 'https://example.com', 'app://other', 'app://stillroom.example'])(
    'refuses the origin %s',
    async (origin) => {
      const request = new Request('app://stillroom/api/x', { headers: { origin } });
      expect((await app.request(request)).status).toBe(403);
    },
  );
});
