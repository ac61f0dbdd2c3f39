import type { MaterialRow } from '@core/materials/list';
import type { Material } from '@core/materials/material';
import { MOST_ROWS, type ListPage } from '@core/lists/query';
import { swapCandidates, swapFacts, type SwapCandidate } from '@core/swap/candidates';
import { answer } from '../service/client';

/** As many of a shelf as are held against one material. */
const MOST = 10 * MOST_ROWS;

/** The materials of the library that may take another's place, nearest first. */
export async function findCandidates(material: Material): Promise<SwapCandidate[]> {
  const rows: MaterialRow[] = [];
  for (let total = 1; rows.length < Math.min(total, MOST);) {
    const params = new URLSearchParams({ limit: String(MOST_ROWS), offset: String(rows.length) });
    for (const word of material.functions) params.append('functions', word);
    const page = await answer<ListPage<MaterialRow>>(fetch(`/api/materials?${params}`));
    if (page.rows.length === 0) break;
    rows.push(...page.rows);
    total = page.total;
  }
  return swapCandidates(swapFacts(material), rows);
}
