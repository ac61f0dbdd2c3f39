import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { CHANNELS, MENU_CHANNEL } from '../../electron/preload/contract';
import * as electron from './electron-double';
import { HOSTILE_URLS } from './hostile-urls';

vi.mock('electron', () => import('./electron-double'));

const { answers, app, BrowserWindow, ContentsDouble, done, EventDouble, handlers, session } = electron;

beforeAll(async () => {
  await import('../../electron/main/index');
  await vi.waitFor(() => expect(done).toContain('window.loadURL app://stillroom/'), { timeout: 60_000 });
});
afterAll(() => rmSync(electron.folder, { recursive: true, force: true }));

function theWindow() {
  const window = BrowserWindow.opened[0];
  if (!window) throw new Error('No window was opened.');
  return window;
}

/** Calls a channel as the page would, through the copying that IPC does. */
async function call(channel: string, args: unknown[], sender: object = {}): Promise<unknown> {
  const contents = theWindow().webContents;
  const event = { sender: contents, senderFrame: contents.mainFrame, ...sender };
  const handler = handlers.get(channel);
  if (!handler) throw new Error(`Nobody answers ${channel}.`);
  const given = structuredClone(args);
  return structuredClone(await handler(event as unknown as Electron.IpcMainInvokeEvent, ...given));
}

describe('starting', () => {
  test('prepares before ready, and opens the window last', () => {
    const ready = done.indexOf('app.whenReady');
    expect(done.indexOf('app.enableSandbox')).toBeLessThan(ready);
    expect(done.indexOf('protocol.registerSchemesAsPrivileged')).toBeLessThan(ready);
    expect(done.indexOf('protocol.handle app')).toBeGreaterThan(ready);
    expect(done.indexOf('window')).toBeGreaterThan(done.indexOf('protocol.handle app'));
    expect(done.at(-1)).toBe('window.loadURL app://stillroom/');
  });

  test('takes the lock of its own data folder, and hands over what it was asked to open', () => {
    const userData = join(electron.folder, 'appData', 'Stillroom');
    expect(done[1]).toBe(`app.requestSingleInstanceLock ${userData} {"demo":false}`);
  });

  test('registers one scheme, without any way around the content policy', () => {
    expect(electron.schemes).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
    ]);
  });

  test('keeps its data where the loopback host keeps its own', () => {
    expect(app.getPath('userData')).toBe(join(electron.folder, 'appData', 'Stillroom'));
  });

  test('shows the window when it has something to show', () => {
    expect(done).not.toContain('window.show');
    theWindow().emit('ready-to-show');
    expect(done).toContain('window.show');
  });

  test('a second start brings the window forward', () => {
    theWindow().minimized = true;
    app.emit('second-instance');
    expect(theWindow().minimized).toBe(false);
    expect(done).toContain('window.focus');
  });
});

describe('requests of the window', () => {
  async function ask(url: string, init?: RequestInit): Promise<Response> {
    const handler = session.defaultSession.schemeHandler;
    if (!handler) throw new Error('Nobody answers the scheme.');
    return handler(new Request(url, init));
  }

  test('reach the service', async () => {
    const response = await ask('app://stillroom/api/library');
    expect(response.status).toBe(200);
    expect(await response.json()).toMatchObject({ open: null });
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
  });

  test('of other hosts and origins are refused', async () => {
    expect((await ask('app://elsewhere/api/library')).status).toBe(403);
    const headers = { origin: 'https://example.com' };
    expect((await ask('app://stillroom/api/library', { headers })).status).toBe(403);
  });

  test('that would leave the machine are cancelled', () => {
    const cancelled = (url: string) => {
      let cancel: boolean | undefined;
      session.defaultSession.beforeRequest?.({ url }, (response) => (cancel = response.cancel));
      return cancel;
    };
    expect(cancelled('app://stillroom/index.html')).toBe(false);
    for (const url of HOSTILE_URLS.filter((hostile) => !hostile.startsWith('data:'))) {
      expect(cancelled(url), url).toBe(true);
    }
  });

  test('to save a file are allowed for our own files only', () => {
    const prevented = (url: string, chain = [url]) => {
      const event = new EventDouble();
      session.defaultSession.emit('will-download', event, { getURL: () => url, getURLChain: () => chain });
      return event.defaultPrevented;
    };
    expect(prevented('app://stillroom/api/sheets/1')).toBe(false);
    expect(prevented('blob:app://stillroom/5b6e')).toBe(false);
    for (const url of HOSTILE_URLS) expect(prevented(url), url).toBe(true);
    expect(prevented('app://stillroom/x', ['https://example.com/', 'app://stillroom/x'])).toBe(true);
  });
});

