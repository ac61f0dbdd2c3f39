import { parseArgs } from 'node:util';
import { Halt } from './run.mjs';

/** Reads a script's flags strictly; an unknown or unfinished one halts with a message and the script's help. */
export function readFlags(options, help, args = process.argv.slice(2)) {
  try {
    return parseArgs({ args, options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    const [what] = error.message.split('. ');
    throw new Halt(`${what}.\n\n${help}`);
  }
}
