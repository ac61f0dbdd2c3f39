import { listQuery, type QuickPage, type Span } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { useQuery } from '@pinia/colada';
import { computed } from 'vue';
import { fetchPage } from '../lists/list-search';
import { MATERIALS_VIEW } from '../materials/list-view';

/** As many marks to either side of the target as can be told apart on the scale. */
const MOST_A_SIDE = 60;
/** Where nothing says what is wanted: the middle of Griffin's scale. */
const MIDDLE = 10;
/** Finer than any HLB is given, so that what stands at the target counts on one side only. */
const FINER = 0.001;

function fetchSide(span: Span, descending: boolean): Promise<QuickPage<MaterialRow>> {
  const chosen = { functions: ['emulsifier'] };
  const part = { chosen, spans: { hlb: span }, sortBy: 'hlb', descending, limit: MOST_A_SIDE };
  return fetchPage(MATERIALS_VIEW, listQuery(MATERIALS_VIEW.description, part));
}

/**
 * The library's emulsifiers around an HLB, and how many more lie beyond them on either side.
 * @param target what is wanted; null where nothing says it
 */
export function useNearEmulsifiers(target: () => number | null) {
  // To half a unit: a target moves with every keystroke in the oil phase.
  const about = computed(() => Math.round((target() ?? MIDDLE) * 2) / 2);
  return useQuery({
    key: () => ['bench', 'emulsifiers', about.value],
    query: async () => {
      const at = about.value;
      const [below, above] = await Promise.all([
        fetchSide({ from: null, to: at }, true),
        fetchSide({ from: at + FINER, to: null }, false),
      ]);
      const found = [...below.rows].reverse().concat(above.rows);
      // None that is withdrawn is offered to be added.
      const rows = found.filter(({ withdrawnOn }) => withdrawnOn === '');
      return {
        about: at,
        rows,
        total: below.total + above.total - (found.length - rows.length),
        below: below.total - below.rows.length,
        above: above.total - above.rows.length,
      };
    },
    placeholderData: (before) => before,
  });
}
