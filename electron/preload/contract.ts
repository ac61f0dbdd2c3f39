/** Channels between the window's page and main; one function each, nothing generic. */
export const CHANNELS = {
  chooseLibraryFolder: 'stillroom:choose-library-folder',
  showInFolder: 'stillroom:show-in-folder',
  setTitle: 'stillroom:set-title',
} as const;
export type Channel = (typeof CHANNELS)[keyof typeof CHANNELS];

/** Main tells the page that a menu item was chosen. */
export const MENU_CHANNEL = 'stillroom:menu';
export const MENU_COMMANDS = ['new-library', 'open-library', 'print', 'find', 'settings', 'help'] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** Errors cross as data: Electron would keep only the message of a thrown one. */
export type Reply<T> = { ok: true; value: T } | { ok: false; code: string; message: string };

/** What the page finds at `window.stillroomDesktop` in a desktop window, and only there. */
export interface DesktopBridge {
  /** Lets the user choose a folder; an opaque token for the service, or null when they cancelled. */
  chooseLibraryFolder(): Promise<Reply<string | null>>;
  /** Shows the library behind a token in the system's file manager. */
  showInFolder(token: string): Promise<Reply<null>>;
  /** Names the window. */
  setTitle(title: string): Promise<Reply<null>>;
  /** Calls back with each menu command; answers the function that ends it. */
  onMenu(listener: (command: MenuCommand) => void): () => void;
}
