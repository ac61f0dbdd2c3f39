import { materialMatcher, type MatchedBy } from '@core/formulas/pasting/match-materials';
import { MOST_PASTED } from '@core/formulas/pasting/pasted-lines';
import { LONGEST_TEXT } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { z } from 'zod';
import type { ServiceContext } from '../context';

/** Materials named like it, where none bears the name itself. */
const MOST_NEAR = 6;

const name = z.string().min(1).max(1_000);
/** What each of some lines may be known by, the surest first. */
export const namesToMatch = z.object({ lines: z.array(z.array(name).min(1).max(6)).max(MOST_PASTED) });

/** The materials that a line may mean: those that bear one of its names, else those named like it. */
export interface LineMatch {
  by: MatchedBy | 'likeness' | null;
  rows: MaterialRow[];
}

/** Recognises the materials of some lines, in their order. */
export async function matchMaterials(
  context: ServiceContext,
  { lines }: z.infer<typeof namesToMatch>,
): Promise<LineMatch[]> {
  const { lists } = context.session.current();
  const match = materialMatcher(await lists.rows('materials'));
  const like = async (text: string): Promise<MaterialRow[]> =>
    (await lists.find(text.slice(0, LONGEST_TEXT), ['materials'], MOST_NEAR)).flatMap((found) =>
      found.kind === 'materials' && !found.putAside && found.near !== 'unshown' ? [found.row] : [],
    );
  const matchOf = async (names: readonly string[]): Promise<LineMatch> => {
    const exact = match(names);
    if (exact) return exact;
    const rows = (await Promise.all(names.map(like))).find((found) => found.length > 0) ?? [];
    return { by: rows.length > 0 ? 'likeness' : null, rows };
  };
  return Promise.all(lines.map(matchOf));
}
