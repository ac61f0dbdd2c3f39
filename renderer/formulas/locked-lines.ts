import { reactive } from 'vue';

/** Lines whose shares are not to be moved, by formula; kept while the window is open. */
const LOCKED = reactive(new Map<string, Set<string>>());

/** The locked lines of a formula: adjusting shares and reformulating leave them as they are. */
export function useLockedLines(formulaId: string) {
  const locked = LOCKED.get(formulaId) ?? reactive(new Set<string>());
  LOCKED.set(formulaId, locked);
  return {
    locked,
    lock(lineId: string, on: boolean): void {
      if (on) locked.add(lineId);
      else locked.delete(lineId);
    },
  };
}
