import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Problem } from '@service/problems/problem';
import type { AskedAtStart } from '@service/open-at-start';

export interface LoopbackArguments extends AskedAtStart {
  /** Where that library's backups are kept from now on, absolute. */
  backups: string | undefined;
  /** 0 lets the system choose; undefined takes the port of the last run where it is free. */
  port: number | undefined;
  /** Open the default browser. */
  open: boolean;
}

const HELP =
  'Known: --library DIR, --backups DIR, --demo, --port N, --no-open. “npm start -- --help” explains them.';

function refuse(title: string): never {
  throw new Problem({ code: 'invalid-input', title, advice: HELP });
}

function parse(args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: false,
      options: {
        library: { type: 'string' },
        demo: { type: 'boolean' },
        backups: { type: 'string' },
        port: { type: 'string' },
        'no-open': { type: 'boolean' },
      },
    }).values;
  } catch (error) {
    return refuse(error instanceof Error ? error.message : String(error));
  }
}

function portOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (!(port <= 65_535)) refuse(`--port needs a whole number from 0 to 65535, not “${text}”.`);
  return port;
}

/** Reads the command line. Throws `invalid-input` for an unknown flag or a bad value. */
export function readArguments(args: string[]): LoopbackArguments {
  const given = parse(args);
  if (given.demo && given.library !== undefined) refuse('Give either --demo or --library, not both.');
  if (given.backups !== undefined && (!given.library || given.backups === ''))
    refuse('--backups needs a folder, and --library with it.');
  if (given.library === '') refuse('--library needs a folder.');
  return {
    library: given.library === undefined ? undefined : resolve(given.library),
    demo: given.demo ?? false,
    backups: given.backups === undefined ? undefined : resolve(given.backups),
    port: portOf(given.port),
    open: !given['no-open'],
  };
}
