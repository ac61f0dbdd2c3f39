import { EventEmitter } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type * as Electron from 'electron';
import { UtilityProcessDouble } from './utility-process-double';

/**
 * Stands in for the `electron` module where its runtime is not. Each part implements the calls of the real
 * declarations that the shell uses, so that a change of Electron's types fails the type-check here.
 */

/** What the shell did, in order: `app.enableSandbox`, `window.loadURL app://stillroom/`… */
export const done: string[] = [];
export const folder = mkdtempSync(join(tmpdir(), 'stillroom-shell-'));

/** How the double answers; a test sets it before the shell asks. */
export const answers = {
  lock: true,
  ready: Promise.resolve(),
  chosenFolder: undefined as string | undefined,
  messageBox: 1,
  /** Why the system cannot open a file; empty when it can. */
  openPath: '',
};

type AppCalls = Pick<
  Electron.App,
  | 'setName'
  | 'getPath'
  | 'setPath'
  | 'enableSandbox'
  | 'requestSingleInstanceLock'
  | 'whenReady'
  | 'quit'
  | 'isPackaged'
>;

class AppDouble extends EventEmitter implements AppCalls {
  readonly isPackaged = true;
  readonly commandLine: Pick<Electron.CommandLine, 'hasSwitch'> = { hasSwitch: () => false };
  readonly paths = new Map<string, string>();
  setName: Electron.App['setName'] = (name) => void done.push(`app.setName ${name}`);
  getPath: Electron.App['getPath'] = (name) => this.paths.get(name) ?? join(folder, name);
  setPath: Electron.App['setPath'] = (name, path) => void this.paths.set(name, path);
  enableSandbox: Electron.App['enableSandbox'] = () => void done.push('app.enableSandbox');
  requestSingleInstanceLock: Electron.App['requestSingleInstanceLock'] = (data) => {
    done.push(`app.requestSingleInstanceLock ${this.getPath('userData')} ${JSON.stringify(data)}`);
    return answers.lock;
  };
  whenReady: Electron.App['whenReady'] = async () => {
    done.push('app.whenReady');
    await answers.ready;
  };
  quit: Electron.App['quit'] = () => {
    done.push('app.quit');
    this.emit('before-quit', new EventDouble());
  };
}

/** An event that can be prevented, as those of Electron. */
export class EventDouble {
  defaultPrevented = false;
  constructor(readonly url = '') {}
  preventDefault(): void {
    this.defaultPrevented = true;
  }
}

export class ContentsDouble extends EventEmitter {
  openHandler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0] | undefined;
  readonly mainFrame = { parent: null, url: 'app://stillroom/index.html' };
  readonly sent: unknown[][] = [];
  reloads = 0;
  setWindowOpenHandler: Electron.WebContents['setWindowOpenHandler'] = (handler) => {
    this.openHandler = handler;
  };
  send: Electron.WebContents['send'] = (...message) => void this.sent.push(message);
  isDestroyed: Electron.WebContents['isDestroyed'] = () => false;
  reload: Electron.WebContents['reload'] = () => void this.reloads++;
}

type WindowCalls = Pick<
  Electron.BrowserWindow,
  'loadURL' | 'reload' | 'show' | 'focus' | 'isMinimized' | 'restore' | 'setTitle' | 'isDestroyed'
>;

export class BrowserWindowDouble extends EventEmitter implements WindowCalls {
  static readonly opened: BrowserWindowDouble[] = [];
  readonly webContents = new ContentsDouble();
  minimized = false;
  title = '';
  constructor(readonly options: Electron.BrowserWindowConstructorOptions) {
    super();
    BrowserWindowDouble.opened.push(this);
    done.push('window');
    app.emit('web-contents-created', new EventDouble(), this.webContents);
  }
  loadURL: Electron.BrowserWindow['loadURL'] = async (url) => void done.push(`window.loadURL ${url}`);
  reload: Electron.BrowserWindow['reload'] = () => void done.push('window.reload');
  show: Electron.BrowserWindow['show'] = () => void done.push('window.show');
  focus: Electron.BrowserWindow['focus'] = () => void done.push('window.focus');
  isMinimized: Electron.BrowserWindow['isMinimized'] = () => this.minimized;
  restore: Electron.BrowserWindow['restore'] = () => void (this.minimized = false);
  setTitle: Electron.BrowserWindow['setTitle'] = (title) => void (this.title = title);
  isDestroyed: Electron.BrowserWindow['isDestroyed'] = () => false;
}

