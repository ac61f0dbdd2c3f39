import { tradeNameKey } from '../materials/nested';

/** What must be known of a material to see whether it would come to hold itself. */
export interface Named {
  id: string;
  tradeName: string;
  /** The names of its parts. */
  parts: readonly string[];
}

/** The materials that each material means by the names of its parts: a name means one only where exactly one bears it. */
function meant(materials: readonly Named[], isSubstance: (name: string) => boolean): Map<string, string[]> {
  const byName = new Map<string, string | null>();
  for (const { id, tradeName } of materials) {
    const key = tradeNameKey(tradeName);
    byName.set(key, byName.has(key) ? null : id);
  }
  return new Map(
    materials.map(({ id, tradeName, parts }) => {
      const own = tradeNameKey(tradeName);
      const keys = parts.map(tradeNameKey);
      // A material that holds a substance of its own name is that substance, and no blend.
      if (keys.includes(own)) return [id, []];
      const found = keys.filter((key) => !isSubstance(key)).flatMap((key) => byName.get(key) ?? []);
      return [id, [...new Set(found)]];
    }),
  );
}

/** The materials that would hold themselves, each with the way round by ids, from itself back to itself. */
export function circlesAmong(
  materials: readonly Named[],
  isSubstance: (nameKey: string) => boolean,
): Map<string, string[]> {
  const means = meant(materials, isSubstance);
  const circles = new Map<string, string[]>();
  for (const { id } of materials) {
    if ((means.get(id) ?? []).length === 0 || circles.has(id)) continue;
    const way = wayBack(id, means);
    for (const [at, one] of (way ?? []).slice(0, -1).entries())
      if (!circles.has(one)) circles.set(one, [...way!.slice(at), ...way!.slice(1, at + 1)]);
  }
  return circles;
}

/** The shortest way from a material to itself; null where there is none. */
function wayBack(from: string, means: ReadonlyMap<string, readonly string[]>): string[] | null {
  const cameFrom = new Map<string, string>();
  let edge = [from];
  while (edge.length > 0) {
    const next: string[] = [];
    for (const here of edge)
      for (const to of means.get(here) ?? []) {
        if (to === from) {
          const way = [from];
          for (let back = here; back !== from; back = cameFrom.get(back)!) way.unshift(back);
          return [from, ...way];
        }
        if (!cameFrom.has(to)) {
          cameFrom.set(to, here);
          next.push(to);
        }
      }
    edge = next;
  }
  return null;
}
