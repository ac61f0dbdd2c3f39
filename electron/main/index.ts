import { join } from 'node:path';
import type { AskedAtStart } from '@service/open-at-start';
import { hostedApp } from '@service/security/hosted-app';
import {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  protocol,
  session as sessions,
  shell,
  utilityProcess,
} from 'electron';
import { MENU_CHANNEL } from '../preload/contract';
import { windowArguments } from './arguments';
import { AttachedDocuments } from './attached-documents';
import { closeBeforeQuit, flushBeforeSessionEnd } from './closing';
import { ruleContents } from './contents-rules';
import { answerDesktopCalls } from './desktop-calls';
import * as dialogs from './dialogs';
import { menuTemplate } from './menu';
import { ORIGIN, SCHEME } from './origin';
import { answerPermissions } from './permissions';
import { offerReload } from './recovery';
import { answerSecondStart, handOver } from './second-start';
import { ServiceHost, type Lost } from './service-host';
import type { ServiceStart } from './service-calls';
import { filterDownloads, filterRequests } from './session-rules';
import { windowGate } from './window-gate';
import { windowOptions } from './window-options';

const PRELOAD = join(import.meta.dirname, '../preload/index.cjs');
const RENDERER_FOLDER = join(import.meta.dirname, '../renderer');
const SERVICE_PROCESS = join(import.meta.dirname, 'service-process.js');
/** Folding the largest library takes a few seconds; a disk that needs longer is away. */
const CLOSING_LIMIT_MS = 30_000;

const asked = windowArguments(process.argv, process.cwd());
const host = new ServiceHost(forkService, tellLost);
const documents = new AttachedDocuments({
  service: host,
  temporary: app.getPath('temp'),
  openPath: (path) => shell.openPath(path),
});
let window: BrowserWindow | undefined;

const libraries = (): string => join(app.getPath('documents'), 'Stillroom');
const report = (error: unknown): Promise<void> => dialogs.reportTrouble(dialog, window, error);

function forkService(asked: AskedAtStart) {
  const start: ServiceStart = { documents: libraries(), config: app.getPath('userData'), asked };
  return utilityProcess.fork(SERVICE_PROCESS, [JSON.stringify(start)], {
    serviceName: 'Stillroom library',
  });
}

function tellLost({ startedAgain }: Lost): void {
  const told = startedAgain
    ? dialogs.tellStartedAgain(dialog, window)
    : dialogs
        .askToStartAgain(dialog, window)
        .then((again) => (again ? host.startAgain().then(() => window?.reload()) : app.quit()));
  told.catch(report);
}

/** Keeps its data in the same folder as the loopback host, so that both know the same recent libraries. */
function settle(): void {
  app.setName('Stillroom');
  if (!app.commandLine.hasSwitch('user-data-dir'))
    app.setPath('userData', join(app.getPath('appData'), 'Stillroom'));
}

/** All that Electron wants before it is ready; none of it touches a library. */
function prepare(): void {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
  app.on('web-contents-created', (_event, contents) => {
    ruleContents(contents, (url) => void documents.open(url).catch(report));
  });
  app.on('second-instance', (_event, _args, _folder, data) => {
    answerSecondStart(data, {
      focus: () => {
        if (window?.isMinimized()) window.restore();
        window?.focus();
      },
      opened: () => host.opened(),
      ask: (folder) => dialogs.askToOpenOther(dialog, window, folder),
      openOther: (other) => host.openOther(other),
      reload: () => window?.reload(),
    }).catch(report);
  });
}

function carryRequests(): void {
  const session = sessions.defaultSession;
  answerPermissions(session);
  filterRequests(session, app.isPackaged);
  filterDownloads(session);
  const hosted = hostedApp({ service: host, rendererFolder: RENDERER_FOLDER, gate: windowGate() });
  session.protocol.handle(SCHEME, (request) => hosted.fetch(request));
}

function carryDesktopCalls(): void {
  answerDesktopCalls(ipcMain, {
    chooseFolder: () => dialogs.chooseFolder(dialog, window, libraries()),
    offer: host.offer,
    folder: host.folder,
    reveal: (path) => shell.showItemInFolder(path),
    setTitle: (title) => window?.setTitle(title),
    isOurWindow: (sender) => window !== undefined && !window.isDestroyed() && sender === window.webContents,
  });
}

async function openWindow(): Promise<void> {
  const opened = new BrowserWindow(windowOptions(PRELOAD, app.isPackaged));
  window = opened;
  opened.once('ready-to-show', () => opened.show());
  opened.once('closed', () => {
    window = undefined;
  });
  flushBeforeSessionEnd(opened, host.fold);
  offerReload(opened.webContents, (what) => dialogs.askToReload(dialog, opened, what));
  const send = (command: string) => opened.webContents.send(MENU_CHANNEL, command);
  const template = menuTemplate(send, process.platform === 'darwin', app.isPackaged);
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  await opened.loadURL(`${ORIGIN}/`);
}

/** The window comes first: its page says that the library is being opened until it is. */
async function start(): Promise<void> {
  await app.whenReady();
  const close = async (): Promise<void> => {
    await documents.sweep();
    await host.close(CLOSING_LIMIT_MS);
  };
  closeBeforeQuit(app, { close }, (error) => dialogs.reportClosing(dialog, error));
  carryRequests();
  carryDesktopCalls();
  await Promise.all([host.start(asked), openWindow()]);
}

settle();
// A second start ends here, before anything of a library is touched; the first hears what it asked for.
if (app.requestSingleInstanceLock(handOver(asked))) {
  prepare();
  start().catch((error: unknown) => {
    dialogs.reportStart(dialog, error);
    app.quit();
  });
} else {
  app.quit();
}
