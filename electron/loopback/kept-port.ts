import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const FILE = 'port.json';
const kept = z.object({ port: z.number().int().min(1024).max(65_535) });

/**
 * The port of the first run, for every later one: a browser keeps what belongs to a page (chosen columns, the bench,
 * text not saved yet) by its address, and a tab left open finds Stillroom again.
 */
export function keptPort(config: string): number | undefined {
  try {
    return kept.parse(JSON.parse(readFileSync(join(config, FILE), 'utf8'))).port;
  } catch {
    return undefined;
  }
}

/** Keeps the port of this run, unless one is kept already. That it cannot be kept stops nothing. */
export function keepPort(config: string, port: number): void {
  if (keptPort(config) !== undefined) return;
  try {
    mkdirSync(config, { recursive: true });
    writeFileSync(join(config, FILE), JSON.stringify({ port }));
  } catch {
    // Another port next time: what the browser keeps is then not found, and nothing else.
  }
}
