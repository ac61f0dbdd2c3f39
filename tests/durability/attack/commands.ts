import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import type { z } from 'zod';

/** Says a line, at once: it is out when this returns, whatever becomes of the process. */
export function say(line: string | number): void {
  writeSync(1, `${line}\n`);
}

/** The commands that come in, one a line of JSON, until the input ends. */
export async function* commands<Shape extends z.ZodType>(shape: Shape): AsyncGenerator<z.output<Shape>> {
  for await (const line of createInterface({ input: process.stdin })) yield shape.parse(JSON.parse(line));
}
