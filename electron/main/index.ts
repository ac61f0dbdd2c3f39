import { join } from 'node:path';
import { composeService, type ComposedService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import { hostedApp } from '@service/security/hosted-app';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session as sessions, shell } from 'electron';
import { MENU_CHANNEL } from '../preload/contract';
import { windowArguments } from './arguments';
import { closeBeforeQuit, flushBeforeSessionEnd } from './closing';
import { ruleContents } from './contents-rules';
import { answerDesktopCalls } from './desktop-calls';
import { askToReload, chooseFolder, reportClosing, reportStart } from './dialogs';
import { menuTemplate } from './menu';
import { ORIGIN, SCHEME } from './origin';
import { answerPermissions } from './permissions';
import { offerReload } from './recovery';
import { filterDownloads, filterRequests } from './session-rules';
import { windowGate } from './window-gate';
import { windowOptions } from './window-options';

const PRELOAD = join(import.meta.dirname, '../preload/index.cjs');
const RENDERER_FOLDER = join(import.meta.dirname, '../renderer');

let window: BrowserWindow | undefined;

/** All that Electron wants before it is ready; none of it touches a library. */
function prepare(): void {
  app.setName('Stillroom');
  // The same folder as on the loopback host, so that both know the same recent libraries.
  if (!app.commandLine.hasSwitch('user-data-dir')) {
    app.setPath('userData', join(app.getPath('appData'), 'Stillroom'));
  }
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
  app.on('web-contents-created', (_event, contents) => {
    ruleContents(contents, (url) => shell.openExternal(url));
  });
  app.on('second-instance', () => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
}

function carryRequests({ service }: ComposedService): void {
  const session = sessions.defaultSession;
  answerPermissions(session);
  filterRequests(session, app.isPackaged);
  filterDownloads(session);
  const hosted = hostedApp({ service, rendererFolder: RENDERER_FOLDER, gate: windowGate() });
  session.protocol.handle(SCHEME, (request) => hosted.fetch(request));
}

function carryDesktopCalls({ session }: ComposedService): void {
  const { places } = session;
  answerDesktopCalls(ipcMain, {
    chooseFolder: () => chooseFolder(dialog, window, places.documents),
    offer: (folder) => places.offer(folder),
    folder: (token) => places.folder(token),
    reveal: (path) => shell.showItemInFolder(path),
    setTitle: (title) => window?.setTitle(title),
    isOurWindow: (sender) => window !== undefined && !window.isDestroyed() && sender === window.webContents,
  });
}

async function openWindow({ session }: ComposedService): Promise<void> {
  const opened = new BrowserWindow(windowOptions(PRELOAD, app.isPackaged));
  window = opened;
  opened.once('ready-to-show', () => opened.show());
  opened.once('closed', () => {
    window = undefined;
  });
  flushBeforeSessionEnd(opened, async () => session.currentOrNull()?.library.rewrite());
  offerReload(opened.webContents, (what) => askToReload(dialog, opened, what));
  const send = (command: string) => opened.webContents.send(MENU_CHANNEL, command);
  const template = menuTemplate(send, process.platform === 'darwin', app.isPackaged);
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  await opened.loadURL(`${ORIGIN}/`);
}

async function start(): Promise<void> {
  await app.whenReady();
  const documents = join(app.getPath('documents'), 'Stillroom');
  const composed = composeService({
    documents,
    config: app.getPath('userData'),
    workersFolder: import.meta.dirname,
  });
  closeBeforeQuit(app, composed.session, (error) => reportClosing(dialog, error));
  carryRequests(composed);
  carryDesktopCalls(composed);
  await openAtStart(composed.session, windowArguments(process.argv, process.cwd()));
  await openWindow(composed);
}

// A second instance ends here, before anything of a library is touched.
if (app.requestSingleInstanceLock()) {
  prepare();
  start().catch((error: unknown) => {
    reportStart(dialog, error);
    app.quit();
  });
} else {
  app.quit();
}
