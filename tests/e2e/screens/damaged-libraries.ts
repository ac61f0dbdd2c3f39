import { chmodSync, chownSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A library left as the demonstration, and what somebody or something did to its folder before it is opened. */
export interface DamagedLibrary {
  name: string;
  /** What the screen must say. */
  says: RegExp;
  /** What it must offer, by the names of the buttons; nothing else may open the library. */
  offers: RegExp[];
  damage(folder: string): void;
  /** Without the backups that the library had. */
  bare?: boolean;
  /** Opened as a user who may not write there, where the tests run as one who may everything. */
  asNobody?: boolean;
}

export const NOBODY = 65_534;

function change(path: string, how: (bytes: Buffer) => void): void {
  const bytes = readFileSync(path);
  how(bytes);
  writeFileSync(path, bytes);
}

const file = (folder: string) => join(folder, 'library.sqlite');
const log = (folder: string) => join(folder, 'library.log');
const USER_VERSION_AT = 60;

function flip(bytes: Buffer, at: number): void {
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
}

/** Files with which no screen but the first can be had. */
export const REFUSED: DamagedLibrary[] = [
  {
    name: 'damaged file, with a backup',
    says: /library file is (damaged|not as Stillroom wrote it)/,
    offers: [/^Open its backup of/],
    damage: (folder) => change(file(folder), (bytes) => bytes.fill(0, 20_000, 24_000)),
  },
  {
    name: 'damaged file, no backup',
    says: /library file is damaged/,
    offers: [],
    bare: true,
    damage: (folder) => change(file(folder), (bytes) => bytes.fill(0, 20_000, 24_000)),
  },
  {
    name: 'damaged header',
    says: /library file is damaged: it does not begin as it was written/,
    offers: [/^Open its backup of/],
    damage: (folder) => change(file(folder), (bytes) => flip(bytes, 3)),
  },
  {
    name: 'altered file',
    says: /not as Stillroom wrote it/,
    offers: [/^Open its backup of/, /^Open it as it is$/],
    damage: (folder) => change(file(folder), (bytes) => flip(bytes, bytes.indexOf('Hedgerow Day Cream') + 2)),
  },
  {
    name: 'damaged log, some of it holds',
    says: /change log of this library is damaged/,
    offers: [/^Open it with the (one|\d+) changes? before the damage$/, /^Open its backup of/],
    damage: (folder) => change(log(folder), (bytes) => flip(bytes, bytes.lastIndexOf('Noted last'))),
  },
  {
    name: 'empty log',
    says: /change log of this library is damaged/,
    offers: [/^Open it without this log$/],
    bare: true,
    damage: (folder) => writeFileSync(log(folder), ''),
  },
  {
    name: 'from the future',
    says: /newer version of Stillroom/,
    offers: [],
    bare: true,
    damage(folder) {
      rmSync(log(folder));
      change(file(folder), (bytes) => bytes.writeUInt32BE(900, USER_VERSION_AT));
    },
  },
  {
    name: 'missing',
    says: /no library\.sqlite in this folder/,
    offers: [/^Open its backup of/],
    damage: (folder) => rmSync(file(folder)),
  },
  {
    name: 'not a library',
    says: /not a Stillroom library/,
    offers: [],
    bare: true,
    damage(folder) {
      rmSync(log(folder));
      writeFileSync(file(folder), 'A letter to a friend.');
    },
  },
];

/** Files that open, with something to be told. */
export const TOLD: DamagedLibrary[] = [
  {
    name: 'log gone',
    says: /library\.log, was not there/,
    offers: [],
    damage: (folder) => rmSync(log(folder)),
  },
  {
    name: 'last change not finished',
    says: /last change before Stillroom stopped was not finished/,
    offers: [],
    damage: (folder) =>
      change(log(folder), (bytes) => {
        bytes.write('250 0123456789abcdef0123456789abcdef {"seq":', bytes.indexOf(0));
      }),
  },
  {
    name: 'conflict copy beside it',
    says: /another copy of it/,
    offers: [],
    damage(folder) {
      const copy = join(folder, 'library (conflict of another computer).log');
      cpSync(log(folder), copy);
      // Ours ends one change earlier.
      change(log(folder), (bytes) => bytes.fill(0, bytes.lastIndexOf('\n', bytes.indexOf(0) - 2) + 1));
    },
  },
  {
    name: 'folder that may not be written to',
    says: /does not allow writing there/,
    offers: [],
    asNobody: true,
    damage(folder) {
      for (const name of ['library.sqlite', 'library.log']) chmodSync(join(folder, name), 0o444);
      chmodSync(folder, 0o555);
    },
  },
];

/** Copies a library, as left by a process that is gone, and damages the copy. */
export function damagedCopy(library: string, folder: string, damaged: DamagedLibrary): string {
  const target = join(folder, 'Hedgerow');
  mkdirSync(folder, { recursive: true });
  cpSync(library, target, { recursive: true });
  if (damaged.bare) rmSync(join(target, 'backups'), { recursive: true, force: true });
  damaged.damage(target);
  if (damaged.asNobody) letNobodyIn(folder);
  return target;
}

/** Lets that user pass to the library, and have a configuration of its own beside it. */
function letNobodyIn(folder: string): void {
  chmodSync(join(folder, '..'), 0o755);
  mkdirSync(join(folder, 'config'));
  if (process.getuid?.() !== 0) return;
  for (const path of [folder, join(folder, 'config')]) chownSync(path, NOBODY, NOBODY);
}
