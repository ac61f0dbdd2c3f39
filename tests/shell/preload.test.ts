import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { runInNewContext } from 'node:vm';
import { beforeEach, expect, test, vi } from 'vitest';
import { CHANNELS, MENU_CHANNEL, type DesktopBridge } from '../../electron/preload/contract';
import { builtFile } from './built-output';

const PRELOAD = builtFile('preload/index.cjs');
/** What `require` knows in a sandboxed preload, after Electron's own docs/tutorial/sandbox.md. */
const SANDBOX_MODULES = ['electron', 'events', 'timers', 'url'];

type Listener = (event: object, command: unknown) => void;

let exposed: Map<string, unknown>;
let invoked: unknown[][];
let listeners: Map<string, Set<Listener>>;

/** Runs the built preload as a sandboxed window would: no Node, four modules, nothing else. */
beforeEach(() => {
  exposed = new Map();
  invoked = [];
  listeners = new Map();
  const electron = {
    contextBridge: { exposeInMainWorld: (name: string, api: unknown) => exposed.set(name, api) },
    ipcRenderer: {
      invoke: (...call: unknown[]) => {
        invoked.push(call);
        return Promise.resolve({ ok: true, value: null });
      },
      on: (channel: string, listener: Listener) => {
        listeners.set(channel, (listeners.get(channel) ?? new Set()).add(listener));
      },
      removeListener: (channel: string, listener: Listener) => listeners.get(channel)?.delete(listener),
    },
  };
  const require = (name: string) => {
    if (!SANDBOX_MODULES.includes(name)) throw new Error(`module not found: ${name}`);
    return name === 'electron' ? electron : {};
  };
  const module = { exports: {} };
  runInNewContext(readFileSync(PRELOAD, 'utf8'), { require, module, exports: module.exports });
});

function bridge(): DesktopBridge {
  return exposed.get('stillroomDesktop') as DesktopBridge;
}

function emit(command: unknown): void {
  for (const listener of listeners.get(MENU_CHANNEL) ?? []) listener({ sender: 'all of IPC' }, command);
}

test('the built preload is one small file that a sandbox can load', () => {
  expect(resolve(PRELOAD)).toMatch(/\.cjs$/);
  expect(readFileSync(PRELOAD, 'utf8').length).toBeLessThan(8_000);
});

test('a page gets these four functions and nothing else', () => {
  expect([...exposed.keys()]).toEqual(['stillroomDesktop']);
  const members = Object.entries(bridge()).map(([name, member]) => `${name}: ${typeof member}`);
  expect(members.sort()).toEqual([
    'chooseLibraryFolder: function',
    'onMenu: function',
    'setTitle: function',
    'showInFolder: function',
  ]);
});

test('each function has one channel; a page cannot name another', async () => {
  await bridge().chooseLibraryFolder();
  await bridge().showInFolder('token');
  await bridge().setTitle('Shelf');
  expect(invoked).toEqual([
    [CHANNELS.chooseLibraryFolder],
    [CHANNELS.showInFolder, 'token'],
    [CHANNELS.setTitle, 'Shelf'],
  ]);
});

test('a menu listener hears the command only, until it unsubscribes', () => {
  const heard = vi.fn();
  const end = bridge().onMenu(heard);
  emit('print');
  emit({ unknown: true });
  expect(heard.mock.calls).toEqual([['print']]);
  expect(end()).toBeUndefined();
  emit('print');
  expect(heard).toHaveBeenCalledTimes(1);
  expect([...listeners.keys()]).toEqual([MENU_CHANNEL]);
});
