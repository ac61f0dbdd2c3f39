import { badInput, between, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { FEDORS, FEDORS_GROUPS, KREVELEN, KREVELEN_GROUPS } from './groups';

/** How often each group stands in a molecule, by its name in the tables. */
export type GroupCounts = Readonly<Record<string, number>>;

const ESTIMATE =
  'Estimated from groups: within 1 to 2 MPa½ at best, worse for rings, branches and several polar groups close together. A measured value goes before it.';

function counted<T>(counts: GroupCounts, table: Readonly<Record<string, T>>): { count: number; of: T }[] {
  const found = Object.entries(counts).map(([group, count]) => {
    const of = Object.hasOwn(table, group) ? table[group] : undefined;
    if (!of)
      throw badInput(
        `The table has no group “${group}”.`,
        `It has: ${Object.keys(table).join(', ')}.`,
        'rows',
      );
    return { count: between(count, 0, 1000, `The count of ${group}`), of };
  });
  if (!found.some(({ count }) => count > 0))
    throw badInput('There is no group yet.', 'Enter the groups of the molecule.', 'rows');
  return found;
}

/**
 * Hansen parameters from groups: d = ΣFd / V, p = √ΣFp² / V, h = √(ΣEh / V), MPa½.
 *
 * @param molarVolume cm³/mol
 * @throws Problem `invalid-input` for a group that is not in the table, or without its polar part
 * Source: Hoftyzer and van Krevelen.
 */
export function krevelenParameters(
  counts: GroupCounts,
  molarVolume: number,
): Record<'d' | 'p' | 'h', Worked> {
  const found = counted(counts, KREVELEN_GROUPS);
  positive(molarVolume, 'The molar volume');
  for (const [group, count] of Object.entries(counts))
    if (count > 0 && KREVELEN_GROUPS[group]?.Fp === null)
      throw badInput(
        `No polar part is published for the group “${group}”.`,
        'Take a measured value of a like molecule.',
        'rows',
      );
  const sum = (of: (one: (typeof found)[number]) => number): number =>
    found.reduce((a, one) => a + of(one), 0);
  const [fd, fp, eh] = [
    sum(({ count, of }) => count * of.Fd),
    sum(({ count, of }) => count * (of.Fp ?? 0) ** 2),
    sum(({ count, of }) => count * (of.Eh ?? 0)),
  ];
  positive(fd, 'The dispersion of these groups');
  const part = (says: string, shows: string, result: number): Worked =>
    worked([{ says, shows, result, unit: 'MPa½' }], [KREVELEN], [ESTIMATE]);
  const v = show(molarVolume);
  return {
    d: part('dispersion: sum of Fd / molar volume', `${show(fd)} / ${v}`, fd / molarVolume),
    p: part('polar part: √(sum of Fp²) / molar volume', `√${show(fp)} / ${v}`, Math.sqrt(fp) / molarVolume),
    h: part(
      'hydrogen bonding: √(sum of Eh / molar volume)',
      `√(${show(eh)} / ${v})`,
      Math.sqrt(eh / molarVolume),
    ),
  };
}

/**
 * The total solubility parameter and molar volume from groups: √(ΣE / ΣV), MPa½, and ΣV, cm³/mol.
 *
 * @throws Problem `invalid-input`
 * Source: Fedors 1974.
 */
export function fedorsParameter(counts: GroupCounts): { delta: Worked; molarVolume: Worked } {
  const found = counted(counts, FEDORS_GROUPS);
  const energy = found.reduce((sum, { count, of }) => sum + count * of.E, 0);
  const volume = found.reduce((sum, { count, of }) => sum + count * of.V, 0);
  positive(volume, 'The molar volume of these groups');
  positive(energy, 'The energy of cohesion of these groups');
  const molarVolume = worked(
    [
      {
        says: 'molar volume: sum over the groups',
        shows: found.map(({ count, of }) => `${show(count)} × ${show(of.V)}`).join(' + '),
        result: volume,
        unit: 'cm³/mol',
      },
    ],
    [FEDORS],
    [ESTIMATE],
  );
  const delta = worked(
    [
      ...molarVolume.steps,
      {
        says: 'solubility parameter: √(energy of cohesion / molar volume)',
        shows: `√(${show(energy)} / ${show(volume)})`,
        result: Math.sqrt(energy / volume),
        unit: 'MPa½',
      },
    ],
    [FEDORS],
    [ESTIMATE],
  );
  return { delta, molarVolume };
}
