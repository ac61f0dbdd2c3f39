import type { SwapCandidate } from '@core/swap/candidates';
import type { Material } from '@core/materials/material';
import { onScopeDispose, reactive } from 'vue';
import type { SwapOutcome, SwapSide } from './swap-formulas';

/** What a candidate would change in the chosen formulas, in short. */
export interface Outlook {
  material: Material;
  /** New and gone findings over all of them, and how many of the new ones must be fixed. */
  fresh: number;
  gone: number;
  stops: number;
  /** What passes a limit of law that did not before, each once. */
  law: string[];
}

const OF_LAW = new Set(['law', 'legal-limit', 'classified']);

/** Between two formulas the screen may draw and answer. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** Looks ahead, candidate by candidate, without ever holding the screen. */
export function useOutlook(
  outcome: (side: SwapSide, to: Material) => SwapOutcome | null,
  need: (id: string) => Promise<Material>,
) {
  const known = reactive(new Map<string, Outlook>());
  let turn = 0;
  onScopeDispose(() => (turn += 1));

  async function lookAt(candidate: SwapCandidate, sides: readonly SwapSide[], mine: number): Promise<void> {
    const material = await need(candidate.row.id);
    const sum = { material, fresh: 0, gone: 0, stops: 0, law: new Set<string>() };
    for (const side of sides) {
      if (mine !== turn) return;
      const { findings } = outcome(side, material)?.changed ?? { findings: [] };
      const fresh = findings.filter(({ kind }) => kind === 'new');
      sum.fresh += fresh.length;
      sum.gone += findings.length - fresh.length;
      sum.stops += fresh.filter(({ severity }) => severity === 'stop').length;
      for (const { ruleId, title } of fresh) if (OF_LAW.has(ruleId)) sum.law.add(title);
      await breath();
    }
    if (mine === turn) known.set(candidate.row.id, { ...sum, law: [...sum.law] });
  }

  return {
    known,
    async look(candidates: readonly SwapCandidate[], sides: readonly SwapSide[]): Promise<void> {
      turn += 1;
      const mine = turn;
      known.clear();
      for (const candidate of candidates) {
        if (mine !== turn) return;
        await lookAt(candidate, sides, mine).catch(() => undefined);
      }
    },
  };
}
