import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { z } from 'zod';

const folder = resolve(import.meta.dirname, 'published');

/** The files of published worked examples, by path. */
export function publishedCaseFiles(): string[] {
  const cases = resolve(folder, 'cases');
  return readdirSync(cases)
    .filter((name) => name.endsWith('.json'))
    .map((name) => resolve(cases, name));
}

/** A table of published values, checked for the shape that a test needs of it. */
export function publishedValues<T>(name: string, shape: z.ZodType<T>): T {
  return shape.parse(JSON.parse(readFileSync(resolve(folder, 'values', `${name}.json`), 'utf8')));
}
