import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../preload/contract';

type Send = (command: MenuCommand) => void;

function fileMenu(send: Send, isMac: boolean): MenuItemConstructorOptions {
  return {
    label: '&File',
    submenu: [
      { label: '&New library…', accelerator: 'CmdOrCtrl+Shift+N', click: () => send('new-library') },
      { label: '&Open library…', accelerator: 'CmdOrCtrl+O', click: () => send('open-library') },
      { type: 'separator' },
      { label: '&Print sheets…', accelerator: 'CmdOrCtrl+P', click: () => send('print') },
      { type: 'separator' },
      { label: '&Settings', accelerator: 'CmdOrCtrl+,', click: () => send('settings') },
      { type: 'separator' },
      { role: isMac ? 'close' : 'quit' },
    ],
  };
}

function viewMenu(isPackaged: boolean): MenuItemConstructorOptions {
  const developing: MenuItemConstructorOptions[] = isPackaged
    ? []
    : [{ type: 'separator' }, { role: 'reload' }, { role: 'toggleDevTools' }];
  return {
    label: '&View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
      ...developing,
    ],
  };
}

/** The menu bar. Items of ours send a command to the page; the rest are the system's own roles. */
export function menuTemplate(send: Send, isMac: boolean, isPackaged: boolean): MenuItemConstructorOptions[] {
  const find: MenuItemConstructorOptions[] = [
    { type: 'separator' },
    { label: '&Find', accelerator: 'CmdOrCtrl+F', click: () => send('find') },
  ];
  return [
    ...(isMac ? [{ role: 'appMenu' } satisfies MenuItemConstructorOptions] : []),
    fileMenu(send, isMac),
    {
      label: '&Edit',
      // The page hears these keys first: where it undoes a whole edit itself, the roles do nothing.
      submenu: [
        { role: 'undo' },
        { role: 'redo' },
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
        ...find,
      ],
    },
    viewMenu(isPackaged),
    { role: 'help', submenu: [{ label: 'Using Stillroom', accelerator: 'F1', click: () => send('help') }] },
  ];
}
