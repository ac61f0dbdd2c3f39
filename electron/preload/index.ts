import { contextBridge, ipcRenderer } from 'electron';
import { CHANNELS, MENU_CHANNEL, MENU_COMMANDS, type DesktopBridge, type MenuCommand } from './contract';

const bridge: DesktopBridge = {
  chooseLibraryFolder: () => ipcRenderer.invoke(CHANNELS.chooseLibraryFolder),
  showInFolder: (token) => ipcRenderer.invoke(CHANNELS.showInFolder, token),
  setTitle: (title) => ipcRenderer.invoke(CHANNELS.setTitle, title),
  onMenu: (listener) => {
    // The event object stays here: through it a page would reach all of IPC.
    const pass = (_event: unknown, command: MenuCommand) => {
      if (MENU_COMMANDS.includes(command)) listener(command);
    };
    ipcRenderer.on(MENU_CHANNEL, pass);
    return () => {
      ipcRenderer.removeListener(MENU_CHANNEL, pass);
    };
  },
};

contextBridge.exposeInMainWorld('stillroomDesktop', bridge);
