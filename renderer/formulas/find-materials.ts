import { LONGEST_TEXT } from '@core/lists/query';
import { answer } from '../service/client';
import { MOST_SUGGESTED, type FoundMaterial } from './suggestions';

/** The materials that a few typed words mean, nearest first; those put away are left out. */
export async function findMaterials(text: string, signal: AbortSignal): Promise<FoundMaterial[]> {
  const params = new URLSearchParams({
    text: text.slice(0, LONGEST_TEXT),
    kinds: 'materials',
    // One more than is shown, so that it can be said that there are more.
    limit: String(MOST_SUGGESTED + 1),
  });
  const found = await answer<FoundMaterial[]>(fetch(`/api/find?${params}`, { signal }));
  return found.filter(({ putAside }) => !putAside);
}
