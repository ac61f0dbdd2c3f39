/** How far makers neutralise a fatty acid in a kind of product, % of its acid groups. */
interface UsualShare {
  label: string;
  low: number;
  high: number;
  /** What is proposed. */
  percent: number;
}

/** Starting points for trials, common practice without a source; a share is found by trying. */
export const USUAL_SHARES = {
  'vanishing cream': { label: 'Vanishing or day cream of stearic acid', low: 15, high: 30, percent: 20 },
  'soap as emulsifier': {
    label: 'Lotion or cream with soap as its emulsifier',
    low: 40,
    high: 70,
    percent: 50,
  },
  'shaving cream': { label: 'Shaving cream or foam', low: 70, high: 90, percent: 80 },
  soap: { label: 'Liquid or bar soap, a little acid left free', low: 95, high: 100, percent: 95 },
} as const satisfies Record<string, UsualShare>;
export type UsualShareKey = keyof typeof USUAL_SHARES;
export const USUAL_SHARE_KEYS = Object.keys(USUAL_SHARES) as UsualShareKey[];

/** The share proposed for a kind of product, with its range. */
export function usualShare(key: UsualShareKey): UsualShare {
  return USUAL_SHARES[key];
}
