/**
 * Which of a list's items a reader would say were moved: the fewest that, taken out, leave the others in their old
 * order (all but a longest run of rising old places).
 *
 * @param oldPlaces for each item in the new order, the place it had in the old one; no two are the same
 * @returns for each item in the new order, whether it moved
 */
export function movedOnes(oldPlaces: readonly number[]): boolean[] {
  const length: number[] = [];
  const previous: number[] = [];
  oldPlaces.forEach((place, at) => {
    length[at] = 1;
    previous[at] = -1;
    for (let before = 0; before < at; before += 1)
      if ((oldPlaces[before] ?? 0) < place && (length[before] ?? 0) + 1 > (length[at] ?? 0)) {
        length[at] = (length[before] ?? 0) + 1;
        previous[at] = before;
      }
  });
  const moved = oldPlaces.map(() => true);
  for (let at = length.indexOf(Math.max(...length)); at >= 0; at = previous[at] ?? -1) moved[at] = false;
  return moved;
}
