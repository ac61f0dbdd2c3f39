import { reactive, watch } from 'vue';
import { z } from 'zod';

const stored = z.array(z.string());
const keyOf = (formulaId: string): string => `stillroom.locked-lines.${formulaId}`;

function kept(formulaId: string): string[] {
  try {
    return stored.parse(JSON.parse(localStorage.getItem(keyOf(formulaId)) ?? '[]'));
  } catch {
    return [];
  }
}

/** Lines whose shares are not to be moved, by formula. */
const LOCKED = reactive(new Map<string, Set<string>>());

function lockedOf(formulaId: string): Set<string> {
  const known = LOCKED.get(formulaId);
  if (known) return known;
  const locked = reactive(new Set(kept(formulaId)));
  LOCKED.set(formulaId, locked);
  watch(locked, (now) => {
    if (now.size === 0) localStorage.removeItem(keyOf(formulaId));
    else localStorage.setItem(keyOf(formulaId), JSON.stringify([...now]));
  });
  return locked;
}

/**
 * The locked lines of a formula: adjusting shares and reformulating leave them as they are. Kept on this machine, also
 * while the window is closed.
 */
export function useLockedLines(formulaId: string) {
  const locked = lockedOf(formulaId);
  return {
    locked,
    lock(lineId: string, on: boolean): void {
      if (on) locked.add(lineId);
      else locked.delete(lineId);
    },
  };
}
