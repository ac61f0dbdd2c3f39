import { join } from 'node:path';

export interface Machine {
  platform: NodeJS.Platform;
  home: string;
  env: Record<string, string | undefined>;
}

export interface MachineFolders {
  /** Where new libraries are made. */
  documents: string;
  /** Where the list of recent libraries is kept. */
  config: string;
  home: string;
}

function configRoot({ platform, home, env }: Machine): string {
  if (platform === 'win32') return env.APPDATA ?? join(home, 'AppData', 'Roaming');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support');
  return env.XDG_CONFIG_HOME ?? join(home, '.config');
}

/** The folders that each system sets aside for such things; the same ones that the Electron window uses. */
export function machineFolders(machine: Machine): MachineFolders {
  return {
    documents: join(machine.home, 'Documents', 'Stillroom'),
    config: join(configRoot(machine), 'Stillroom'),
    home: machine.home,
  };
}
