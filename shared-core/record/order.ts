/** What one side has between two items that both have, by the item before it (null: at the beginning). */
function between(order: readonly string[], shared: ReadonlySet<string>): Map<string | null, string[]> {
  const groups = new Map<string | null, string[]>();
  let before: string | null = null;
  for (const item of order) {
    if (shared.has(item)) before = item;
    else groups.set(before, [...(groups.get(before) ?? []), item]);
  }
  return groups;
}

/**
 * One list of two: the shared items in the order given, and what only one side has after the item that it stood after
 * there. Where both sides put something, what has the smaller id comes first, so that neither side is favoured.
 */
export function weave(
  shared: readonly string[],
  mine: readonly string[],
  theirs: readonly string[],
): string[] {
  const common = new Set(shared);
  const [ours, others] = [between(mine, common), between(theirs, common)];
  const woven: string[] = [];
  for (const anchor of [null, ...shared]) {
    if (anchor !== null) woven.push(anchor);
    const groups = [ours.get(anchor) ?? [], others.get(anchor) ?? []];
    if ((groups[0]?.[0] ?? '') > (groups[1]?.[0] ?? '')) groups.reverse();
    woven.push(...groups.flat());
  }
  return woven;
}
