import { formatPercent, type Region } from '../locale/numbers';
import type { InciPart } from '../materials/composition';
import type { Material } from '../materials/material';
import type { Difference } from './difference';

/** Materials by id, as a version froze them or as the library holds them now. */
export type MaterialsOfSide = Readonly<Record<string, Material | undefined>>;

function shareText(part: InciPart, region: Region): string {
  const [low, high] = [formatPercent(part.lowPpm, region), formatPercent(part.highPpm, region)];
  return `${part.inci} ${low === high ? low : `${low} to ${high}`}`;
}

/** The entries of one list that the other lacks, joined; the order of a list says nothing. */
function only(these: readonly string[], those: readonly string[]): string {
  return these.filter((one) => !those.includes(one)).join(', ');
}

/**
 * What changed in the materials of a formula that a label would show: a trade name, a composition, the allergens it
 * contains. Materials of one side only are told with their lines.
 *
 * @param ids the materials that both sides use, in the order to tell them
 */
export function materialDifferences(
  ids: readonly string[],
  before: MaterialsOfSide,
  after: MaterialsOfSide,
  region: Region,
): Difference[] {
  return ids.flatMap((id) => {
    const [was, is] = [before[id], after[id]];
    if (!was || !is) return [];
    const parts = (one: Material) => one.composition.map((part) => shareText(part, region));
    const allergens = (one: Material) =>
      one.allergens.map(({ inci, ppm }) => `${inci} ${formatPercent(ppm, region)}`);
    const told = [
      ['trade name', [was.tradeName], [is.tradeName]],
      ['composition', parts(was), parts(is)],
      ['allergens', allergens(was), allergens(is)],
    ] as const;
    return told.flatMap(([what, old, now]): Difference[] => {
      const [gone, come] = [only(old, now), only(now, old)];
      if (gone === come) return [];
      const kind = gone === '' ? 'added' : come === '' ? 'removed' : 'changed';
      return [{ area: 'material', kind, what: `${is.tradeName}, ${what}`, before: gone, after: come }];
    });
  });
}
