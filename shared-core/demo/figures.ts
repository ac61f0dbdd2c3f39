import type { Figure } from '../materials/figure';

const INVENTED = 'invented supplier figure (demonstration)';

/** A published figure; `low` and `high` span what other published lists say. */
export function published(value: number, source: string, low?: number, high?: number): Figure {
  return { low: low ?? null, value, high: high ?? null, provenance: 'published', source };
}

/** A figure as the invented supplier states it. */
export function stated(value: number): Figure {
  return { low: null, value, high: null, provenance: 'supplier', source: INVENTED };
}

/** A range as the invented supplier states it, without one value. */
export function between(low: number, high: number): Figure {
  return { low, value: null, high, provenance: 'supplier', source: INVENTED };
}

/** A figure worked out from others; `how` says from which. */
export function computed(value: number, how: string): Figure {
  return { low: null, value, high: null, provenance: 'computed', source: how };
}

/** A figure measured on the maker's own goods; `where` says on what. */
export function measured(value: number, where: string): Figure {
  return { low: null, value, high: null, provenance: 'measured', source: where };
}

/** A rough figure that experience suggests; `why` says on what ground. */
export function estimated(low: number, high: number, why: string): Figure {
  return { low, value: null, high, provenance: 'estimated', source: why };
}