describe('every page that Electron makes', () => {
  const contents = new ContentsDouble();
  beforeAll(() => app.emit('web-contents-created', new EventDouble(), contents));

  test.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('stays ours at %s', (name) => {
    const prevented = (url: string) => {
      const event = new EventDouble(url);
      contents.emit(name, event);
      return event.defaultPrevented;
    };
    expect(prevented('app://stillroom/index.html')).toBe(false);
    for (const url of HOSTILE_URLS) expect(prevented(url), url).toBe(true);
  });

  test('embeds no other', () => {
    const event = new EventDouble();
    contents.emit('will-attach-webview', event);
    expect(event.defaultPrevented).toBe(true);
  });

  test('opens no window, and leads nowhere outside', () => {
    const open = (url: string) => contents.openHandler?.({ url } as Electron.HandlerDetails);
    for (const url of [...HOSTILE_URLS, 'https://example.com/page', 'app://stillroom/']) {
      expect(open(url)).toEqual({ action: 'deny' });
    }
    expect(electron.opened).toEqual([]);
  });
});

describe('permissions', () => {
  // Names from the declarations of setPermissionRequestHandler, Electron 45.4.1.
  const names = [
    'camera',
    'clipboard-read',
    'display-capture',
    'fileSystem',
    'fullscreen',
    'geolocation',
    'hid',
  ].concat(
    [
      'idle-detection',
      'keyboardLock',
      'local-fonts',
      'local-network',
      'media',
      'midi',
      'midiSysex',
      'nfc',
      'usb',
    ],
    [
      'notifications',
      'openExternal',
      'pointerLock',
      'serial',
      'speaker-selection',
      'storage-access',
      'unknown',
    ],
  );

  function granted(permission: string, url: string): (boolean | undefined)[] {
    type Permission = Parameters<NonNullable<typeof session.defaultSession.permissionCheck>>[1];
    const { permissionRequest, permissionCheck } = session.defaultSession;
    const contents = theWindow().webContents as unknown as Electron.WebContents;
    let asked: boolean | undefined;
    const details = { requestingUrl: url, isMainFrame: true } as Electron.PermissionRequest;
    permissionRequest?.(contents, permission as Permission, (answer) => (asked = answer), details);
    const checked = permissionCheck?.(contents, permission as Permission, url, { isMainFrame: true });
    return [asked, checked];
  }

  test('only text onto the clipboard, only for our page', () => {
    expect(granted('clipboard-sanitized-write', 'app://stillroom/')).toEqual([true, true]);
    for (const name of names) expect(granted(name, 'app://stillroom/'), name).toEqual([false, false]);
    for (const url of HOSTILE_URLS)
      expect(granted('clipboard-sanitized-write', url), url).toEqual([false, false]);
  });

  test('no device, no pairing, no screen', () => {
    const { device, bluetooth, display } = session.defaultSession;
    expect(device?.({} as Electron.DevicePermissionHandlerHandlerDetails)).toBe(false);
    const pair = vi.fn();
    bluetooth?.({} as Electron.BluetoothPairingHandlerHandlerDetails, pair);
    expect(pair).toHaveBeenCalledWith({ confirmed: false });
    const capture = vi.fn();
    display?.({} as Electron.DisplayMediaRequestHandlerHandlerRequest, capture);
    expect(capture).toHaveBeenCalledWith(null);
  });
});

