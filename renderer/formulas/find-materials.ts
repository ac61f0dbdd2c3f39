import { toParams } from '@core/shelf/query-params';
import { shelfQuery, type ShelfAnswer } from '@core/shelf/query';
import { answer } from '../service/client';

/** Enough that a name is among them though many notes mention it; the picker puts the nearest first. */
const MOST_FETCHED = 200;

/** The materials that a few typed words find, by trade name. */
export function findMaterials(text: string, signal: AbortSignal): Promise<ShelfAnswer> {
  const params = toParams({ ...shelfQuery.parse({}), text: text.slice(0, 500), limit: MOST_FETCHED });
  return answer<ShelfAnswer>(fetch(`/api/materials?${params}`, { signal }));
}