type Handler = Parameters<Electron.IpcMain['handle']>[1];
type SessionCalls = Pick<
  Electron.Session,
  | 'setPermissionRequestHandler'
  | 'setPermissionCheckHandler'
  | 'setDevicePermissionHandler'
  | 'setBluetoothPairingHandler'
  | 'setDisplayMediaRequestHandler'
>;
type Given<Name extends keyof SessionCalls> = Parameters<SessionCalls[Name]>[0];

class SessionDouble extends EventEmitter implements SessionCalls {
  permissionRequest: Given<'setPermissionRequestHandler'> = null;
  permissionCheck: Given<'setPermissionCheckHandler'> = null;
  device: Given<'setDevicePermissionHandler'> = null;
  bluetooth: Given<'setBluetoothPairingHandler'> = null;
  display: Given<'setDisplayMediaRequestHandler'> = null;
  beforeRequest:
    ((details: { url: string }, answer: (response: { cancel?: boolean }) => void) => void) | undefined;
  schemeHandler: Parameters<Electron.Protocol['handle']>[1] | undefined;
  readonly webRequest = {
    onBeforeRequest: (listener: NonNullable<SessionDouble['beforeRequest']>) => {
      this.beforeRequest = listener;
    },
  };
  readonly protocol: Pick<Electron.Protocol, 'handle'> = {
    handle: (scheme, handler) => {
      done.push(`protocol.handle ${scheme}`);
      this.schemeHandler = handler;
    },
  };
  setPermissionRequestHandler: SessionCalls['setPermissionRequestHandler'] = (handler) => {
    this.permissionRequest = handler;
  };
  setPermissionCheckHandler: SessionCalls['setPermissionCheckHandler'] = (handler) => {
    this.permissionCheck = handler;
  };
  setDevicePermissionHandler: SessionCalls['setDevicePermissionHandler'] = (handler) => {
    this.device = handler;
  };
  setBluetoothPairingHandler: SessionCalls['setBluetoothPairingHandler'] = (handler) => {
    this.bluetooth = handler;
  };
  setDisplayMediaRequestHandler: SessionCalls['setDisplayMediaRequestHandler'] = (handler) => {
    this.display = handler;
  };
}

export const app = new AppDouble();
export const BrowserWindow = BrowserWindowDouble;
export const schemes: Electron.CustomScheme[] = [];
export const protocol: Pick<Electron.Protocol, 'registerSchemesAsPrivileged'> = {
  registerSchemesAsPrivileged: (registered) => {
    done.push('protocol.registerSchemesAsPrivileged');
    schemes.push(...registered);
  },
};
export const session = { defaultSession: new SessionDouble() };
export const handlers = new Map<string, Handler>();
export const ipcMain: Pick<Electron.IpcMain, 'handle'> = {
  handle: (channel, handler) => void handlers.set(channel, handler),
};
export const dialog = {
  errors: [] as string[],
  async showOpenDialog() {
    const chosen = answers.chosenFolder;
    return { canceled: chosen === undefined, filePaths: chosen === undefined ? [] : [chosen] };
  },
  /** What was said, in the order of saying. */
  messages: [] as string[],
  async showMessageBox(...given: [unknown, Electron.MessageBoxOptions] | [Electron.MessageBoxOptions]) {
    const options = given.at(-1) as Electron.MessageBoxOptions;
    dialog.messages.push(options.message);
    return { response: answers.messageBox, checkboxChecked: false };
  },
  showErrorBox(title: string) {
    dialog.errors.push(title);
  },
};
export const menus: Electron.MenuItemConstructorOptions[][] = [];
export const Menu = {
  buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]) => template,
  setApplicationMenu: (template: Electron.MenuItemConstructorOptions[]) => void menus.push(template),
};
/** Files that the shell had the system open, and folders that it had shown. */
export const opened: string[] = [];
export const revealed: string[] = [];
export const shell: Pick<Electron.Shell, 'openPath' | 'showItemInFolder'> = {
  openPath: async (path) => {
    opened.push(path);
    return answers.openPath;
  },
  showItemInFolder: (path) => void revealed.push(path),
};
export const utilityProcess = UtilityProcessDouble;
