// Builds shim.c where there is a C compiler, and tells the library it makes which call to the disk is to fail.
import { spawnSync } from 'node:child_process';
import { closeSync, ftruncateSync, openSync, readSync, writeSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';

/** What a call may meet beside an error of the system. */
const OTHER = { short: 1001, 'half-then': 1002, die: 1003, stop: 1004 };
const NUMBERS = 4;

/** @returns the path of the library to load first, or why there is none */
export function buildShim(folder) {
  if (process.platform !== 'linux') return { why: 'it is written for Linux' };
  const path = join(folder, 'shim.so');
  const source = join(import.meta.dirname, 'shim.c');
  for (const compiler of ['cc', 'gcc', 'clang']) {
    const built = spawnSync(compiler, ['-O1', '-shared', '-fPIC', '-o', path, source, '-ldl']);
    if (built.status === 0) return { path };
    if (built.error === undefined) return { why: `${compiler} could not build it: ${built.stderr}` };
  }
  return { why: 'there is no C compiler here' };
}

/** The four numbers that a process shares with the library loaded into it. */
export class ShimControl {
  #fd;

  constructor(shim, folder, name) {
    const path = join(folder, `${name}.control`);
    this.#fd = openSync(path, 'w+');
    ftruncateSync(this.#fd, NUMBERS * 8);
    /** For the process that is to be tried. */
    this.env = {
      LD_PRELOAD: shim.path,
      STILLROOM_SHIM_CONTROL: path,
      STILLROOM_SHIM_FOLDER: folder,
      // Calls that go around libc would not be met.
      UV_USE_IO_URING: '0',
    };
  }

  /** From now on the `at`-th call meets `kind`: the name of an errno, short, half-then, die, stop. */
  arm(at, kind, forGood = false) {
    const what = OTHER[kind] ?? constants.errno[kind];
    this.#write([0, 0, 0, 0]);
    this.#write([at, what, 0, forGood ? 1 : 0]);
  }

  /** Answers how many calls were counted. */
  disarm() {
    const numbers = Buffer.alloc(NUMBERS * 8);
    readSync(this.#fd, numbers, 0, numbers.length, 0);
    this.#write([0, 0, 0, 0]);
    return Number(numbers.readBigInt64LE(16));
  }

  /** Whether the call that was armed has come. */
  get wasMet() {
    const numbers = Buffer.alloc(NUMBERS * 8);
    readSync(this.#fd, numbers, 0, numbers.length, 0);
    return numbers.readBigInt64LE(16) >= numbers.readBigInt64LE(0);
  }

  close() {
    closeSync(this.#fd);
  }

  /** The first number last: the library looks at the others only once it is there. */
  #write(numbers) {
    const bytes = Buffer.alloc(NUMBERS * 8);
    numbers.forEach((number, index) => bytes.writeBigInt64LE(BigInt(number), index * 8));
    writeSync(this.#fd, bytes, 8, bytes.length - 8, 8);
    writeSync(this.#fd, bytes, 0, 8, 0);
  }
}
