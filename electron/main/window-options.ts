import type { BrowserWindowConstructorOptions } from 'electron';

/**
 * The window's options. What is safe by default is written out, so that a change of it shows in a test.
 * @param preload absolute path of the built preload
 */
export function windowOptions(preload: string, isPackaged: boolean): BrowserWindowConstructorOptions {
  return {
    width: 1280,
    height: 860,
    minWidth: 720,
    minHeight: 480,
    show: false,
    title: 'Stillroom',
    name: 'stillroom-main',
    windowStatePersistence: true,
    webPreferences: {
      preload,
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
      devTools: !isPackaged,
    },
  };
}
