import { inject, reactive, type InjectionKey } from 'vue';

/** What is being dragged in a phase ledger, and before which line of which phase it would land. */
export interface LineDrag {
  lineId: string | null;
  phaseId: string | null;
  index: number;
}

export const LINE_DRAG: InjectionKey<LineDrag> = Symbol('line drag');

export function newLineDrag(): LineDrag {
  return reactive({ lineId: null, phaseId: null, index: 0 });
}

export function useLineDrag(): LineDrag {
  const drag = inject(LINE_DRAG);
  if (!drag) throw new Error('No phase ledger is above this component.');
  return drag;
}
