import { toParams } from '@core/shelf/query-params';
import { shelfQuery, type ShelfAnswer } from '@core/shelf/query';
import { useQuery } from '@pinia/colada';
import { answer } from '../service/client';

const MOST_SHOWN = 500;

async function fetchEmulsifiers(): Promise<ShelfAnswer> {
  const query = shelfQuery.parse({ functions: ['emulsifier'], sortBy: 'hlb', limit: MOST_SHOWN });
  return answer<ShelfAnswer>(fetch(`/api/materials?${toParams(query)}`));
}

/** The library's emulsifiers, as the shelf lists them; the 500 of lowest HLB where there are more. */
export function useShelfEmulsifiers() {
  return useQuery({ key: ['bench', 'emulsifiers'], query: fetchEmulsifiers });
}
