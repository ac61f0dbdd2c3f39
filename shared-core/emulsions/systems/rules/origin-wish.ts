import { membersOf, NEUTRAL, type SystemRule } from '../system';

export const originWish: SystemRule = {
  id: 'origin-wish',
  name: 'Of the origin you prefer',
  says: 'Your own preference: materials of other origins count against a system.',
  weight: 2,
  source: { text: 'your preference', basis: 'user' },
  judge(system, { origins }) {
    if (origins.length === 0) return NEUTRAL;
    const members = membersOf(system);
    const others = members.filter(
      ({ facts: { material } }) => !material.origin || !origins.includes(material.origin),
    );
    if (others.length === 0)
      return { verdict: 'for', strength: 1, why: `All of it is ${origins.join(' or ')}.` };
    const names = others.map(({ facts }) => facts.material.tradeName).join(', ');
    return {
      verdict: 'against',
      strength: others.length / members.length,
      why: `Of another or unknown origin: ${names}.`,
    };
  },
};
