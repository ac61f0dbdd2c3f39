import { toParams } from '@core/shelf/query-params';
import { shelfQuery, type ShelfAnswer } from '@core/shelf/query';
import { answer } from '../service/client';

const MOST_SHOWN = 30;

/** The materials that a few typed words find, by trade name. */
export function findMaterials(text: string, signal: AbortSignal): Promise<ShelfAnswer> {
  const params = toParams({ ...shelfQuery.parse({}), text: text.slice(0, 500), limit: MOST_SHOWN });
  return answer<ShelfAnswer>(fetch(`/api/materials?${params}`, { signal }));
}
