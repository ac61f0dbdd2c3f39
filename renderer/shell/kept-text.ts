import type { RecordKind } from '@core/record/change';
import { onBeforeUnmount, onMounted, shallowRef, type ShallowRef } from 'vue';
import { z, type ZodType } from 'zod';
import { useLibrary } from '../library/store';

/**
 * What was typed and is not in the library, kept by the browser until it is: through a reload, a closed tab, and a
 * Stillroom that was stopped meanwhile.
 */
export type Kind = RecordKind;

/** A kept state of a record, as it is shown before anyone takes it up. */
export interface KeptPlace {
  kind: Kind;
  id: string;
  /** What the record was called. */
  name: string;
  at: string;
}

interface Written {
  name: string;
  content: unknown;
  /** What it was changed from. */
  base?: unknown;
}

export interface KeptText<T> {
  /** What an earlier visit could not save, to be offered. */
  offered: ShallowRef<{ at: string; content: T; base: T | null } | null>;
  /** Looks for it, once the record is read; what is in the library by now is not offered. */
  look(content: T): Promise<void>;
  /** Keeps what is unsaved now; forgets what this visit kept when nothing is. Call it after each try to save. */
  settle(): void;
  /** Takes the offered text out of keeping, whether it was taken up or thrown away. */
  dismiss(): void;
}

const PREFIX = 'stillroom.unsaved';
const kept = z.object({
  name: z.string(),
  at: z.iso.datetime(),
  content: z.unknown(),
  base: z.unknown().optional(),
});
// Two windows on one record keep each their own.
const visit = crypto.randomUUID();
const VISIT_LOCK = 'stillroom visit ';
// Held while this page is there: what it keeps is still being typed, and is nothing to offer in another window.
void navigator.locks?.request(VISIT_LOCK + visit, () => new Promise<void>(() => undefined));

/** The pages that are open now, of those that keep something. */
async function openVisits(): Promise<Set<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return new Set(held.map(({ name = '' }) => name.slice(VISIT_LOCK.length)));
}

function placeKey(libraryId: string, kind: Kind, id: string): string {
  return [PREFIX, libraryId, kind, id].join('/');
}

function keysUnder(prefix: string): string[] {
  return Object.keys(localStorage).filter((key) => key.startsWith(`${prefix}/`));
}

function read(key: string): z.infer<typeof kept> | null {
  try {
    return kept.parse(JSON.parse(localStorage.getItem(key) ?? ''));
  } catch {
    return null;
  }
}

/** All that is kept of a library's records, newest first. */
export function keptPlaces(libraryId: string): KeptPlace[] {
  return keysUnder(`${PREFIX}/${libraryId}`)
    .flatMap((key) => {
      const found = read(key);
      const [, , kind, id] = key.split('/');
      return found && id ? [{ kind: kind as Kind, id, name: found.name, at: found.at }] : [];
    })
    .sort((a, b) => b.at.localeCompare(a.at));
}

/**
 * Keeps one record's unsaved text.
 * @param schema reads what was kept, perhaps by an older Stillroom; what it refuses is not offered
 * @param unsaved the state on screen when it is not in the library, else null; asked when the page goes, too
 * @param lastChance saves at once when the page goes, in a request that outlives it
 */
export function useKeptText<T>(
  { kind, id, schema }: { kind: Kind; id: string; schema: ZodType<T> },
  unsaved: () => Written | null,
  lastChance: () => void,
): KeptText<T> {
  const place = placeKey(useLibrary().open?.id ?? 'none', kind, id);
  const own = `${place}/${visit}`;
  const offered: KeptText<T>['offered'] = shallowRef(null);
  let offeredKeys: string[] = [];

  function settle(): void {
    const now = unsaved();
    if (!now) localStorage.removeItem(own);
    else
      try {
        localStorage.setItem(own, JSON.stringify({ ...now, at: new Date().toISOString() }));
      } catch {
        // The browser's own store is full or closed to us: the text is still on screen, and is said to be unsaved.
      }
  }

  async function look(content: T): Promise<void> {
    const inLibrary = JSON.stringify(content);
    const open = await openVisits();
    const found = keysUnder(place).flatMap((key) => {
      const isOpen = key === own || open.has(key.split('/').at(-1) ?? '');
      const text = isOpen ? null : read(key);
      const state = text && schema.safeParse(text.content);
      if (!text || !state?.success) return [];
      const base = schema.safeParse(text.base).data ?? null;
      if (JSON.stringify(state.data) !== inLibrary) return [{ key, at: text.at, content: state.data, base }];
      // It was saved after all, as the page went.
      localStorage.removeItem(key);
      return [];
    });
    found.sort((a, b) => b.at.localeCompare(a.at));
    offeredKeys = found.slice(0, 1).map(({ key }) => key);
    offered.value = found[0] ?? null;
  }

  function dismiss(): void {
    for (const key of offeredKeys) localStorage.removeItem(key);
    offered.value = null;
  }

  function going(): void {
    if (!unsaved()) return;
    settle();
    lastChance();
  }
  onMounted(() => window.addEventListener('pagehide', going));
  onBeforeUnmount(() => window.removeEventListener('pagehide', going));
  return { offered, look, settle, dismiss };
}
