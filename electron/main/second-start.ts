import { isAbsolute, resolve } from 'node:path';
import { z } from 'zod';
import type { AskedAtStart } from '@service/open-at-start';

/** What a second start hands to the first: Chromium may reorder a command line, this crosses as it is. */
const handed = z.object({ library: z.string().refine(isAbsolute).optional(), demo: z.boolean() });

/** What a second start can do in the first. */
export interface FirstStart {
  focus(): void;
  /** The library that is open here, or null. */
  opened(): string | null;
  /** Asks whether to open that library in place of the one that is open; true for yes. */
  ask(folder: string): Promise<boolean>;
  openOther(asked: AskedAtStart): Promise<void>;
  /** Loads the page anew, over the other library. */
  reload(): void;
}

/** What of a command line the first start should hear. */
export function handOver({ library, demo }: AskedAtStart): z.infer<typeof handed> {
  return library === undefined ? { demo } : { library, demo };
}

/**
 * Answers a second start: comes forward, and opens what it asked for when the maker agrees.
 * @throws Problem when that library cannot be opened
 */
export async function answerSecondStart(data: unknown, first: FirstStart): Promise<void> {
  first.focus();
  const { success, data: asked } = handed.safeParse(data);
  if (!success || (asked.library === undefined && !asked.demo)) return;
  const opened = first.opened();
  const wanted = asked.library === undefined ? undefined : resolve(asked.library);
  if (wanted !== undefined && wanted === opened) return;
  if (opened !== null && !(await first.ask(wanted ?? 'a demonstration library'))) return;
  await first.openOther({ library: wanted, demo: asked.demo });
  first.reload();
}
