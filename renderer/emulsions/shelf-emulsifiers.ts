import { listQuery, MOST_ROWS, type QuickPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { useQuery } from '@pinia/colada';
import { fetchPage } from '../lists/list-search';
import { MATERIALS_VIEW } from '../materials/list-view';

function fetchEmulsifiers(): Promise<QuickPage<MaterialRow>> {
  const chosen = { functions: ['emulsifier'] };
  return fetchPage(
    MATERIALS_VIEW,
    listQuery(MATERIALS_VIEW.description, { chosen, sortBy: 'hlb', limit: MOST_ROWS }),
  );
}

/** The library's emulsifiers, as the shelf lists them; the 500 of lowest HLB where there are more. */
export function useShelfEmulsifiers() {
  return useQuery({ key: ['bench', 'emulsifiers'], query: fetchEmulsifiers });
}
