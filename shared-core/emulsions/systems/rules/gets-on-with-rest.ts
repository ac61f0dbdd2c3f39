import { clash } from '../../conflicts/charge-conflicts';
import { bearerOf } from '../../conflicts/charge-bearers';
import { NEUTRAL, type MemberFacts, type SystemRule } from '../system';
import type { Wish } from '../wish';

/** The worst that any member and the other lines of the formula do to each other; null when they get on. */
function worst(
  members: readonly MemberFacts[],
  { bearers, hasBase }: Wish['rest'],
): ReturnType<typeof clash> {
  const found = members.flatMap(({ material }) => {
    const own = bearerOf({ lineId: material.id, material, ppm: 1 }, hasBase);
    return own ? bearers.map((other) => clash(own, other)).filter((one) => one !== null) : [];
  });
  return (
    found.find((one) => one.severity === 'forms a salt') ??
    found.find((one) => one.severity === 'may lose effect') ??
    null
  );
}

export const getsOnWithRest: SystemRule = {
  id: 'gets-on-with-rest',
  name: 'Compatible with the rest',
  says: 'Emulsifiers of one charge are kept apart from the opposite charge among the oils and the other lines of the formula.',
  weight: 2,
  source: {
    text: 'Rosen M.J., Surfactants and Interfacial Phenomena, 3rd ed., Wiley, Hoboken 2004',
    basis: 'memory',
  },
  judge({ emulsifiers }, { rest }) {
    if (rest.bearers.length === 0) return NEUTRAL;
    const found = worst(
      emulsifiers.map(({ facts }) => facts),
      rest,
    );
    if (!found) return NEUTRAL;
    const why = `${found.first.name} with ${found.second.name}: ${found.severity}.`;
    if (found.severity === 'forms a salt') return { verdict: 'refuses', why };
    return { verdict: 'against', strength: 1, why, warns: true };
  },
};
