import { spawn } from 'node:child_process';
import { resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '../..');

let interrupted = false;

/** Whether a signal has asked to stop: the step under way ends, and no other should begin. */
export function wasInterrupted() {
  return interrupted;
}

/** Says what is happening now. */
export function say(text) {
  console.log(`\n▸ ${text}`);
}

/** A failure that the maker can act on: shown as a message, without a stack. */
export class Halt extends Error {}

/** Runs the main function of a script; a `Halt` becomes its message, anything else keeps its stack. */
export async function runScript(main) {
  try {
    process.exitCode = await main();
  } catch (error) {
    console.error(error instanceof Halt ? `\n✗ ${error.message}` : error);
    process.exitCode = 1;
  }
}

/**
 * Runs a program with this terminal's input and output and answers its exit code, or 1 after a signal or when it
 * cannot be started. Signals are passed on, and we wait for the child to end: it may have a library to close.
 * `heard` is given what it writes, in place of the terminal.
 */
export function run(command, args, { env, timeoutMs, quiet, shell, heard } = {}) {
  return new Promise((done) => {
    const child = spawn(command, args, {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: quiet ? 'ignore' : heard ? ['inherit', 'pipe', 'pipe'] : 'inherit',
      shell: shell ?? false,
    });
    if (heard) for (const stream of [child.stdout, child.stderr]) stream.on('data', heard);
    const pass = (signal) => {
      interrupted = true;
      child.kill(signal);
    };
    process.on('SIGINT', pass);
    process.on('SIGTERM', pass);
    const timer = timeoutMs ? setTimeout(() => child.kill('SIGKILL'), timeoutMs) : undefined;
    const end = (code) => {
      clearTimeout(timer);
      process.off('SIGINT', pass);
      process.off('SIGTERM', pass);
      done(code);
    };
    child.once('error', (error) => {
      if (!quiet) console.error(`${command}: ${error.message}`);
      end(1);
    });
    // Closed, and so heard to its end.
    child.once('close', (code) => end(code ?? 1));
  });
}

/** Runs a script of Node's. */
export function node(script, args = [], options = {}) {
  return run(process.execPath, [resolve(root, script), ...args], options);
}
