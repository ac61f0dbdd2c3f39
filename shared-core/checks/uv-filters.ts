import type { CheckRule } from './check';
import { namesOf, percentText, sumPpm } from './facts';

/** A product with UV filters: what it protects is measured on the product, never reckoned from a formula. */
export const uvFilters: CheckRule = {
  id: 'uv-filters',
  name: 'UV filters: measured, never computed',
  tells: 'UV filters are used, and only a test can show their protection',
  judge({ used }) {
    const filters = used.filter((line) => line.material.functions.includes('uv filter'));
    if (filters.length === 0) return [];
    return [
      {
        ruleId: 'uv-filters',
        severity: 'note',
        title: `${percentText(sumPpm(filters))} of UV filters in all: ${namesOf(filters)}`,
        lines: filters.map((line) => line.lineId),
        advice:
          'Protection is measured by a licensed test on the finished product, never computed from a formula. Claim nothing, and put nothing on the market, before it is measured; in some places a sunscreen is a medicine by law.',
        source: {
          text: 'ISO 24444 (sun protection factor in vivo) and ISO 24443 (UVA in vitro); national law',
          basis: 'memory',
        },
      },
    ];
  },
};