describe('desktop calls', () => {
  const calls: [string, unknown[]][] = [
    [CHANNELS.chooseLibraryFolder, []],
    [CHANNELS.showInFolder, ['token']],
    [CHANNELS.setTitle, ['Shelf']],
  ];

  test('are these three', () => {
    expect([...handlers.keys()].sort()).toEqual(Object.values(CHANNELS).sort());
    expect(calls.map(([channel]) => channel).sort()).toEqual(Object.values(CHANNELS).sort());
  });

  test.each(calls)('%s is for the main frame of our page in our window', async (channel, args) => {
    const foreign = [
      { senderFrame: null },
      { senderFrame: { parent: {}, url: 'app://stillroom/' } },
      { senderFrame: { parent: null, url: 'https://example.com/' } },
      { senderFrame: { parent: null, url: 'app://stillroom.example/' } },
      { sender: new ContentsDouble() },
    ];
    for (const sender of foreign) {
      expect(await call(channel, args, sender)).toMatchObject({ ok: false, code: 'not-allowed' });
    }
    expect(theWindow().title).toBe('');
  });

  test.each(calls)('%s refuses what it cannot read', async (channel, args) => {
    const oversized = 'x'.repeat(100_000);
    for (const bad of [[...args, 'more'], [{ path: '/etc' }], [oversized], [null], [12]]) {
      expect(await call(channel, bad)).toMatchObject({ ok: false, code: 'invalid-input' });
    }
  });

  test('a chosen folder crosses as a token, and the token shows it', async () => {
    const shelf = join(electron.folder, 'Shelf');
    answers.chosenFolder = shelf;
    const reply = (await call(CHANNELS.chooseLibraryFolder, [])) as { ok: true; value: string };
    expect(reply.ok).toBe(true);
    expect(reply.value).not.toContain('Shelf');
    expect(await call(CHANNELS.showInFolder, [reply.value])).toEqual({ ok: true, value: null });
    expect(electron.revealed).toEqual([shelf]);
  });

  test('cancelling gives nothing; an unknown token shows nothing', async () => {
    answers.chosenFolder = undefined;
    expect(await call(CHANNELS.chooseLibraryFolder, [])).toEqual({ ok: true, value: null });
    expect(await call(CHANNELS.showInFolder, ['guess'])).toMatchObject({ ok: false, code: 'not-found' });
    expect(electron.revealed).toHaveLength(1);
  });

  test('the page names the window', async () => {
    expect(await call(CHANNELS.setTitle, ['Hand cream'])).toEqual({ ok: true, value: null });
    expect(theWindow().title).toBe('Hand cream');
  });
});

describe('the menu', () => {
  test('tells the page what was chosen', () => {
    const file = electron.menus[0]?.find((entry) => entry.label === '&File')?.submenu;
    const open = Array.isArray(file) ? file.find((item) => item.label === '&Open library…') : undefined;
    (open?.click as (() => void) | undefined)?.();
    expect(theWindow().webContents.sent).toEqual([[MENU_CHANNEL, 'open-library']]);
  });
});

describe('a page that stops', () => {
  test('is loaded again when the user wants it', async () => {
    const { webContents } = theWindow();
    answers.messageBox = 0;
    webContents.emit('render-process-gone', new EventDouble(), { reason: 'crashed', exitCode: 5 });
    await expect.poll(() => webContents.reloads).toBe(1);
    webContents.emit('did-fail-load', new EventDouble(), -6, 'ERR_FILE_NOT_FOUND', 'app://stillroom/', true);
    await expect.poll(() => webContents.reloads).toBe(2);
  });

  test('is left when the user says so', async () => {
    const { webContents } = theWindow();
    const before = webContents.reloads;
    answers.messageBox = 1;
    webContents.emit('render-process-gone', new EventDouble(), { reason: 'oom', exitCode: 5 });
    await new Promise((resume) => setTimeout(resume, 20));
    expect(webContents.reloads).toBe(before);
  });
});

describe('quitting', () => {
  test('waits until the library is closed', async () => {
    const first = new EventDouble();
    app.emit('before-quit', first);
    expect(first.defaultPrevented).toBe(true);
    await expect.poll(() => done.at(-1)).toBe('app.quit');
    const second = new EventDouble();
    app.emit('before-quit', second);
    expect(second.defaultPrevented).toBe(false);
  });
});
